package org.salvedge.report;

import java.time.YearMonth;
import java.util.Arrays;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.salvedge.yield.Cause;
import org.salvedge.yield.ChangeSplit;
import org.salvedge.yield.FixLine;
import org.salvedge.yield.Learning;
import org.salvedge.yield.MonthReview;
import org.salvedge.yield.MonthWhy;
import org.salvedge.yield.Preference;
import org.salvedge.yield.Range;
import org.salvedge.yield.Signals;

/** The tables that say why a month differs, and how fixes do. */
final class WhyTables {
    private final MonthReview review;
    private final MonthWhy why;
    private final Trace trace;

    WhyTables(MonthReview review, Trace trace) {
        this.review = review;
        this.trace = trace;
        why = review.why();
    }

    Table causes() {
        Table.Builder table = of(
                        Figure.CAUSE,
                        Figure.WHAT,
                        Figure.DIRECTION,
                        Figure.EFFECT,
                        Figure.CHANCE,
                        Figure.CHANCE_ALL,
                        Figure.STANDS_OUT,
                        Figure.TRACE)
                .title("What may be behind the change, likeliest first");
        for (Cause c : why.causes()) {
            table.row(
                    c.kind(),
                    c.what(),
                    c.up() ? "up" : "down",
                    c.effect(),
                    c.p(),
                    c.adjusted(),
                    c.standsOut(),
                    behind(c));
        }
        return table.build();
    }

    private @Nullable Linked behind(Cause cause) {
        return switch (cause.kind()) {
            case FIX -> trace.ofFix(cause.what());
            case SUPPLIER -> trace.ofSupplier(cause.what());
            case MIX -> trace.decidedIn(review.month());
            case PRICE -> trace.goneIn(review.month());
        };
    }

    Table changedByFault() {
        return changed("What changed in the yield, by family and fault", why.yieldByFault(), false, false);
    }

    Table changedBySupplier() {
        return changed("What changed in the yield, by supplier", why.yieldBySupplier(), false, true);
    }

    Table marginByFault() {
        return changed("What changed in the margin per set, by family and fault", why.marginByFault(), true, false);
    }

    Table marginBySupplier() {
        return changed("What changed in the margin per set, by supplier", why.marginBySupplier(), true, true);
    }

    private Table changed(String title, ChangeSplit split, boolean money, boolean bySupplier) {
        Figure[] keys = bySupplier ? new Figure[] {Figure.SUPPLIER} : new Figure[] {Figure.FAMILY, Figure.FAULT};
        Figure[] figures = money
                ? new Figure[] {
                    Figure.SETS_THEN,
                    Figure.SETS_NOW,
                    Figure.MARGIN_THEN,
                    Figure.MARGIN_NOW,
                    Figure.MIX_MONEY,
                    Figure.RATE_MONEY,
                    Figure.TRACE
                }
                : new Figure[] {
                    Figure.SETS_THEN,
                    Figure.SETS_NOW,
                    Figure.YIELD_THEN,
                    Figure.YIELD_NOW,
                    Figure.MIX,
                    Figure.RATE,
                    Figure.TRACE
                };
        Figure[] all = Arrays.copyOf(keys, keys.length + figures.length);
        System.arraycopy(figures, 0, all, keys.length, figures.length);
        Table.Builder table = of(all).title(title);
        for (ChangeSplit.Cell c : split.cells()) {
            List<@Nullable Object> row = new java.util.ArrayList<>(c.keys());
            if (!bySupplier && c.keys().get(1).isEmpty()) {
                row.set(1, "(no attempt)");
            }
            row.add(c.setsBefore());
            row.add(c.setsNow());
            row.add(c.meanBefore());
            row.add(c.meanNow());
            row.add(c.mix());
            row.add(c.rate());
            row.add(
                    bySupplier
                            ? trace.ofSupplier(c.keys().get(0))
                            : trace.ofCell(c.keys().get(0), c.keys().get(1)));
            table.row(row);
        }
        if (!Double.isNaN(split.mix())) {
            table.note(money ? inMoney(split) : inPoints(split));
        }
        return table.build();
    }

    private static String inPoints(ChangeSplit split) {
        return "From " + Digits.grouped(100 * split.before(), 2) + " % to " + Digits.grouped(100 * split.now(), 2)
                + " %: mix " + Digits.grouped(100 * split.mix(), 2) + " points, rate "
                + Digits.grouped(100 * split.rate(), 2) + " points. The cells add up to these.";
    }

    private String inMoney(ChangeSplit split) {
        int digits = Math.max(0, review.currency().getDefaultFractionDigits());
        return "From " + Digits.grouped(split.before(), digits) + " to " + Digits.grouped(split.now(), digits)
                + " a set: mix " + Digits.grouped(split.mix(), digits) + ", rate "
                + Digits.grouped(split.rate(), digits) + ". The cells add up to these.";
    }

    Table months() {
        return signals(
                "Yield by month on its control chart",
                why.signals().months(),
                p -> trace.decidedIn(YearMonth.parse(p.name())));
    }

