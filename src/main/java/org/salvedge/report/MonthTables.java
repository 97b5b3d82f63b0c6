package org.salvedge.report;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.salvedge.shop.Money;
import org.salvedge.yield.Bridge;
import org.salvedge.yield.ComebackLine;
import org.salvedge.yield.FaultShare;
import org.salvedge.yield.MonthFigures;
import org.salvedge.yield.MonthReview;
import org.salvedge.yield.RolledYield;
import org.salvedge.yield.YieldRow;

/** The tables of the monthly review, each for a sheet of its own. */
final class MonthTables {
    private final MonthReview review;
    private final Trace trace;

    MonthTables(MonthReview review, Trace trace) {
        this.review = review;
        this.trace = trace;
    }

    Table byMonth() {
        Table.Builder table = of(
                        Figure.MONTH,
                        Figure.RECEIVED,
                        Figure.DECIDED,
                        Figure.SAVED,
                        Figure.YIELD,
                        Figure.YIELD_SHRUNK,
                        Figure.FIRST_PASS_YIELD,
                        Figure.MINUTES_MEDIAN,
                        Figure.MINUTES_PER_SAVED,
                        Figure.GONE,
                        Figure.MARGIN_TOTAL,
                        Figure.MARGIN_PER_SET,
                        Figure.MARGIN_PER_HOUR,
                        Figure.COMEBACKS,
                        Figure.COMEBACK_COST,
                        Figure.TRACE)
                .title("Month by month");
        for (MonthFigures m : review.series()) {
            YieldRow c = m.counted();
            table.row(
                    m.month().toString(),
                    m.received(),
                    c.decided(),
                    c.saved(),
                    new Estimate(c.raw(), c.rawLow(), c.rawHigh()),
                    new Estimate(c.shrunk(), c.shrunkLow(), c.shrunkHigh()),
                    c.firstPassYield(),
                    c.minutesMedian(),
                    c.minutesPerSaved(),
                    c.gone(),
                    c.marginTotal(),
                    c.marginPerSet(),
                    c.marginPerHour(),
                    m.comebacks(),
                    m.comebackCost(),
                    trace.decidedIn(m.month()));
        }
        return table.build();
    }

    Table timePerFix() {
        Table.Builder table = of(
                        Figure.FIX,
                        Figure.ATTEMPTS,
                        Figure.DECIDED,
                        Figure.SAVED,
                        Figure.YIELD_SHRUNK,
                        Figure.MINUTES_MEDIAN,
                        Figure.MINUTES_P90,
                        Figure.MINUTES_PER_SAVED,
                        Figure.PER_SAVED_BEFORE,
                        Figure.PER_SAVED_SO_FAR,
                        Figure.TRACE)
                .title("Time per fix");
        for (YieldRow row : review.byFix().rows()) {
            if (row.keys().get(0).isEmpty()) {
                continue; // no attempt, no time
            }
            table.row(
                    row.keys().get(0),
                    row.attempts(),
                    row.decided(),
                    row.saved(),
                    new Estimate(row.shrunk(), row.shrunkLow(), row.shrunkHigh()),
                    row.minutesMedian(),
                    row.minutesP90(),
                    row.minutesPerSaved(),
                    review.byFixBefore().row(row.keys()).minutesPerSaved(),
                    review.byFixSoFar().row(row.keys()).minutesPerSaved(),
                    trace.ofMonth("", row.keys().get(0), row.decided()));
        }
        return table.build();
    }

