package org.salvedge.ledger;

import java.time.LocalDate;
import org.salvedge.shop.Exit;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Grade;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.UnitId;

/** Exits: one row each time a set leaves the shop, or a part of it brings money. */
final class ExitTable extends Table<Exit> {
    final Column<Exit, UnitId> unit = key("unit", Labels.UNIT, "The set", Exit::unit);
    final Column<Exit, LocalDate> on = key("on", Types.DATE, "Day", Exit::on);
    final Column<Exit, Integer> seq = key("seq", Types.WHOLE, "Tells apart several on one day", Exit::seq);
    final Column<Exit, ExitKind> kind = required("exit", Types.oneOf(ExitKind.class), "How it left", Exit::kind);
    final Column<Exit, Boolean> gone =
            optional("gone", Types.YES_NO, "false: takings for a part of it, the set itself stays", Exit::gone);
    final Column<Exit, Money> gross = required("gross", Types.MONEY, "Takings", Exit::gross);
    final Column<Exit, Money> fees = optional("fees", Types.MONEY, "Marketplace, card, recycling fees", Exit::fees);
    final Column<Exit, Money> shipping =
            optional("shipping", Types.MONEY, "Outbound, paid by the shop", Exit::shipping);
    final Column<Exit, Money> tax = optional("tax", Types.MONEY, "Tax that stays a cost of the shop", Exit::tax);
    final Column<Exit, Quantity> minutes =
            optional("minutes", Types.QUANTITY, "Minutes spent on stripping, packing or listing", Exit::minutes);
    final Column<Exit, String> channel = optional("channel", Types.WORD, "Where it was sold", Exit::channel);
    final Column<Exit, Grade> grade = optional("grade", Types.oneOf(Grade.class), "Grade it was sold at", Exit::grade);
    final Column<Exit, Boolean> disclosed =
            optional("disclosed", Types.YES_NO, "The buyer was told of a workaround", Exit::disclosed);
    final Column<Exit, String> unmetReason =
            optional("unmet_reason", Types.TEXT, "Why it was sold with a release check unmet", Exit::unmetReason);

    ExitTable() {
        super("exit", 'X', Exit.class);
    }

    @Override
    Exit fact(Values<Exit> v) {
        return new Exit(
                v.need(unit),
                v.need(on),
                v.or(seq, 1),
                v.need(kind),
                v.get(gone),
                v.need(gross),
                v.get(fees),
                v.get(shipping),
                v.get(tax),
                v.get(minutes),
                v.get(channel),
                v.get(grade),
                v.get(disclosed),
                v.get(unmetReason));
    }

    @Override
    LocalDate day(Exit f) {
        return f.on();
    }

    @Override
    String describe(Exit f) {
        return "exit of " + f.unit() + " on " + f.on();
    }
}
