package org.salvedge.yield;

import java.time.LocalDateTime;
import java.util.Currency;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.Exit;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Grade;
import org.salvedge.shop.History;
import org.salvedge.shop.HistoryBuilder;
import org.salvedge.shop.Lot;
import org.salvedge.shop.Money;
import org.salvedge.shop.Names;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.TvSet;

/** Facts as a columnar history, without a ledger between. */
final class FactHistory {
    private final Currency book;
    private final HistoryBuilder builder;
    private final Names units = new Names();

    private FactHistory(Currency book) {
        this.book = book;
        builder = History.builder(book);
    }

    static History of(List<? extends Fact> facts, Currency book) {
        FactHistory h = new FactHistory(book);
        for (Fact fact : facts) {
            if (fact instanceof Lot lot) {
                h.add(lot);
            } else if (fact instanceof TvSet set) {
                h.add(set);
            } else if (fact instanceof Attempt attempt) {
                h.add(attempt);
            } else if (fact instanceof Exit exit) {
                h.add(exit);
            } else if (fact instanceof Comeback comeback) {
                h.add(comeback);
            }
        }
        return h.builder.build();
    }

    private void add(Lot lot) {
        builder.lot(
                lot.lot().value(),
                builder.suppliers().number(lot.supplier()),
                (int) lot.boughtOn().toEpochDay(),
                (int) lot.arrivalDay().toEpochDay(),
                lot.landedCost(book).minor(),
                micros(lot.minutes()));
    }

    private void add(TvSet set) {
        builder.set(
                units.number(set.unit().value()),
                builder.lotNames().find(set.lot().value()),
                builder.families().number(set.family()),
                builder.makers().number(set.maker()),
                builder.models().number(set.model()),
                builder.claims().number(set.claimed().code()),
                micros(set.inches()),
                -1,
                -1,
                -1,
                set.arrived() ? History.ARRIVED : 0,
                -1,
                set.landedCost() == null ? -1 : set.landedCost().minor());
        builder.label(set.unit().value());
    }

    private void add(Attempt a) {
        LocalDateTime at = a.startedAt();
        builder.attempt(
                units.find(a.unit().value()),
                (int) at.toLocalDate().toEpochDay(),
                at.toLocalTime().toSecondOfDay(),
                a.number(),
                builder.faults().number(a.fault().code()),
                builder.fixes().number(a.fix().code()),
                a.technician() == null ? -1 : builder.technicians().number(a.technician()),
                a.passed() == null ? -1 : a.passed() ? 1 : 0,
                grade(a.grade()),
                micros(a.diagnosisMinutes()),
                micros(a.fixMinutes()),
                minor(a.partsCost()));
    }

    private void add(Exit e) {
        builder.exit(
                units.find(e.unit().value()),
                (int) e.on().toEpochDay(),
                e.seq(),
                e.kind().ordinal(),
                e.leaves() ? 1 : 0,
                e.gross().minor(),
                e.gross().minor() - e.net().minor(),
                micros(e.minutes()),
                -1,
                grade(e.grade()));
    }

    private void add(Comeback c) {
        builder.comeback(
                units.find(c.unit().value()),
                (int) c.on().toEpochDay(),
                minor(c.refund()) + minor(c.cost()),
                c.restocked() ? 1 : 0,
                c.fault() == null ? -1 : builder.faults().number(c.fault().code()));
    }

    private static int grade(@Nullable Grade grade) {
        return grade == null ? -1 : grade.ordinal();
    }

    private static long micros(@Nullable Quantity quantity) {
        return quantity == null ? -1 : quantity.millionths();
    }

    private static long minor(@Nullable Money money) {
        return money == null ? 0 : money.minor();
    }
}
