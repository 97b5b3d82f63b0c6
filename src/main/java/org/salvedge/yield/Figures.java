package org.salvedge.yield;

import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import org.salvedge.stats.Interval;
import org.salvedge.stats.ProportionInterval;
import org.salvedge.stats.ShrunkYield;
import tech.tablesaw.api.DoubleColumn;
import tech.tablesaw.api.IntColumn;
import tech.tablesaw.api.LongColumn;
import tech.tablesaw.api.StringColumn;
import tech.tablesaw.api.Table;

/**
 * The counted cells as a Tablesaw table: one row a cell, the ratios by column arithmetic. What was counted before stands in
 * narrow typed columns, since Tablesaw's own grouping goes through texts, its 90th percentile is not type 7, and its sums over
 * booleans take the missing for numbers.
 */
final class Figures {
    static final double LEVEL = 0.95;
    private static final double MICROS = 1e6;
    private static final double MICROS_AN_HOUR = 60e6;
    /** A grouping column of this library must not be called as one of its own. */
    private static final String KEY_PREFIX = "by_";

    private Figures() {}

    static String keyColumn(Key key) {
        return KEY_PREFIX + key.code();
    }

    static Table table(Count count, List<Key> keys, ShrunkYield shrunk, FixMinutes minutes, Currency currency) {
        int n = count.cells.size();
        Table table = Table.create("yield");
        for (int k = 0; k < keys.size(); k++) {
            StringColumn texts = StringColumn.create(keyColumn(keys.get(k)));
            for (int c = 0; c < n; c++) {
                texts.append(count.text(k, c));
            }
            table.addColumns(texts);
        }
        Tally t = count.tally;
        table.addColumns(
                counts("sets", t.sets, n),
                counts("attempts", t.attempts, n),
                counts("decided", t.decided, n),
                counts("saved", t.saved, n),
                counts("gone", t.gone, n),
                counts("in_progress", t.inProgress, n),
                LongColumn.create("margin_minor", Arrays.copyOf(t.margin, n)));
        DoubleColumn saved = numbers(t.saved, n);
        DoubleColumn gone = numbers(t.gone, n);
        double unit = Math.pow(10, Math.max(0, currency.getDefaultFractionDigits()));
        DoubleColumn amount = numbers(t.margin, n).divide(unit);
        table.addColumns(
                ratio("yield", saved, numbers(t.decided, n)),
                ratio("first_pass_yield", numbers(t.firstPassed, n), numbers(t.firstTried, n)),
                ratio("minutes_per_saved", numbers(t.micros, n).divide(MICROS), saved),
                ratio("margin_per_set", amount, gone),
                ratio("margin_per_hour", amount, numbers(t.goneMicros, n).divide(MICROS_AN_HOUR)));
        intervals(table, count, shrunk);
        table.addColumns(
                DoubleColumn.create("minutes_median", minutes.median), DoubleColumn.create("minutes_p90", minutes.p90));
        return table;
    }

    private static void intervals(Table table, Count count, ShrunkYield shrunk) {
        int n = count.cells.size();
        double[][] ends = new double[5][n];
        for (int c = 0; c < n; c++) {
            boolean known = count.tally.decided[c] > 0;
            if (known) {
                Interval wilson = ProportionInterval.WILSON.of(count.tally.saved[c], count.tally.decided[c], LEVEL);
                ends[0][c] = wilson.low();
                ends[1][c] = wilson.high();
            }
            ends[0][c] = known ? ends[0][c] : Double.NaN;
            ends[1][c] = known ? ends[1][c] : Double.NaN;
            ends[2][c] = known ? shrunk.mean(c) : Double.NaN;
            ends[3][c] = known ? shrunk.low(c) : Double.NaN;
            ends[4][c] = known ? shrunk.high(c) : Double.NaN;
        }
        table.addColumns(
                DoubleColumn.create("yield_low", ends[0]),
                DoubleColumn.create("yield_high", ends[1]),
                DoubleColumn.create("yield_shrunk", ends[2]),
                DoubleColumn.create("yield_shrunk_low", ends[3]),
                DoubleColumn.create("yield_shrunk_high", ends[4]));
    }

    private static IntColumn counts(String name, int[] values, int n) {
        return IntColumn.create(name, Arrays.copyOf(values, n));
    }

    /** Not by {@code LongColumn.asDoubleColumn}, which goes through floats: 24 bits are less than a month's cents. */
    private static DoubleColumn numbers(long[] values, int n) {
        return DoubleColumn.create(
                "numbers", Arrays.stream(values, 0, n).asDoubleStream().toArray());
    }

    private static DoubleColumn numbers(int[] values, int n) {
        return DoubleColumn.create(
                "numbers", Arrays.stream(values, 0, n).asDoubleStream().toArray());
    }

    /** Missing where the bottom is 0. */
    private static DoubleColumn ratio(String name, DoubleColumn top, DoubleColumn bottom) {
        DoubleColumn divisor = bottom.copy();
        divisor.set(divisor.isEqualTo(0), Double.NaN);
        return top.divide(divisor).setName(name);
    }
}
