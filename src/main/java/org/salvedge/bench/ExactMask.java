package org.salvedge.bench;

import it.unimi.dsi.fastutil.longs.Long2DoubleOpenHashMap;

/**
 * The plan with the least expected number of trials over at most six contacts, by branch and bound over what is still possible.
 * A state is a 64-bit set of culprit sets; bit 0 stands for "no mask on this side helps". Costs are trials times chance.
 */
final class ExactMask {
    /** A branch that cannot gain more than this share is not searched; over the few levels of a plan this stays below 0.5 %. */
    private static final double SLACK = 0.0005;

    private final int n;
    private final int tolerance;
    private final double[] weight = new double[64];
    private final long[] subsets; // of each mask, itself included, the empty set left out
    private final long[] holding; // culprit sets that hold contact i
    private final long start;
    private final int[] scratch = new int[64];
    private final Long2DoubleOpenHashMap costs = new Long2DoubleOpenHashMap();
    private final Long2DoubleOpenHashMap bounds = new Long2DoubleOpenHashMap();

    ExactMask(int[] sets, double[] weights, double notHere, int n, int tolerance) {
        this.n = n;
        this.tolerance = tolerance;
        long possible = 0;
        for (int j = 0; j < sets.length; j++) {
            possible |= 1L << sets[j];
            weight[sets[j]] = weights[j];
        }
        if (notHere > 0) {
            possible |= 1;
            weight[0] = notHere;
        }
        start = possible;
        subsets = new long[1 << n];
        holding = new long[n];
        for (int m = 1; m < 1 << n; m++) {
            for (int s = m; s > 0; s = (s - 1) & m) {
                subsets[m] |= 1L << s;
            }
            for (int i = 0; i < n; i++) {
                holding[i] |= (m >> i & 1L) << m;
            }
        }
        costs.defaultReturnValue(-1);
        bounds.defaultReturnValue(-1);
    }

    MaskSearch.Step best() {
        double cost = cost(start);
        double least = Double.POSITIVE_INFINITY;
        int choice = 0;
        int union = union(start);
        double mass = mass(start);
        for (int m = 1; m < 1 << n; m++) {
            long good = start & subsets[m];
            long bad = start & ~subsets[m];
            if ((m & ~union) != 0 || good == 0 || bad == 0) {
                continue;
            }
            if (mass + bound(good) + bound(bad) >= Math.min(least, cost * (1 + SLACK))) {
                continue;
            }
            double c = mass + cost(good) + cost(bad);
            if (c < least * (1 - 1e-12)) {
                least = c;
                choice = m;
            }
        }
        return new MaskSearch.Step(choice, least / mass);
    }

    private double cost(long state) {
        if (ended(state)) {
            return 0;
        }
        double known = costs.get(state);
        if (known >= 0) {
            return known;
        }
        double mass = mass(state);
        int union = union(state);
        int tries = 0;
        int[] masks = new int[1 << n];
        double[] least = new double[1 << n];
        for (int m = union; m > 0; m = (m - 1) & union) {
            long good = state & subsets[m];
            long bad = state & ~subsets[m];
            if (good != 0 && bad != 0) {
                masks[tries] = m;
                least[m] = mass + bound(good) + bound(bad);
                tries++;
            }
        }
        double best = Double.POSITIVE_INFINITY;
        sortBy(masks, tries, least);
        for (int k = 0; k < tries; k++) {
            int m = masks[k];
            if (least[m] >= best * (1 - SLACK)) {
                break;
            }
            long good = state & subsets[m];
            double c = mass + cost(good);
            if (c + bound(state & ~subsets[m]) < best * (1 - SLACK)) {
                best = Math.min(best, c + cost(state & ~subsets[m]));
            }
        }
        costs.put(state, best);
        return best;
    }

    private static void sortBy(int[] masks, int count, double[] key) {
        for (int i = 1; i < count; i++) {
            int m = masks[i];
            int j = i;
            while (j > 0 && (key[masks[j - 1]] > key[m] || key[masks[j - 1]] == key[m] && masks[j - 1] > m)) {
                masks[j] = masks[j - 1];
                j--;
            }
            masks[j] = m;
        }
    }

    private double bound(long state) {
        if (ended(state)) {
            return 0;
        }
        double known = bounds.get(state);
        if (known >= 0) {
            return known;
        }
        double[] w = new double[Long.bitCount(state)];
        int k = 0;
        for (long rest = state; rest != 0; rest &= rest - 1) {
            scratch[k] = Long.numberOfTrailingZeros(rest);
            w[k] = weight[scratch[k]];
            k++;
        }
        double b = tolerance == 0
                ? TrialsLeft.huffman(w, k)
                : Math.max(mass(state), TrialsLeft.entropy(scratch, w, k, Integer.bitCount(union(state)), tolerance));
        bounds.put(state, b);
        return b;
    }

    private boolean ended(long state) {
        if (state == 1) {
            return true;
        }
        if ((state & 1) == 1) {
            return false;
        }
        int fewest = Integer.MAX_VALUE;
        for (long rest = state; rest != 0; rest &= rest - 1) {
            fewest = Math.min(fewest, Integer.bitCount(Long.numberOfTrailingZeros(rest)));
        }
        return Integer.bitCount(union(state)) - fewest <= tolerance;
    }

    private int union(long state) {
        int u = 0;
        for (int i = 0; i < n; i++) {
            u |= (state & holding[i]) != 0 ? 1 << i : 0;
        }
        return u;
    }

    private double mass(long state) {
        double sum = 0;
        for (long rest = state; rest != 0; rest &= rest - 1) {
            sum += weight[Long.numberOfTrailingZeros(rest)];
        }
        return sum;
    }
}
