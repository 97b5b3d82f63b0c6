package org.salvedge.stats;

import java.util.Arrays;
import java.util.stream.IntStream;

/**
 * Western Electric's zone rules. A rule fires at a point only if that point lies in the rule's zone itself; points on a line lie
 * inside it.
 *
 * <p>Sources: Western Electric Company, "Statistical Quality Control Handbook" (1956); C. W. Champ and W. H. Woodall,
 * "Exact results for Shewhart control charts with supplementary runs rules", Technometrics 29 (1987) 393-399 (run lengths).
 */
public enum RunRule {
    /** One point beyond 3 sigma. */
    BEYOND_3(1, 1, 3),
    /** Two of three beyond 2 sigma on the same side. */
    TWO_OF_THREE_BEYOND_2(2, 3, 2),
    /** Four of five beyond 1 sigma on the same side. */
    FOUR_OF_FIVE_BEYOND_1(4, 5, 1),
    /** Eight in a row on the same side of the centre. */
    EIGHT_ON_ONE_SIDE(8, 8, 0);

    private final int hits;
    private final int window;
    private final double zone;

    RunRule(int hits, int window, double zone) {
        this.hits = hits;
        this.window = window;
        this.zone = zone;
    }

    /**
     * Indices at which the rule fires, ascending.
     *
     * @param z distances from the centre in sigmas, in order of time
     */
    public int[] signals(double... z) {
        return IntStream.range(0, z.length).filter(i -> fires(z, i)).toArray();
    }

    /** Whether the rule fires at a point. */
    public boolean fires(double[] z, int at) {
        if (at + 1 < hits || !(Math.abs(z[at]) > zone)) {
            return false;
        }
        double side = Math.signum(z[at]);
        return Arrays.stream(z, Math.max(0, at + 1 - window), at + 1)
                        .filter(x -> x * side > zone)
                        .count()
                >= hits;
    }
}
