package org.salvedge.worth;

import java.util.Arrays;
import java.util.Comparator;

/** Weighted draws (importance sampling: A. F. M. Smith and A. E. Gelfand, The American Statistician 46 (1992) 84-88). */
final class Reweighted {
    private Reweighted() {}

    /** As many draws of equal weight, at even steps of the weighted distribution; the same ones where all weights are equal. */
    static double[] even(double[] draws, double[] weight) {
        double total = 0;
        boolean same = true;
        for (double w : weight) {
            total += w;
            same &= w == weight[0];
        }
        if (same) {
            return draws;
        }
        Integer[] order = new Integer[draws.length];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, Comparator.comparingDouble((Integer i) -> draws[i]));
        double[] even = new double[draws.length];
        int at = 0;
        double before = weight[order[0]];
        for (int j = 0; j < even.length; j++) {
            double target = (j + 0.5) / even.length * total;
            while (before < target && at < order.length - 1) {
                before += weight[order[++at]];
            }
            even[j] = draws[order[at]];
        }
        return even;
    }

    /** How many draws of equal weight tell as much (Kish 1965). */
    static double effective(double[] weight) {
        double sum = 0;
        double squares = 0;
        for (double w : weight) {
            sum += w;
            squares += w * w;
        }
        return squares == 0 ? 0 : sum * sum / squares;
    }
}
