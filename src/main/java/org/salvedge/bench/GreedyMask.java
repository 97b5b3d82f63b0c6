package org.salvedge.bench;

import java.util.Arrays;

/**
 * A good plan over more than six contacts: each step looks one trial ahead and takes the one after which a Huffman tree over
 * what is left would be shortest. The expected number of trials is summed over the tree of outcomes as far as the work bound
 * goes; what lies deeper counts with its lower bound.
 */
final class GreedyMask {
    /** Masks whose two outcomes are looked at closely. */
    private static final int LOOKED_AT = 24;
    /** Elementary steps spent on one answer: about a second. */
    private static final double WORK = 6e8;

    private final int n;
    private final int tolerance;
    private double work;

    GreedyMask(int n, int tolerance) {
        this.n = n;
        this.tolerance = tolerance;
    }

    MaskSearch.Step best(int[] sets, double[] weights, double notHere) {
        int first = choose(sets, weights, notHere);
        double mass = mass(weights) + notHere;
        double cost = mass + outcome(sets, weights, notHere, first);
        return new MaskSearch.Step(first, cost / mass);
    }

    /** Trials times chance after the trial {@code m}. */
    private double outcome(int[] sets, double[] weights, double notHere, int m) {
        int good = 0;
        for (int s : sets) {
            good += (s & ~m) == 0 ? 1 : 0;
        }
        int[] goodSets = new int[good];
        double[] goodWeights = new double[good];
        int[] badSets = new int[sets.length - good];
        double[] badWeights = new double[sets.length - good];
        int g = 0;
        int b = 0;
        for (int j = 0; j < sets.length; j++) {
            if ((sets[j] & ~m) == 0) {
                goodSets[g] = sets[j];
                goodWeights[g++] = weights[j];
            } else {
                badSets[b] = sets[j];
                badWeights[b++] = weights[j];
            }
        }
        return cost(goodSets, goodWeights, 0) + cost(badSets, badWeights, notHere);
    }

    private double cost(int[] sets, double[] weights, double notHere) {
        if (ended(sets, notHere)) {
            return 0;
        }
        double mass = mass(weights) + notHere;
        if (work > WORK) {
            return Math.max(mass, bound(sets, weights, notHere));
        }
        return mass + outcome(sets, weights, notHere, choose(sets, weights, notHere));
    }

    private boolean ended(int[] sets, double notHere) {
        if (sets.length == 0) {
            return true;
        }
        if (notHere > 0) {
            return false;
        }
        int union = 0;
        int fewest = Integer.MAX_VALUE;
        for (int s : sets) {
            union |= s;
            fewest = Math.min(fewest, Integer.bitCount(s));
        }
        return Integer.bitCount(union) - fewest <= tolerance;
    }

    private int choose(int[] sets, double[] weights, double notHere) {
        double[] w = new double[1 << n];
        int union = 0;
        for (int j = 0; j < sets.length; j++) {
            w[sets[j]] = weights[j];
            union |= sets[j];
        }
        double[] good = NoisyMask.subsetSums(w, n);
        work += (double) n * good.length;
        double half = (mass(weights) + notHere) / 2;
        int[] near = nearest(good, half, union, sets, notHere);
        int choice = near[0];
        double least = Double.POSITIVE_INFINITY;
        if (near.length > 1) {
            for (int m : near) {
                double c = split(sets, weights, notHere, m);
                if (c < least - 1e-15) {
                    least = c;
                    choice = m;
                }
            }
            work += (double) near.length * sets.length * 12;
        }
        return choice;
    }

    /** The masks whose chance of a good picture is nearest to a half, that can come out both ways. */
    private int[] nearest(double[] good, double half, int union, int[] sets, double notHere) {
        int keep = sets.length > 4096 ? 1 : LOOKED_AT;
        int[] masks = new int[keep];
        double[] off = new double[keep];
        int count = 0;
        for (int m = union; ; m = (m - 1) & union) {
            boolean bothWays = good[m] > 0 && (m != union || notHere > 0);
            double d = Math.abs(good[m] - half);
            if (bothWays && (count < keep || d < off[count - 1] - 1e-15)) {
                int at = count < keep ? count++ : keep - 1;
                while (at > 0 && off[at - 1] > d + 1e-15) {
                    off[at] = off[at - 1];
                    masks[at] = masks[at - 1];
                    at--;
                }
                off[at] = d;
                masks[at] = m;
            }
            if (m == 0) {
                break;
            }
        }
        return Arrays.copyOf(masks, Math.max(1, count));
    }

    /** Lower bound of what is left after trial {@code m}. */
    private double split(int[] sets, double[] weights, double notHere, int m) {
        int size = sets.length;
        double[] good = new double[size];
        int[] goodSets = new int[size];
        double[] bad = new double[size + 1];
        int[] badSets = new int[size + 1];
        int g = 0;
        int b = 0;
        for (int j = 0; j < size; j++) {
            if ((sets[j] & ~m) == 0) {
                goodSets[g] = sets[j];
                good[g++] = weights[j];
            } else {
                badSets[b] = sets[j];
                bad[b++] = weights[j];
            }
        }
        if (notHere > 0) {
            bad[b++] = notHere;
        }
        return left(goodSets, good, g) + left(badSets, bad, b);
    }

    private double bound(int[] sets, double[] weights, double notHere) {
        double[] all = Arrays.copyOf(weights, sets.length + 1);
        all[sets.length] = notHere;
        return left(Arrays.copyOf(sets, all.length), all, notHere > 0 ? sets.length + 1 : sets.length);
    }

    private double left(int[] sets, double[] w, int count) {
        if (tolerance == 0) {
            return TrialsLeft.huffman(w, count);
        }
        int union = 0;
        int fewest = Integer.MAX_VALUE;
        double total = 0;
        for (int j = 0; j < count; j++) {
            union |= sets[j];
            fewest = Math.min(fewest, Integer.bitCount(sets[j]));
            total += w[j];
        }
        boolean end = count == 0 || fewest > 0 && Integer.bitCount(union) - fewest <= tolerance;
        return end ? 0 : Math.max(total, TrialsLeft.entropy(sets, w, count, Integer.bitCount(union), tolerance));
    }

    private static double mass(double[] weights) {
        double sum = 0;
        for (double w : weights) {
            sum += w;
        }
        return sum;
    }
}
