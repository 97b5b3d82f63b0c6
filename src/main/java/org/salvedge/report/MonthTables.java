package org.salvedge.report;

import java.util.Arrays;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.salvedge.shop.Money;
import org.salvedge.yield.Bridge;
import org.salvedge.yield.ComebackLine;
import org.salvedge.yield.FaultShare;
import org.salvedge.yield.LotLine;
import org.salvedge.yield.MonthFigures;
import org.salvedge.yield.MonthReview;
import org.salvedge.yield.OpenSet;
import org.salvedge.yield.YieldRow;

/** The tables of the monthly review, each for a sheet of its own. */
final class MonthTables {
    private static final int[] AGES = {30, 60, 90};

    private final MonthReview review;

    MonthTables(MonthReview review) {
        this.review = review;
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
                        Figure.COMEBACK_COST)
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
                    m.comebackCost());
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
                        Figure.PER_SAVED_SO_FAR)
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
                    review.byFixSoFar().row(row.keys()).minutesPerSaved());
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
        Table.Builder table = of(Figure.FAULT, Figure.DECIDED, Figure.SAVED, Figure.SHARE, Figure.SHARE_BEFORE)
                .title("Faults met");
        for (FaultShare share : now) {
            FaultShare then = before.get(share.fault());
            table.row(
                    share.fault().isEmpty() ? "(no attempt)" : share.fault(),
                    share.decided(),
                    share.saved(),
                    (double) share.decided() / decided,
                    decidedBefore == 0 ? null : (then == null ? 0 : then.decided()) / (double) decidedBefore);
        }
        return table.build();
    }

    Table money() {
        Table.Builder table =
                of(Figure.STEP, Figure.AMOUNT, Figure.AMOUNT_BEFORE).title("From takings to margin");
        Bridge now = review.bridge();
        Bridge then = review.bridgeBefore();
        return table.row("takings", now.takings(), then.takings())
                .row(
                        "fees, shipping, tax",
                        now.sellingCosts().negated(),
                        then.sellingCosts().negated())
                .row("parts", now.parts().negated(), then.parts().negated())
                .row("labour", now.labour().negated(), then.labour().negated())
                .row("comebacks", now.comebacks().negated(), then.comebacks().negated())
                .row("landed cost", now.landed().negated(), then.landed().negated())
                .row("margin", now.margin(), then.margin())
                .build();
    }

    Table ages() {
        int[] sets = new int[AGES.length + 1];
        Money[] cost = new Money[AGES.length + 1];
        Arrays.fill(cost, Money.zero(review.currency()));
        for (OpenSet set : review.open()) {
            int age = 0;
            while (age < AGES.length && set.days() > AGES[age]) {
                age++;
            }
            sets[age]++;
            cost[age] = cost[age].plus(set.cost());
        }
        Table.Builder table = of(Figure.AGE, Figure.SETS, Figure.COST).title("Sets still here, by age");
        for (int age = 0; age < sets.length; age++) {
            String words = age == 0
                    ? "up to " + AGES[0]
                    : age == AGES.length ? "over " + AGES[age - 1] : AGES[age - 1] + 1 + " to " + AGES[age];
            table.row(words, sets[age], cost[age]);
        }
        return table.build();
    }

    Table lots() {
        Table.Builder table = of(
                        Figure.LOT,
                        Figure.SUPPLIER,
                        Figure.BOUGHT,
                        Figure.LISTED,
                        Figure.ARRIVED,
                        Figure.DECIDED,
                        Figure.SAVED,
                        Figure.IN_PROGRESS,
                        Figure.HERE,
                        Figure.LANDED,
                        Figure.RECOVERED,
                        Figure.RESULT)
                .title("Lots");
        for (LotLine lot : review.lots()) {
            table.row(
                    lot.lot(),
                    lot.supplier(),
                    lot.bought(),
                    lot.listed(),
                    lot.arrived(),
                    lot.decided(),
                    lot.saved(),
                    lot.inProgress(),
                    lot.here(),
                    lot.landed(),
                    lot.recovered(),
                    lot.result());
        }
        return table.build();
    }

    Table open() {
        Table.Builder table = of(
                        Figure.UNIT,
                        Figure.LOT,
                        Figure.FAMILY,
                        Figure.MODEL,
                        Figure.CLAIMED,
                        Figure.STATE,
                        Figure.DAYS,
                        Figure.ATTEMPTS,
                        Figure.MINUTES,
                        Figure.COST)
                .title("Open sets");
        for (OpenSet set : review.open()) {
            table.row(
                    set.unit(),
                    set.lot(),
                    set.family(),
                    set.model(),
                    set.claimed(),
                    set.passed() ? "passed" : "on bench",
                    set.days(),
                    set.attempts(),
                    set.minutes(),
                    set.cost());
        }
        return table.build();
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

    private static Table.Builder of(Figure... figures) {
        return Table.of(Arrays.stream(figures).map(Figure::column).toList());
    }
}
