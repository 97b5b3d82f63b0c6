package org.salvedge.stats;

import org.apache.commons.statistics.descriptive.Quantile;
import org.apache.commons.statistics.descriptive.Quantile.EstimationMethod;

/**
 * Sample quantiles of type 7, as spreadsheets compute them: linear between order statistics, position 1 + p(n-1).
 *
 * <p>Source: R. J. Hyndman and Y. Fan, "Sample quantiles in statistical packages", The American Statistician 50 (1996) 361-365,
 * definition 7.
 */
public final class Quantiles {
    private static final Quantile COPYING = Quantile.withDefaults().with(EstimationMethod.HF7);
    private static final Quantile IN_PLACE = COPYING.withCopy(false);

    private Quantiles() {}

    /** Of the whole array, which stays as it is; not a number where it is empty. */
    public static double of(double[] values, double p) {
        return COPYING.evaluate(values, p);
    }

    /** As {@link #of(double[], double)} for several probabilities at once. */
    public static double[] of(double[] values, double... p) {
        return COPYING.evaluate(values, p);
    }

    /**
     * Of values[from] to values[to - 1], whose order is changed: nothing is copied, and the time is linear.
     *
     * @return not a number where the slice is empty
     */
    public static double[] reordering(double[] values, int from, int to, double... p) {
        return IN_PLACE.evaluateRange(values, from, to, p);
    }

    /** As {@link #reordering(double[], int, int, double...)} for whole numbers, as minutes or minor units. */
    public static double[] reordering(int[] values, int from, int to, double... p) {
        return IN_PLACE.evaluateRange(values, from, to, p);
    }

    /** Of values[from] to values[to - 1], which must be in ascending order; not a number where the slice is empty. */
    public static double ofSorted(double[] values, int from, int to, double p) {
        if (!(p >= 0 && p <= 1)) {
            throw new IllegalArgumentException("probability " + p);
        }
        int n = to - from;
        if (n == 0) {
            return Double.NaN;
        }
        double position = p * (n - 1);
        int below = from + (int) position;
        double share = position - (int) position;
        double low = values[below];
        return share == 0 ? low : low + share * (values[below + 1] - low);
    }
}
