package org.salvedge.yield;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Text;
import org.salvedge.stats.Kitagawa;
import org.salvedge.stats.PChart;

/**
 * A month's yield against that of the month before: how much of the change is another mix of families and faults, how much other
 * rates within them (Kitagawa 1955, JASA 50, 1168-1194), and whether the month stands outside the p' chart of all months before
 * it (Laney 2002, Quality Engineering 14, 531-537, with the rounded table constant).
 *
 * @param now the row of the month in the yield table by month
 * @param before the row of the month before
 * @param split null where one of the two months decided nothing
 * @param contributors cells by family and fault, largest effect first
 * @param chart null with fewer than two months before
 */
public record MonthChange(
        YearMonth month,
        YieldRow now,
        YieldRow before,
        @Nullable Kitagawa split,
        List<Contributor> contributors,
        @Nullable Chart chart) {

    /** What one family and fault did to the change. */
    public record Contributor(String family, String fault, double mix, double rate) {}

    /** @param months months the chart was made from */
    public record Chart(double centre, double low, double high, double sigmaZ, int months, boolean signal) {}

    private record CellKey(String family, String fault) implements Comparable<CellKey> {
        @Override
        public int compareTo(CellKey other) {
            int c = Text.CODE_POINTS.compare(family, other.family);
            return c == 0 ? Text.CODE_POINTS.compare(fault, other.fault) : c;
        }
    }

    public MonthChange {
        contributors = List.copyOf(contributors);
    }

    public static MonthChange of(Outcomes outcomes, YearMonth month) {
        YieldTable byMonth = YieldTable.of(outcomes, List.of(Key.MONTH));
        Map<CellKey, long[]> cells = new TreeMap<>();
        add(cells, DecidedCell.of(outcomes, month.minusMonths(1)), 0);
        add(cells, DecidedCell.of(outcomes, month), 2);
        YieldRow now = byMonth.row(List.of(month.toString()));
        YieldRow before = byMonth.row(List.of(month.minusMonths(1).toString()));
        Kitagawa split = now.decided() == 0 || before.decided() == 0 ? null : split(cells);
        return new MonthChange(month, now, before, split, contributors(cells, split), chart(byMonth, month, now));
    }

    private static void add(Map<CellKey, long[]> cells, List<DecidedCell> of, int at) {
        for (DecidedCell c : of) {
            long[] counts = cells.computeIfAbsent(new CellKey(c.family(), c.fault()), k -> new long[4]);
            counts[at] = c.saved();
            counts[at + 1] = c.decided();
        }
    }

    private static Kitagawa split(Map<CellKey, long[]> cells) {
        return Kitagawa.ofCounts(column(cells, 0), column(cells, 1), column(cells, 2), column(cells, 3));
    }

    private static long[] column(Map<CellKey, long[]> cells, int at) {
        return cells.values().stream().mapToLong(c -> c[at]).toArray();
    }

    private static List<Contributor> contributors(Map<CellKey, long[]> cells, @Nullable Kitagawa split) {
        List<Contributor> out = new ArrayList<>();
        if (split != null) {
            int i = 0;
            for (CellKey k : cells.keySet()) {
                Kitagawa.Cell cell = split.cells().get(i++);
                out.add(new Contributor(k.family, k.fault, cell.mix(), cell.rate()));
            }
            out.sort(Comparator.comparingDouble((Contributor c) -> -Math.abs(c.mix + c.rate)));
        }
        return out;
    }

    private static @Nullable Chart chart(YieldTable byMonth, YearMonth month, YieldRow now) {
        List<YieldRow> past = byMonth.rows().stream()
                .filter(r -> r.decided() > 0 && !r.keys().get(0).isEmpty())
                .filter(r -> YearMonth.parse(r.keys().get(0)).isBefore(month))
                .toList();
        if (past.size() < 2) {
            return null;
        }
        long[] saved = past.stream().mapToLong(YieldRow::saved).toArray();
        long[] decided = past.stream().mapToLong(YieldRow::decided).toArray();
        PChart chart = PChart.laney(saved, decided, PChart.D2_TABLE);
        PChart.Point point = chart.at(now.saved(), Math.max(1, now.decided()));
        return new Chart(
                chart.centre(),
                point.low(),
                point.high(),
                chart.sigmaZ(),
                past.size(),
                now.decided() > 0 && point.outside());
    }
}
