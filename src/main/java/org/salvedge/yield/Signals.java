package org.salvedge.yield;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Fix;
import org.salvedge.shop.History;
import org.salvedge.stats.IndividualsChart;
import org.salvedge.stats.PChart;
import org.salvedge.stats.RunRule;

/**
 * Control charts: yields by month and by lot (Laney's p'), minutes by month (individuals chart of the mean log minutes of fixes, each
 * against its fix's own mean), with the zone rules of Western Electric.
 *
 * @param months up to thirteen, the last is the month in question; the chart is made from those before it
 * @param lots the lots decided by four fifths at least, latest last; the chart is made from all of them
 * @param minutes factor on the usual minutes
 */
public record Signals(List<Point> months, List<Point> lots, List<Point> minutes) {
    private static final int MONTHS = 13;
    private static final int LOTS = 30;
    private static final int FEWEST = 4;
    private static final int FEWEST_SETS = 10;
    private static final double DONE = 0.8;

    /**
     * A point of a chart.
     *
     * @param n sets or fixes behind it
     * @param rules that fire at this point
     */
    public record Point(
            String name, int n, double value, double centre, double low, double high, double z, List<RunRule> rules) {
        public Point {
            rules = List.copyOf(rules);
        }
    }

    public Signals {
        months = List.copyOf(months);
        lots = List.copyOf(lots);
        minutes = List.copyOf(minutes);
    }

    /** Whether a rule fires at a month's yield. */
    public boolean yieldSignal(YearMonth month) {
        Point point = last(months, month);
        return point != null && !point.rules().isEmpty();
    }

    /** The month's minutes, where they are beyond their limits; else null. */
    public @Nullable Point minutesSignal(YearMonth month) {
        Point point = last(minutes, month);
        return point != null && point.rules().contains(RunRule.BEYOND_3) ? point : null;
    }

    private static @Nullable Point last(List<Point> points, YearMonth month) {
        Point last = points.isEmpty() ? null : points.get(points.size() - 1);
        return last != null && last.name().equals(month.toString()) ? last : null;
    }

    /** Counts what it needs. */
    public static Signals of(Outcomes o, YearMonth month) {
        return of(o, month, YieldTable.of(o, List.of(Key.MONTH)), LotLine.of(o));
    }

    static Signals of(Outcomes o, YearMonth month, YieldTable byMonth, List<LotLine> lotLines) {
        return new Signals(months(month, byMonth), lots(lotLines), minutes(o, month));
    }

    private static List<Point> months(YearMonth month, YieldTable byMonth) {
        List<YieldRow> rows = byMonth.rows().stream()
                .filter(r -> r.decided() > 0 && !r.keys().get(0).isEmpty())
                .filter(r -> !YearMonth.parse(r.keys().get(0)).isAfter(month))
                .toList();
        rows = rows.subList(Math.max(0, rows.size() - MONTHS), rows.size());
        return points(
                rows.stream().map(r -> r.keys().get(0)).toList(),
                rows.stream().mapToLong(YieldRow::saved).toArray(),
                rows.stream().mapToLong(YieldRow::decided).toArray(),
                rows.size() - 1);
    }

    private static List<Point> lots(List<LotLine> lines) {
        List<LotLine> done = lines.stream()
                .filter(l -> l.decided() >= FEWEST_SETS && l.decided() >= DONE * l.arrived())
                .sorted(java.util.Comparator.comparing(LotLine::bought))
                .toList();
        done = done.subList(Math.max(0, done.size() - LOTS), done.size());
        return points(
                done.stream().map(LotLine::lot).toList(),
                done.stream().mapToLong(LotLine::saved).toArray(),
                done.stream().mapToLong(LotLine::decided).toArray(),
                done.size());
    }

    /** @param base how many of the first points the chart is made from */
    private static List<Point> points(List<String> names, long[] saved, long[] decided, int base) {
        if (base < FEWEST) {
            return List.of();
        }
        PChart chart = PChart.laney(Arrays.copyOf(saved, base), Arrays.copyOf(decided, base), PChart.D2_TABLE);
        PChart.Point[] at = new PChart.Point[saved.length];
        double[] z = new double[saved.length];
        for (int i = 0; i < at.length; i++) {
            at[i] = chart.at(saved[i], decided[i]);
            z[i] = at[i].z();
        }
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < at.length; i++) {
            points.add(new Point(
                    names.get(i),
                    (int) decided[i],
                    at[i].proportion(),
                    chart.centre(),
                    at[i].low(),
                    at[i].high(),
                    z[i],
                    rules(z, i)));
        }
        return points;
    }

    private static List<RunRule> rules(double[] z, int at) {
        return Arrays.stream(RunRule.values()).filter(r -> r.fires(z, at)).toList();
    }

    private static List<Point> minutes(Outcomes o, YearMonth month) {
        History h = o.history();
        int noFix = h.fixes().find(Fix.NONE.code());
        YearMonth first = month.minusMonths(MONTHS - 1L);
        int from = (int) first.atDay(1).toEpochDay();
        int to = (int) month.atEndOfMonth().toEpochDay();
        int[] starts = new int[MONTHS + 1];
        for (int m = 0; m <= MONTHS; m++) {
            starts[m] = (int) first.plusMonths(m).atDay(1).toEpochDay();
        }
        double[][] sum = new double[h.fixes().size()][MONTHS];
        int[][] n = new int[h.fixes().size()][MONTHS];
        for (int a = 0; a < h.attempts(); a++) {
            int day = h.attemptDay(a);
            if (day >= from && day <= to && h.attemptFix(a) != noFix && h.attemptFixMicros(a) > 0) {
                int at = Arrays.binarySearch(starts, day);
                int m = at >= 0 ? at : -at - 2;
                sum[h.attemptFix(a)][m] += Math.log((double) h.attemptFixMicros(a));
                n[h.attemptFix(a)][m]++;
            }
        }
        return minutePoints(first, sum, n);
    }

    private static List<Point> minutePoints(YearMonth first, double[][] sum, int[][] n) {
        double[] away = new double[MONTHS];
        int[] fixes = new int[MONTHS];
        for (int f = 0; f < sum.length; f++) {
            double mean = Arrays.stream(sum[f]).sum()
                    / Math.max(1, Arrays.stream(n[f]).sum());
            for (int m = 0; m < MONTHS; m++) {
                away[m] += sum[f][m] - n[f][m] * mean;
                fixes[m] += n[f][m];
            }
        }
        List<Integer> known = new ArrayList<>();
        for (int m = 0; m < MONTHS; m++) {
            if (fixes[m] > 0) {
                known.add(m);
                away[m] /= fixes[m];
            }
        }
        if (known.size() <= FEWEST || fixes[MONTHS - 1] == 0) {
            return List.of();
        }
        double[] values = known.stream().mapToDouble(m -> away[m]).toArray();
        IndividualsChart chart = IndividualsChart.of(Arrays.copyOf(values, values.length - 1));
        double[] z = Arrays.stream(values).map(chart::z).toArray();
        List<Point> points = new ArrayList<>();
        for (int i = 0; i < values.length; i++) {
            points.add(new Point(
                    first.plusMonths(known.get(i)).toString(),
                    fixes[known.get(i)],
                    Math.exp(values[i]),
                    Math.exp(chart.centre()),
                    Math.exp(chart.limits().low()),
                    Math.exp(chart.limits().high()),
                    z[i],
                    rules(z, i)));
        }
        return points;
    }
}
