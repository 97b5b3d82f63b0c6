package org.salvedge.ledger;

import java.time.LocalDate;
import org.salvedge.shop.Money;
import org.salvedge.shop.Offer;
import org.salvedge.shop.UnitId;

/** Offers: one row each time a set's price is set. */
final class OfferTable extends Table<Offer> {
    final Column<Offer, UnitId> unit = key("unit", Labels.UNIT, "The set", Offer::unit);
    final Column<Offer, LocalDate> on = key("on", Types.DATE, "Day", Offer::on);
    final Column<Offer, Money> price = required("price", Types.MONEY, "The price", Offer::price);
    final Column<Offer, String> channel = optional("channel", Types.WORD, "Where it is offered", Offer::channel);

    OfferTable() {
        super("offer", 'O', Offer.class);
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
