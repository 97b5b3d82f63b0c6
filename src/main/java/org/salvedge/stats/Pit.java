package org.salvedge.stats;

import java.util.Arrays;

/**
 * Where in its forecast distribution an outcome fell, from 0 to 1; uniform over many if the forecasts are right.
 *
 * <p>Sources: A. P. Dawid, JRSS A 147 (1984) 278-292; C. Czado, T. Gneiting and L. Held, "Predictive model assessment for count
 * data", Biometrics 65 (2009) 1254-1261, equation 2 (without randomising).
 */
public final class Pit {
    private Pit() {}

    /**
     * Of draws: the share below the outcome and, of those equal to it and of the gap it falls in, the part given by u.
     *
     * @param sortedDraws ascending, at least one
     * @param u uniform draw from 0 to 1, or 0.5 for the middle
     */
    public static double ofDraws(double[] sortedDraws, double y, double u) {
        int below = firstAtLeast(sortedDraws, y);
        int notAbove = firstAtLeast(sortedDraws, Math.nextUp(y));
        // As the rank of the outcome among m + 1 exchangeable values.
        return (below + u * (notAbove - below + 1)) / (sortedDraws.length + 1.0);
    }

    /** Of a count: between the chances of less than it and of at most it. */
    public static double randomised(double chanceBelow, double chanceAtMost, double u) {
        return chanceBelow + u * (chanceAtMost - chanceBelow);
    }

    /**
     * Of a count, as a distribution function of u rather than a draw: 0 up to the chance of less than the count, 1 from the chance of
     * at most the count on, and straight between. Its mean over outcomes is compared with u.
     */
    public static double nonRandomised(double chanceBelow, double chanceAtMost, double u) {
        if (u <= chanceBelow) {
            return 0;
        }
        return u >= chanceAtMost ? 1 : (u - chanceBelow) / (chanceAtMost - chanceBelow);
    }

    /** Share of outcomes inside the central interval of this level. */
    public static double coverage(double[] pit, double level) {
        double tail = (1 - level) / 2;
        return Arrays.stream(pit).filter(x -> x >= tail && x <= 1 - tail).count() / (double) pit.length;
    }

    private static int firstAtLeast(double[] sorted, double y) {
        int low = 0;
        int high = sorted.length;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (sorted[middle] < y) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
