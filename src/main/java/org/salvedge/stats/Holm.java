package org.salvedge.stats;

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
        int[] order = IntStream.range(0, p.length)
                .boxed()
                .sorted(Comparator.comparingDouble(i -> p[i]))
                .mapToInt(Integer::intValue)
                .toArray();
        double[] adjusted = new double[p.length];
        double least = 0;
        for (int i = 0; i < order.length; i++) {
            least = Math.max(least, Math.min(1, (p.length - i) * p[order[i]]));
            adjusted[order[i]] = least;
        }
        return adjusted;
    }
}
