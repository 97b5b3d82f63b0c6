package org.salvedge.ledger;

import java.time.LocalDate;
import org.salvedge.shop.Bid;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Money;

/** Bids: one row a lot that was judged, bought or not. */
final class BidTable extends Table<Bid> {
    final Column<Bid, Integer> number = key("bid", Types.WHOLE, "Number of the bid", Bid::number);
    final Column<Bid, LocalDate> on = required("on", Types.DATE, "Day", Bid::on);
    final Column<Bid, String> supplier = optional("supplier", Types.WORD, "Who offered it", Bid::supplier);
    final Column<Bid, String> manifest = optional("manifest", Types.TEXT, "SHA-256 of the manifest", Bid::manifest);
    final Column<Bid, Integer> sets = optional("sets", Types.WHOLE, "Sets on the manifest", Bid::sets);
    final Column<Bid, Money> limit = optional("limit", Types.MONEY, "The most the shop would pay", Bid::limit);
    final Column<Bid, Money> mean = optional("mean", Types.MONEY, "Mean of the recovery that was expected", Bid::mean);
    final Column<Bid, Money> p10 = optional("p10", Types.MONEY, "10 % quantile of it", Bid::p10);
    final Column<Bid, Money> p50 = optional("p50", Types.MONEY, "Median of it", Bid::p50);
    final Column<Bid, Money> p90 = optional("p90", Types.MONEY, "90 % quantile of it", Bid::p90);
    final Column<Bid, Boolean> won = optional("won", Types.YES_NO, "Whether it was won; empty = not decided", Bid::won);
    final Column<Bid, Money> hammer = optional("hammer", Types.MONEY, "What it went for", Bid::hammer);
    final Column<Bid, LotId> lot = optional("lot", Labels.LOT, "The lot it became", Bid::lot);

    BidTable() {
        super("bid", 'B', Bid.class);
    }

    @Override
    Bid fact(Values<Bid> v) {
        return new Bid(
                v.need(number),
                v.need(on),
                v.get(supplier),
                v.get(manifest),
                v.get(sets),
                v.get(limit),
                v.get(mean),
                v.get(p10),
                v.get(p50),
                v.get(p90),
                v.get(won),
                v.get(hammer),
                v.get(lot));
    }

    @Override
    LocalDate day(Bid f) {
        return f.on();
    }

    @Override
    String describe(Bid f) {
        return "bid " + f.number();
    }
}
