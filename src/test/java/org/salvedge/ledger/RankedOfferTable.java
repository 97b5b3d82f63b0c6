package org.salvedge.ledger;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Money;
import org.salvedge.shop.Offer;
import org.salvedge.shop.UnitId;

/** The table of offers as a later version might have it, after {@code later-column.sql}: a column in its midst, one at its end. */
final class RankedOfferTable extends Table<Offer> {
    private final Column<Offer, UnitId> unit;
    private final Column<Offer, LocalDate> on;
    private final Column<Offer, Money> price;
    private final Column<Offer, String> channel;

    /** @param before what the column in the midst is said to hold in older rows; null if it is not marked as a later one */
    RankedOfferTable(Cells.@Nullable Cell before) {
        super("offer", 'O', Offer.class);
        unit = key("unit", Labels.UNIT, "The set", Offer::unit);
        on = key("on", Types.DATE, "Day", Offer::on);
        Column<Offer, Integer> rank = optional("rank", Types.WHOLE, "The last digit of its price", o ->
                (int) (o.price().minor() % 10));
        if (before != null) {
            later(rank, before);
        }
        price = required("price", Types.MONEY, "The price", Offer::price);
        channel = optional("channel", Types.WORD, "Where it is offered", Offer::channel);
        later(optional("colour", Types.WORD, "Its channel again", Offer::channel), Cells.Cell.EMPTY);
    }

    @Override
    Offer fact(Values<Offer> v) {
        return new Offer(v.need(unit), v.need(on), v.need(price), v.get(channel));
    }

    @Override
    LocalDate day(Offer f) {
        return f.on();
    }

    @Override
    String describe(Offer f) {
        return "offer of " + f.unit() + " on " + f.on();
    }
}