    Table lots() {
        return signals("Yield by lot on its control chart", why.signals().lots(), p -> trace.ofLot(p.name()));
    }

    Table minutes() {
        return signals("Minutes by month on their control chart", why.signals().minutes(), p -> null);
    }

    private static Table signals(
            String title, List<Signals.Point> points, Function<Signals.Point, @Nullable Linked> behind) {
        Table.Builder table = of(
                        Figure.POINT,
                        Figure.BEHIND,
                        Figure.VALUE,
                        Figure.CENTRE,
                        Figure.LIMIT_LOW,
                        Figure.LIMIT_HIGH,
                        Figure.Z,
                        Figure.RULES,
                        Figure.TRACE)
                .title(title);
        for (Signals.Point p : points) {
            table.row(
                    p.name(),
                    p.n(),
                    p.value(),
                    p.centre(),
                    p.low(),
                    p.high(),
                    p.z(),
                    p.rules().stream()
                            .map(r ->
                                    r.name().toLowerCase(java.util.Locale.ROOT).replace('_', ' '))
                            .collect(Collectors.joining(", ")),
                    behind.apply(p));
        }
        return table.build();
    }

    Table fixes() {
        return fixes("Fixes compared, by fault", why.fixes(), false);
    }

    Table fixesByFamily() {
        return fixes("Fixes compared, by fault and family", why.fixesByFamily(), true);
    }

    private Table fixes(String title, List<FixLine> lines, boolean byFamily) {
        Figure[] figures = {
            Figure.FAULT,
            Figure.FAMILY,
            Figure.FIX,
            Figure.TRIED,
            Figure.PASSED,
            Figure.SUCCESS,
            Figure.BOTH_MINUTES,
            Figure.PER_PASS,
            Figure.PARTS,
            Figure.FIRST,
            Figure.INCREMENT,
            Figure.INCREMENT_LOW,
            Figure.INCREMENT_HIGH,
            Figure.PER_HOUR,
            Figure.NOW_TRIED,
            Figure.NOW_PASSED,
            Figure.TRACE
        };
        Table.Builder table = of(Arrays.stream(figures)
                        .filter(f -> byFamily || f != Figure.FAMILY)
                        .toArray(Figure[]::new))
                .title(title);
        for (FixLine l : lines) {
            List<@Nullable Object> row = new java.util.ArrayList<>();
            row.add(l.fault());
            if (byFamily) {
                row.add(l.family());
            }
            row.add(l.fix());
            row.add(l.attempts());
            row.add(l.saved());
            row.add(estimate(l.success()));
            row.add(l.minutesMedian());
            row.add(l.minutesPerSaved());
            row.add(l.parts());
            row.add(l.first());
            row.add(l.increment().value());
            row.add(l.increment().low());
            row.add(l.increment().high());
            row.add(l.perHour());
            row.add(l.monthAttempts());
            row.add(l.monthSaved());
            row.add(trace.ofFix(l.fault(), l.fix(), l.family()));
            table.row(row);
        }
        return table.build();
    }

    static Estimate estimate(Range range) {
        return new Estimate(range.value(), range.low(), range.high());
    }

    Table prefer() {
        Table.Builder table = of(
                        Figure.FAULT,
                        Figure.FAMILY,
                        Figure.FIX,
                        Figure.OVER,
                        Figure.GAIN,
                        Figure.GAIN_LOW,
                        Figure.GAIN_HIGH,
                        Figure.WRONG,
                        Figure.FIRST,
                        Figure.FIRST_OVER,
                        Figure.TRACE,
                        Figure.TRACE_OVER)
                .title("Which fix to try first");
        for (Preference p : why.preferences()) {
            table.row(
                    p.fault(),
                    p.family().isEmpty() ? "(all)" : p.family(),
                    p.fix(),
                    p.over(),
                    p.gain().value(),
                    p.gain().low(),
                    p.gain().high(),
                    p.chanceWrong(),
                    p.first(),
                    p.firstOver(),
                    trace.ofFix(p.fault(), p.fix(), p.family()),
                    trace.ofFix(p.fault(), p.over(), p.family()));
        }
        if (why.preferences().isEmpty()) {
            table.note("On no fault have two fixes been tried first often enough to be compared.");
        }
        return table.build();
    }

    Table learning() {
        Table.Builder table = of(
                        Figure.FIX,
                        Figure.SO_FAR,
                        Figure.TIMED,
                        Figure.LEFT_AT_DOUBLING,
                        Figure.FIRST_MINUTES,
                        Figure.LATEST_MINUTES)
                .title("Learning, by fix");
        for (Learning l : why.learning()) {
            table.row(l.fix(), l.tried(), l.timed(), estimate(l.rate()), l.first(), l.latest());
        }
        return table.build();
    }

    static Table.Builder of(Figure... figures) {
        return Table.of(Arrays.stream(figures).map(Figure::column).toList());
    }
}
