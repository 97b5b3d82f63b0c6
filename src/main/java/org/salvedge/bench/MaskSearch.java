package org.salvedge.bench;

import it.unimi.dsi.fastutil.ints.IntArrayList;

/**
 * The trials still to come when verdicts are never wrong: what is left possible, whether that is enough, and the next trial.
 * Contacts that no possible culprit set holds are left out of sight, so that the search shrinks as trials come in. Up to {@value
 * #EXACT} contacts in sight (one fewer with a tolerance) the plan is optimal within half a percent ({@link ExactMask}); beyond, each step takes the trial
 * whose two outcomes leave the least to find out ({@link GreedyMask}).
 */
final class MaskSearch {
    static final int EXACT = 6;

    /** A trial and the expected number of trials from it to the end, itself included. */
    record Step(int masked, double expectedTrials) {}

    private final int[] sets; // over the contacts in sight
    private final double[] weights;
    private final double notHere;
    private final int[] inSight; // contact of each bit
    private final int tolerance;

    private MaskSearch(int[] sets, double[] weights, double notHere, int[] inSight, int tolerance) {
        this.sets = sets;
        this.weights = weights;
        this.notHere = notHere;
        this.inSight = inSight;
        this.tolerance = tolerance;
    }

    /** @param w chance of each set of n contacts, and last that no mask on this side helps */
    static MaskSearch over(double[] w, int n, int tolerance) {
        IntArrayList possible = new IntArrayList();
        int union = 0;
        for (int s = 0; s < 1 << n; s++) {
            if (w[s] > 0) {
                possible.add(s);
                union |= s;
            }
        }
        int[] inSight = new int[Integer.bitCount(union)];
        for (int i = 0, k = 0; i < n; i++) {
            if ((union >> i & 1) == 1) {
                inSight[k++] = i;
            }
        }
        int[] sets = new int[possible.size()];
        double[] weights = new double[sets.length];
        for (int j = 0; j < sets.length; j++) {
            weights[j] = w[possible.getInt(j)];
            for (int k = 0; k < inSight.length; k++) {
                sets[j] |= (possible.getInt(j) >> inSight[k] & 1) << k;
            }
        }
        return new MaskSearch(sets, weights, w[1 << n], inSight, tolerance);
    }

    boolean notHereSure() {
        return sets.length == 0;
    }

    /** One mask is acceptable for all that is still possible. */
    boolean done() {
        if (sets.length == 0 || notHere > 0) {
            return false;
        }
        int fewest = Integer.MAX_VALUE;
        for (int s : sets) {
            fewest = Math.min(fewest, Integer.bitCount(s));
        }
        return inSight.length - fewest <= tolerance;
    }

    /** All contacts that may be culprits, as a mask over the whole ribbon. */
    int mask() {
        return whole((1 << inSight.length) - 1);
    }

    Step best() {
        Step step = inSight.length <= (tolerance == 0 ? EXACT : EXACT - 1)
                ? new ExactMask(sets, weights, notHere, inSight.length, tolerance).best()
                : new GreedyMask(inSight.length, tolerance).best(sets, weights, notHere);
        return new Step(whole(step.masked()), step.expectedTrials());
    }

    private int whole(int compressed) {
        int m = 0;
        for (int k = 0; k < inSight.length; k++) {
            m |= (compressed >> k & 1) << inSight[k];
        }
        return m;
    }
}
