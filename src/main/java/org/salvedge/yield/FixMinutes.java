package org.salvedge.yield;

import org.salvedge.stats.Quantiles;

/** Median and 90th percentile of the minutes of each cell's fixes, type 7. */
final class FixMinutes {
    private static final double MEDIAN = 0.5;
    private static final double P90 = 0.9;
    private static final double MICROS = 1e6;

    final double[] median;
    final double[] p90;

    FixMinutes(Count count) {
        int cells = count.cells.size();
        median = new double[cells];
        p90 = new double[cells];
        int n = count.fixCell.size();
        int[] start = new int[cells + 1];
        for (int i = 0; i < n; i++) {
            start[count.fixCell.getInt(i) + 1]++;
        }
        for (int c = 0; c < cells; c++) {
            start[c + 1] += start[c];
        }
        int[] next = start.clone();
        double[] minutes = new double[n];
        for (int i = 0; i < n; i++) {
            minutes[next[count.fixCell.getInt(i)]++] = count.fixMicros.getLong(i) / MICROS;
        }
        for (int c = 0; c < cells; c++) {
            median[c] = Double.NaN;
            p90[c] = Double.NaN;
            if (start[c + 1] > start[c]) {
                double[] both = Quantiles.reordering(minutes, start[c], start[c + 1], MEDIAN, P90);
                median[c] = both[0];
                p90[c] = both[1];
            }
        }
    }
}
