package org.salvedge.yield;

import it.unimi.dsi.fastutil.doubles.DoubleArrayList;
import it.unimi.dsi.fastutil.ints.IntArrayList;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import org.salvedge.shop.History;
import org.salvedge.shop.Money;

/**
 * The figures of one month.
 *
 * @param received sets that arrived in it
 * @param counted the row of the yield table by month; sets stand under the month they were decided in, margins under that of
 *     the exit
 * @param comebacks how many sets came back in it
 * @param comebackCost refunds, transport and handling
 * @param marginPerSet of the sets that left, units of the currency; lots taken as whole
 * @param minutesPerSaved of the sets decided; lots taken as whole
 */
public record MonthFigures(
        YearMonth month,
        int received,
        YieldRow counted,
        int comebacks,
        Money comebackCost,
        Range marginPerSet,
        Range minutesPerSaved) {

    private static final double MICROS = 1e6;

    /** What the intervals of one month rest on. */
    private static final class PerSet {
        final DoubleArrayList margins = new DoubleArrayList();
        final IntArrayList marginLots = new IntArrayList();
        final DoubleArrayList minutes = new DoubleArrayList();
        final IntArrayList saved = new IntArrayList();
        final IntArrayList lots = new IntArrayList();

        Range margin() {
            return margins.size() < 2
                    ? Range.UNDEFINED
                    : LotMeans.mean(margins.toDoubleArray(), marginLots.toIntArray());
        }

        /** A ratio of two sums: the error is that of the sum of what is left of the minutes beside the ratio. */
        Range minutes() {
            double all = 0;
            int good = 0;
            for (int i = 0; i < saved.size(); i++) {
                all += minutes.getDouble(i);
                good += saved.getInt(i);
            }
            if (good < 2) {
                return Range.UNDEFINED;
            }
            double ratio = all / good;
            double[] rest = new double[saved.size()];
            for (int i = 0; i < rest.length; i++) {
                rest[i] = minutes.getDouble(i) - ratio * saved.getInt(i);
            }
            Range total = LotMeans.total(rest, lots.toIntArray()).times(1.0 / good);
            return new Range(ratio, Math.max(0, ratio + total.low()), ratio + total.high());
        }
    }

    /** Of several months in a row, oldest first. */
    static List<MonthFigures> of(Outcomes outcomes, YieldTable byMonth, YearMonth last, int months) {
        History h = outcomes.history();
        YearMonth first = last.minusMonths(months - 1L);
        int[] start = new int[months + 1];
        for (int m = 0; m <= months; m++) {
            start[m] = (int) first.plusMonths(m).atDay(1).toEpochDay();
        }
        int[] received = new int[months];
        int[] comebacks = new int[months];
        long[] cost = new long[months];
        PerSet[] perSet = new PerSet[months];
        java.util.Arrays.setAll(perSet, m -> new PerSet());
        double unit = Math.pow(10, Math.max(0, h.currency().getDefaultFractionDigits()));
        for (int set = 0; set < h.sets(); set++) {
            if (!h.arrived(set)) {
                continue;
            }
            int left = outcomes.gone(set) ? place(start, h.exitDay(outcomes.exit(set))) : -1;
            if (left >= 0) {
                perSet[left].margins.add(outcomes.margin(set) / unit);
                perSet[left].marginLots.add(h.setLot(set));
            }
            int decided = outcomes.decided(set) ? place(start, outcomes.decidedDay(set)) : -1;
            if (decided >= 0) {
                perSet[decided].minutes.add(outcomes.micros(set) / MICROS);
                perSet[decided].saved.add(outcomes.saved(set) ? 1 : 0);
                perSet[decided].lots.add(h.setLot(set));
            }
            int arrived = place(start, h.lotArrival(h.setLot(set)));
            if (arrived >= 0) {
                received[arrived]++;
            }
            for (int c = h.comebackStart(set); c < h.comebackStart(set + 1); c++) {
                int back = place(start, h.comebackDay(c));
                if (back >= 0) {
                    comebacks[back]++;
                    cost[back] += h.comebackCost(c);
                }
            }
        }
        List<MonthFigures> series = new ArrayList<>();
        for (int m = 0; m < months; m++) {
            YearMonth month = first.plusMonths(m);
            YieldRow counted = byMonth.row(List.of(month.toString()));
            series.add(new MonthFigures(
                    month,
                    received[m],
                    counted,
                    comebacks[m],
                    new Money(cost[m], h.currency()),
                    perSet[m].margin(),
                    perSet[m].minutes()));
        }
        return List.copyOf(series);
    }

    /** Which month a day falls in; -1 where in none. */
    private static int place(int[] start, int day) {
        if (day < start[0] || day >= start[start.length - 1]) {
            return -1;
        }
        int m = 0;
        while (day >= start[m + 1]) {
            m++;
        }
        return m;
    }
}
