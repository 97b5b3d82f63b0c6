package org.salvedge.stats;

import java.util.function.ToDoubleFunction;

/**
 * A change of a quantity made of several factors, split among them so that the order of changing them does not matter.
 *
 * <p>Source: P. Das Gupta, "Standardization and Decomposition of Rates: A User's Manual", U.S. Bureau of the Census, Current
 * Population Reports P23-186 (1993), chapter 2; it is the value of L. S. Shapley (1953) of the game of changing factors.
 */
public final class Factors {
    private static final int MOST = 16;

    private Factors() {}

    /**
     * Effects, one a factor; they add up to the quantity after less that before.
     *
     * @param before factors before, at most 16
     * @param after the same factors after
     * @param quantity of the factors
     */
    public static double[] effects(double[] before, double[] after, ToDoubleFunction<double[]> quantity) {
        int n = before.length;
        if (n != after.length || n > MOST) {
            throw new IllegalArgumentException(n + " factors before, " + after.length + " after; at most " + MOST);
        }
        double[] value = new double[1 << n];
        double[] at = new double[n];
        for (int changed = 0; changed < value.length; changed++) {
            for (int i = 0; i < n; i++) {
                at[i] = (changed >> i & 1) == 1 ? after[i] : before[i];
            }
            value[changed] = quantity.applyAsDouble(at.clone());
        }
        // Share of the orders in which exactly the factors of a set of this size come first.
        double[] weight = new double[n];
        for (int size = 0; size < n; size++) {
            weight[size] = 1.0 / n;
            for (int i = 1; i <= size; i++) {
                weight[size] *= i / (double) (n - i);
            }
        }
        double[] effects = new double[n];
        for (int changed = 0; changed < value.length; changed++) {
            for (int i = 0; i < n; i++) {
                if ((changed >> i & 1) == 0) {
                    effects[i] += weight[Integer.bitCount(changed)] * (value[changed | 1 << i] - value[changed]);
                }
            }
        }
        return effects;
    }

    /** The product of the factors. */
    public static double product(double[] factors) {
        double product = 1;
        for (double f : factors) {
            product *= f;
        }
        return product;
    }
}
