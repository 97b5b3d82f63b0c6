package org.salvedge.yield;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Grade;
import org.salvedge.shop.History;
import org.salvedge.shop.HistoryBuilder;
import org.salvedge.shop.Money;
import org.salvedge.shop.Names;
import org.salvedge.shop.Quantity;

/** Small histories for tests, said in the words of the bench. Days are counted from {@link #FIRST}. */
final class SmallShop {
    static final Currency EUR = Currency.getInstance("EUR");
    static final LocalDate FIRST = LocalDate.of(2026, 1, 1);

    private final List<Runnable> rows = new ArrayList<>();
    private final Names labels = new Names();
    private final HistoryBuilder builder;
    private int attempts;

    SmallShop() {
        this(EUR);
    }

    SmallShop(Currency currency) {
        builder = History.builder(currency);
        lot("L1", "Northquay");
    }

    SmallShop lot(String name, String supplier) {
        builder.lot(name, builder.suppliers().number(supplier), day(0), day(0), 0, -1);
        return this;
    }

    SmallShop set(String label, String family) {
        return set(label, family, "L1", "0.00");
    }

    SmallShop set(String label, String family, String lot, String landed) {
        return set(label, family, lot, landed, 55_000_000, History.ARRIVED);
    }

    SmallShop set(String label, String family, String lot, String landed, long inches, int flags) {
        builder.set(
                labels.number(label),
                builder.lotNames().find(lot),
                builder.families().number(family),
                builder.makers().number("Kestrel"),
                builder.models().number(family + "-1"),
                builder.claims().number("untested"),
                inches,
                -1,
                -1,
                -1,
                flags,
                -1,
                minor(landed));
        return this;
    }

    /** @param passed yes, no, or "" for no retest */
    SmallShop attempt(
            String label, int day, String fault, String fix, String passed, String diagnosis, String minutes) {
        return attempt(label, day, fault, fix, passed, diagnosis, minutes, "0", "Ines", null);
    }

    SmallShop attempt(
            String label,
            int day,
            String fault,
            String fix,
            String passed,
            String diagnosis,
            String minutes,
            String parts,
            String technician,
            @Nullable Grade grade) {
        int number = ++attempts;
        rows.add(() -> builder.attempt(
                labels.number(label),
                day(day),
                600,
                number,
                builder.faults().number(fault),
                builder.fixes().number(fix),
                technician.isEmpty() ? -1 : builder.technicians().number(technician),
                passed.isEmpty() ? -1 : passed.equals("yes") ? 1 : 0,
                grade == null ? -1 : grade.ordinal(),
                micros(diagnosis),
                micros(minutes),
                minor(parts)));
        return this;
    }

    SmallShop exit(String label, int day, ExitKind kind, String gross, String costs, String minutes) {
        return exit(label, day, kind, true, gross, costs, minutes, null);
    }

    SmallShop exit(
            String label,
            int day,
            ExitKind kind,
            boolean gone,
            String gross,
            String costs,
            String minutes,
            @Nullable Grade grade) {
        rows.add(() -> builder.exit(
                labels.number(label),
                day(day),
                1,
                kind.ordinal(),
                gone ? 1 : 0,
                minor(gross),
                minor(costs),
                micros(minutes),
                -1,
                grade == null ? -1 : grade.ordinal()));
        return this;
    }

    SmallShop comeback(String label, int day, String cost, boolean restocked) {
        rows.add(() -> builder.comeback(labels.number(label), day(day), minor(cost), restocked ? 1 : 0, -1));
        return this;
    }

    History history() {
        rows.forEach(Runnable::run);
        return builder.build();
    }

    /** The same rows in another order. */
    History shuffled(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = rows.size() - 1; i > 0; i--) {
            java.util.Collections.swap(rows, i, random.nextInt(i + 1));
        }
        return history();
    }

    Outcomes outcomes() {
        return Outcomes.of(history(), new BigDecimal("24"));
    }

    YieldRow only(String by) {
        List<YieldRow> rows = rows(by);
        if (rows.size() != 1) {
            throw new AssertionError(rows);
        }
        return rows.get(0);
    }

    List<YieldRow> rows(String by) {
        return YieldTable.of(outcomes(), by.isEmpty() ? List.of() : Key.parse(by))
                .rows();
    }

    private static int day(int offset) {
        return (int) FIRST.plusDays(offset).toEpochDay();
    }

    private static long minor(String amount) {
        return Money.parse(amount, EUR).minor();
    }

    private static long micros(String minutes) {
        return minutes.isEmpty() ? -1 : Quantity.parse(minutes).millionths();
    }
}
