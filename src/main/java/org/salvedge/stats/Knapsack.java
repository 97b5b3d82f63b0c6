package org.salvedge.stats;

import java.util.Arrays;
import java.util.BitSet;
import java.util.Comparator;

/**
 * Which items to take for the most value within two limits, as lots within cash and bench hours; and what one more unit of each
 * limit would be worth if items could be split.
 *
 * <p>Sources: S. Martello and P. Toth, "Knapsack Problems" (1990), chapter 2 (branch and bound); A. M. Geoffrion, "Lagrangean
 * relaxation for integer programming", Mathematical Programming Study 2 (1974) 82-114 (bounds by the multipliers of the linear
 * relaxation, which are its shadow prices).
 */
public final class Knapsack {
    private static final int MOST_ITEMS = 100;
    private static final long MOST_NODES = 20_000_000;

    private final BitSet chosen;
    private final double value;
    private final double bound;
    private final double[] shadow;
    private final boolean proven;

    private Knapsack(Search search, double[] shadow, double bound) {
        this.chosen = search.bestChosen;
        this.value = search.best;
        this.bound = bound;
        this.shadow = shadow;
        this.proven = search.nodes < MOST_NODES;
    }

    /**
     * @param values of the items, at most 100 of them; items of no value are never taken
     * @param first what each takes of the first limit, none negative
     * @param second what each takes of the second limit
     * @param firstLimit how much there is; infinite where there is no limit
     * @param secondLimit how much there is
     */
    public static Knapsack of(double[] values, double[] first, double[] second, double firstLimit, double secondLimit) {
        int n = values.length;
        if (n > MOST_ITEMS || n != first.length || n != second.length) {
            throw new IllegalArgumentException(
                    n + " values, " + first.length + " and " + second.length + " sizes; at most " + MOST_ITEMS);
        }
        if (!(firstLimit >= 0 && secondLimit >= 0)) {
            throw new IllegalArgumentException("limits " + firstLimit + ", " + secondLimit);
        }
        for (int i = 0; i < n; i++) {
            if (!(first[i] >= 0 && second[i] >= 0)) {
                throw new IllegalArgumentException("item " + i + " takes " + first[i] + ", " + second[i]);
            }
        }
        // A limit beyond the sum of all sizes never binds; a finite one keeps the multipliers finite.
        double one = Math.min(firstLimit, Arrays.stream(first).sum());
        double two = Math.min(secondLimit, Arrays.stream(second).sum());
        double[] shadow = multipliers(values, first, second, one, two);
        Search search = new Search(values, first, second, shadow);
        search.go(0, 0, one, two);
        return new Knapsack(search, shadow, dual(values, first, second, one, two, shadow[0], shadow[1]));
    }

    /** The best choice: whether to take each item. */
    public boolean takes(int item) {
        return chosen.get(item);
    }

    /** Value of the choice. */
    public double value() {
        return value;
    }

    /** Value if items could be split: never below {@link #value()}. */
    public double bound() {
        return bound;
    }

    /** Worth of one more unit of the first limit, if items could be split; 0 where the limit does not bind. */
    public double shadowPriceFirst() {
        return shadow[0];
    }

    /** Worth of one more unit of the second limit. */
    public double shadowPriceSecond() {
        return shadow[1];
    }

    /** Whether the choice is known to be the best; else the search was cut off. */
    public boolean proven() {
        return proven;
    }

    private static double dual(
            double[] v, double[] a, double[] b, double one, double two, double priceA, double priceB) {
        double sum = priceA * one + priceB * two;
        for (int i = 0; i < v.length; i++) {
            sum += Math.max(0, v[i] - priceA * a[i] - priceB * b[i]);
        }
        return sum;
    }

    /** The dual of the linear relaxation is convex and bends only on the items' lines, so a crossing of two is a minimum. */
    private static double[] multipliers(double[] v, double[] a, double[] b, double one, double two) {
        double[] best = {0, 0};
        double least = dual(v, a, b, one, two, 0, 0);
        int n = v.length;
        for (int i = 0; i < n; i++) {
            if (v[i] <= 0) {
                continue;
            }
            for (int j = -2; j < i; j++) {
                double[] at = crossing(v, a, b, i, j);
                if (at[0] >= 0 && at[1] >= 0) {
                    double value = dual(v, a, b, one, two, at[0], at[1]);
                    if (value < least - 1e-12 * Math.abs(least)) {
                        least = value;
                        best = at;
                    }
                }
            }
        }
        return best;
    }

    /** Where v = pa + qb holds for items i and j; j = -1 and -2 stand for the axes. */
    private static double[] crossing(double[] v, double[] a, double[] b, int i, int j) {
        if (j == -2) {
            return new double[] {a[i] > 0 ? v[i] / a[i] : -1, 0};
        }
        if (j == -1) {
            return new double[] {0, b[i] > 0 ? v[i] / b[i] : -1};
        }
        double determinant = a[i] * b[j] - a[j] * b[i];
        if (v[j] <= 0 || determinant == 0) {
            return new double[] {-1, -1};
        }
        return new double[] {(v[i] * b[j] - v[j] * b[i]) / determinant, (a[i] * v[j] - a[j] * v[i]) / determinant};
    }

    /** Depth first, items with most value for their price first. */
    private static final class Search {
        private final int[] order;
        private final double[] v;
        private final double[] a;
        private final double[] b;
        private final double priceA;
        private final double priceB;
        /** Largest gain over prices that the items from here on can add. */
        private final double[] rest;

        private final BitSet current = new BitSet();
        private BitSet bestChosen = new BitSet();
        private double best;
        private long nodes;

        Search(double[] v, double[] a, double[] b, double[] prices) {
            this.v = v;
            this.a = a;
            this.b = b;
            priceA = prices[0];
            priceB = prices[1];
            order = java.util.stream.IntStream.range(0, v.length)
                    .boxed()
                    .filter(i -> v[i] > 0)
                    .sorted(Comparator.comparingDouble(i -> -surplus(i)))
                    .mapToInt(Integer::intValue)
                    .toArray();
            rest = new double[order.length + 1];
            for (int k = order.length - 1; k >= 0; k--) {
                rest[k] = rest[k + 1] + Math.max(0, surplus(order[k]));
            }
        }

        private double surplus(int i) {
            return v[i] - priceA * a[i] - priceB * b[i];
        }

        void go(int k, double value, double one, double two) {
            if (value > best) {
                best = value;
                bestChosen = (BitSet) current.clone();
            }
            double most = value + priceA * one + priceB * two + rest[k];
            if (k == order.length || most <= best + 1e-9 * Math.abs(best) || ++nodes >= MOST_NODES) {
                return;
            }
            int i = order[k];
            if (a[i] <= one * (1 + 1e-12) && b[i] <= two * (1 + 1e-12)) {
                current.set(i);
                go(k + 1, value + v[i], one - a[i], two - b[i]);
                current.clear(i);
            }
            go(k + 1, value, one, two);
        }
    }
}
