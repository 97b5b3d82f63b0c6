package org.salvedge.ledger;

import java.time.LocalDate;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Money;
import org.salvedge.shop.UnitId;

/** Comebacks: one row each time a sold set comes back. */
final class ComebackTable extends Table<Comeback> {
    final Column<Comeback, UnitId> unit = key("unit", Labels.UNIT, "The set", Comeback::unit);
    final Column<Comeback, LocalDate> on = key("on", Types.DATE, "Day", Comeback::on);
    final Column<Comeback, Fault> fault = optional("fault", Labels.FAULT, "Fault class found", Comeback::fault);
    final Column<Comeback, Money> refund = optional("refund", Types.MONEY, "Paid back to the buyer", Comeback::refund);
    final Column<Comeback, Money> cost = optional("cost", Types.MONEY, "Transport and handling", Comeback::cost);
    final Column<Comeback, Boolean> restocked = required(
            "restocked",
            Types.YES_NO,
            "true: on the bench again; false: the buyer keeps it, or it is written off",
            Comeback::restocked);

    ComebackTable() {
        super("comeback", 'C', Comeback.class);
    }

    @Override
    Comeback fact(Values<Comeback> v) {
        return new Comeback(v.need(unit), v.need(on), v.get(fault), v.get(refund), v.get(cost), v.need(restocked));
    }

    @Override
    LocalDate day(Comeback f) {
        return f.on();
    }

    @Override
    String describe(Comeback f) {
        return "comeback of " + f.unit() + " on " + f.on();
    }
}