    Table faults() {
        Map<String, FaultShare> before = new TreeMap<>();
        int decided = 0;
        int decidedBefore = 0;
        for (FaultShare share : FaultShare.of(review.cellsBefore())) {
            before.put(share.fault(), share);
            decidedBefore += share.decided();
        }
        List<FaultShare> now = FaultShare.of(review.cells());
        for (FaultShare share : now) {
            decided += share.decided();
        }
        Table.Builder table = of(
                        Figure.FAULT, Figure.DECIDED, Figure.SAVED, Figure.SHARE, Figure.SHARE_BEFORE, Figure.TRACE)
                .title("Faults met");
        for (FaultShare share : now) {
            FaultShare then = before.get(share.fault());
            table.row(
                    share.fault().isEmpty() ? "(no attempt)" : share.fault(),
                    share.decided(),
                    share.saved(),
                    (double) share.decided() / decided,
                    decidedBefore == 0 ? null : (then == null ? 0 : then.decided()) / (double) decidedBefore,
                    trace.decidedWith(share.fault()));
        }
        return table.build();
    }

    Table money() {
        Table.Builder table = of(
                        Figure.STEP,
                        Figure.AMOUNT,
                        Figure.AMOUNT_BEFORE,
                        Figure.TRACE,
                        Figure.CHART_BASE,
                        Figure.CHART_ABOVE,
                        Figure.CHART_BELOW)
                .title("From takings to margin");
        double level = 0;
        List<Step> steps = steps();
        for (int i = 0; i < steps.size(); i++) {
            Step step = steps.get(i);
            double amount = step.now.amount().doubleValue();
            boolean total = i == 0 || i == steps.size() - 1;
            double from = total ? 0 : level;
            double to = total ? amount : level + amount;
            level = to;
            double low = Math.min(from, to);
            double high = Math.max(from, to);
            double base = low > 0 ? low : high < 0 ? high : 0;
            table.row(
                    step.name,
                    step.now,
                    step.then,
                    trace.goneIn(review.month()),
                    base,
                    Math.max(0, high) - Math.max(0, base),
                    Math.min(0, low) - Math.min(0, base));
        }
        return table.build();
    }

    private record Step(String name, Money now, Money then) {}

    private List<Step> steps() {
        Bridge now = review.bridge();
        Bridge then = review.bridgeBefore();
        return List.of(
                new Step("takings", now.takings(), then.takings()),
                new Step(
                        "fees, shipping, tax",
                        now.sellingCosts().negated(),
                        then.sellingCosts().negated()),
                new Step("parts", now.parts().negated(), then.parts().negated()),
                new Step("labour", now.labour().negated(), then.labour().negated()),
                new Step(
                        "comebacks", now.comebacks().negated(), then.comebacks().negated()),
                new Step("landed cost", now.landed().negated(), then.landed().negated()),
                new Step("margin", now.margin(), then.margin()));
    }

    Table comebacks() {
        Table.Builder table = of(
                        Figure.CAME_BACK,
                        Figure.UNIT,
                        Figure.FAMILY,
                        Figure.SOLD_ON,
                        Figure.DAYS_OUT,
                        Figure.LATEST_FIX,
                        Figure.FAULT_BACK,
                        Figure.REFUND,
                        Figure.RESTOCKED)
                .title("Comebacks");
        for (ComebackLine line : review.comebacks()) {
            table.row(
                    line.on(),
                    line.unit(),
                    line.family(),
                    line.soldOn(),
                    line.days(),
                    line.fix(),
                    line.fault(),
                    line.cost(),
                    line.restocked());
        }
        return table.build();
    }

    Table rolled() {
        RolledYield r = review.rolled();
        return of(Figure.ROLLED, Figure.ROLLED_SHARE, Figure.ROLLED_GOOD, Figure.ROLLED_OF)
                .title("Rolled throughput yield")
                .row("glass not broken, of sets diagnosed", r.glass(), r.notBroken(), r.diagnosed())
                .row("saved, of sets decided", r.bench(), r.saved(), r.decided())
                .row("not back in 90 days, of old sales", r.keeping(), r.kept(), r.oldSales())
                .row("index (the product)", r.index(), null, null)
                .build();
    }

    private static Table.Builder of(Figure... figures) {
        return Table.of(Arrays.stream(figures).map(Figure::column).toList());
    }
}
