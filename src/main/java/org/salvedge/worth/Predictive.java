package org.salvedge.worth;

import java.util.Arrays;

/** A predictive distribution as equally likely draws. */
public final class Predictive {
    private final double[] sorted;
    private final double mean;
    private final double sd;

    Predictive(double[] draws) {
        if (draws.length == 0) {
            throw new IllegalArgumentException("no draws");
        }
        double sum = 0;
        for (double d : draws) {
            sum += d;
        }
        mean = sum / draws.length;
        double squares = 0;
        for (double d : draws) {
            squares += (d - mean) * (d - mean);
        }
        sd = draws.length == 1 ? 0 : Math.sqrt(squares / (draws.length - 1));
        sorted = draws.clone();
        Arrays.sort(sorted);
    }

    public int size() {
        return sorted.length;
    }

    public double mean() {
        return mean;
    }

    public double sd() {
        return sd;
    }

    /** Type 7 of Hyndman and Fan, The American Statistician 50 (1996) 361-365. */
    public double quantile(double p) {
        double at = p * (sorted.length - 1);
        int low = (int) Math.floor(at);
        int high = Math.min(low + 1, sorted.length - 1);
        return sorted[low] + (at - low) * (sorted[high] - sorted[low]);
    }

    /** The largest x that the outcome reaches with at least this chance. */
    public double reachedWith(double confidence) {
        int needed = (int) Math.ceil(confidence * sorted.length - 1e-9);
        return sorted[sorted.length - Math.max(1, needed)];
    }

    /** Chance of an outcome below x. */
    public double below(double x) {
        return firstAtLeast(x) / (double) sorted.length;
    }

    /** Where x falls: chance of less, plus half the chance of the same. */
    public double pit(double x) {
        int less = firstAtLeast(x);
        int notMore = less;
        while (notMore < sorted.length && sorted[notMore] == x) {
            notMore++;
        }
        return (less + notMore) / (2.0 * sorted.length);
    }

    private int firstAtLeast(double x) {
        int low = 0;
        int high = sorted.length;
        while (low < high) {
            int mid = (low + high) >>> 1;
            if (sorted[mid] < x) {
                low = mid + 1;
            } else {
                high = mid;
            }
        }
        return low;
    }

    /**
     * Continuous ranked probability score of the draws against the outcome, in the outcome's unit; less is better. Gneiting and
     * Raftery, Journal of the American Statistical Association 102 (2007) 359-378, eq. 21, for an empirical distribution.
     */
    public double crps(double outcome) {
        double distance = 0;
        double spread = 0;
        int n = sorted.length;
        for (int i = 0; i < n; i++) {
            distance += Math.abs(sorted[i] - outcome);
            spread += sorted[i] * (2.0 * i - n + 1);
        }
        return distance / n - spread / ((double) n * n);
    }

    /** The draws in ascending order. */
    public double[] sortedDraws() {
        return sorted.clone();
    }
}
