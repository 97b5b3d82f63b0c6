package org.salvedge.stats;

import java.util.Arrays;

/**
 * What makes one indifferent between a sure amount and paying for a look at a random prize: the z with E max(X - z, 0) = cost.
 * Open the box with the highest one first; stop when the best prize seen beats all that are left.
 *
 * <p>Source: M. L. Weitzman, "Optimal search for the best alternative", Econometrica 47 (1979) 641-654 (here without
 * discounting).
 */
public final class ReservationValue {
    private ReservationValue() {}

    /** For draws of equal chance, at least one. */
    public static double ofDraws(double[] draws, double cost) {
        double[] chances = new double[draws.length];
        Arrays.fill(chances, 1.0 / draws.length);
        return of(draws, chances, cost);
    }

    /**
     * @param prizes in any order
     * @param chances of the prizes; they add up to 1
     * @param cost of the look; at 0 the largest prize is the answer
     */
    public static double of(double[] prizes, double[] chances, double cost) {
        if (prizes.length == 0 || prizes.length != chances.length || !(cost >= 0)) {
            throw new IllegalArgumentException(prizes.length + " prizes, " + chances.length + " chances, cost " + cost);
        }
        Integer[] order = new Integer[prizes.length];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, (a, b) -> Double.compare(prizes[b], prizes[a]));
        // E max(X - z, 0) is a line between prizes: p above times (mean above - z).
        double chance = 0;
        double sum = 0;
        for (int k = 0; k < order.length; k++) {
            chance += chances[order[k]];
            sum += chances[order[k]] * prizes[order[k]];
            double next = k + 1 < order.length ? prizes[order[k + 1]] : Double.NEGATIVE_INFINITY;
            if (chance > 0 && sum - chance * next >= cost) {
                return (sum - cost) / chance;
            }
        }
        throw new IllegalArgumentException("chances " + Arrays.toString(chances) + " have no prize");
    }
}
