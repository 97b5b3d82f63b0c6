package org.salvedge.stats;

import java.util.Arrays;
import java.util.Comparator;
import java.util.stream.IntStream;

/**
 * Chances of several tests made at once, raised so that a false alarm in any of them is no more likely than the level.
 *
 * <p>Source: S. Holm, "A simple sequentially rejective multiple test procedure", Scandinavian Journal of Statistics 6 (1979) 65-70.
 */
public final class Holm {
    private Holm() {}

    /** Adjusted chances, in the order given; each may be compared with the level as it is. */
    public static double[] adjust(double... p) {
        double[] alike = new double[p.length];
        Arrays.fill(alike, 1);
        return adjust(p, alike, 0);
    }

    /**
     * The same for tests of unequal weight: the least chance by its weight is multiplied by the sum of all weights over its own, the next
     * by the sum of those left.
     *
     * @param weights above 0, one a test
     * @param beside weight of tests that are made elsewhere and never taken out of the sum
     */
    public static double[] adjust(double[] p, double[] weights, double beside) {
        int[] order = IntStream.range(0, p.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> p[i] / weights[i]))
                .mapToInt(Integer::intValue)
                .toArray();
        double[] adjusted = new double[p.length];
        double least = 0;
        for (int from = 0; from < order.length; from++) {
            int i = order[from];
            double left = beside
                    + Arrays.stream(order, from, order.length)
                            .mapToDouble(j -> weights[j])
                            .sum();
            least = Math.max(least, Math.min(1, left / weights[i] * p[i]));
            adjusted[i] = least;
        }
        return adjusted;
    }
}
