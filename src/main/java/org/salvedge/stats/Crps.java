package org.salvedge.stats;

import java.util.Arrays;

/**
 * Continuous ranked probability score of a forecast distribution against what came: E|X-y| - E|X-X'|/2, in the unit of the
 * quantity; smaller is better, and for a single number it is the absolute error.
 *
 * <p>Sources: T. Gneiting and A. E. Raftery, "Strictly proper scoring rules, prediction, and estimation", JASA 102 (2007) 359-378,
 * equation 21, doi:10.1198/016214506000001437; T. Gneiting et al., Monthly Weather Review 133 (2005) 1098-1118, equation 5
 * (normal); C. A. T. Ferro, "Fair scores for ensemble forecasts", QJRMS 140 (2014) 1917-1923.
 */
public final class Crps {
    private Crps() {}

    /** Of a normal distribution. */
    public static double normal(double mean, double sd, double y) {
        if (sd == 0) {
            return Math.abs(y - mean);
        }
        double z = (y - mean) / sd;
        return sd * (z * (2 * Normals.below(z) - 1) + 2 * Normals.density(z) - 1 / Math.sqrt(Math.PI));
    }

    /** Of draws taken as the distribution itself. */
    public static double ensemble(double[] draws, double y) {
        double[] sorted = draws.clone();
        Arrays.sort(sorted);
        return ofSorted(sorted, y);
    }

    /** As {@link #ensemble}, of draws in ascending order. */
    public static double ofSorted(double[] draws, double y) {
        double m = draws.length;
        return error(draws, y) - differences(draws) / (m * m);
    }

    /**
     * Of draws taken as a sample of the distribution: unbiased for that of endless draws.
     *
     * @param draws at least two
     */
    public static double fair(double[] draws, double y) {
        double[] sorted = draws.clone();
        Arrays.sort(sorted);
        double m = draws.length;
        if (m < 2) {
            throw new IllegalArgumentException("the fair score needs two draws");
        }
        return error(sorted, y) - differences(sorted) / (m * (m - 1));
    }

    private static double error(double[] draws, double y) {
        if (draws.length == 0) {
            throw new IllegalArgumentException("no draws");
        }
        double sum = 0;
        for (double x : draws) {
            sum += Math.abs(x - y);
        }
        return sum / draws.length;
    }

    /** Sum of |x-x'| over unordered pairs: each value counts once for each below it, less once for each above. */
    private static double differences(double[] sorted) {
        int m = sorted.length;
        double middle = sorted[m / 2];
        double sum = 0;
        for (int i = 0; i < m; i++) {
            sum += (2.0 * i - m + 1) * (sorted[i] - middle);
        }
        return sum;
    }
}
