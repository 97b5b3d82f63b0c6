package org.salvedge.yield;

import it.unimi.dsi.fastutil.ints.Int2DoubleLinkedOpenHashMap;

/**
 * Means of values that come in lots: the error counts lots, not sets, since sets of one lot share much (the ratio estimate of W. G.
 * Cochran, "Sampling Techniques", 3rd ed. (1977), section 9A.2 on cluster means).
 */
final class LotMeans {
    private LotMeans() {}

    /** @param lots of each value, at least one value; with one lot only, values stand for themselves */
    static Range mean(double[] values, int[] lots) {
        double sum = 0;
        for (double v : values) {
            sum += v;
        }
        double mean = sum / values.length;
        return Range.normal(mean, Math.sqrt(squares(values, lots, mean)) / values.length);
    }

    /** Sum with the error of a sum. */
    static Range total(double[] values, int[] lots) {
        double n = values.length;
        if (n == 0) {
            return new Range(0, 0, 0);
        }
        return mean(values, lots).times(n);
    }

    private static double squares(double[] values, int[] lots, double mean) {
        Int2DoubleLinkedOpenHashMap byLot = new Int2DoubleLinkedOpenHashMap();
        double each = 0;
        for (int i = 0; i < values.length; i++) {
            byLot.addTo(lots[i], values[i] - mean);
            each += (values[i] - mean) * (values[i] - mean);
        }
        double whole = 0;
        for (double away : byLot.values()) {
            whole += away * away;
        }
        int k = byLot.size();
        double single = each * values.length / Math.max(1, values.length - 1);
        return k < 2 ? single : Math.max(single, whole * k / (k - 1.0));
    }
}
