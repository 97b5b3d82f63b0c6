package org.salvedge.bench;

import org.salvedge.bench.MaskPlan.Answer;
import org.salvedge.bench.MaskPlan.Question;

/**
 * The next trial where a verdict may be wrong: the one that tells most (greatest mutual information through a binary symmetric
 * channel; Cover and Thomas, "Elements of Information Theory", 2nd ed. 2006, section 7.1.4). The trials to come are estimated as
 * the uncertainty left over the channel's capacity: a lower bound, and close to it when many trials are left.
 */
final class NoisyMask {
    private NoisyMask() {}

    static Answer answer(Question q, double[] w, double[] posterior, double notHere) {
        int n = q.contacts();
        int size = 1 << n;
        if (notHere >= q.confidence()) {
            return new Answer(false, null, null, true, 0, posterior, notHere);
        }
        int bestMask = 0;
        double sure = -1;
        double[] accepted = acceptance(w, n, q.tolerance());
        for (int m = 0; m < size; m++) {
            if (accepted[m] > sure + 1e-12) {
                sure = accepted[m];
                bestMask = m;
            }
        }
        if (sure >= q.confidence()) {
            return new Answer(true, null, bestMask, false, 0, posterior, notHere);
        }
        double[] good = subsetSums(w, n);
        int next = 0;
        double nearest = Double.POSITIVE_INFINITY;
        for (int m = 0; m < size; m++) {
            double off = Math.abs(good[m] - 0.5);
            if (off < nearest - 1e-12) {
                nearest = off;
                next = m;
            }
        }
        double bits = 0;
        for (double x : w) {
            bits += x > 0 ? -x * log2(x) : 0;
        }
        double capacity = 1 + q.error() * log2(q.error()) + (1 - q.error()) * log2(1 - q.error());
        double toGo = Math.max(1, (bits - residual(q.confidence(), size)) / capacity);
        return new Answer(false, next, null, false, toGo, posterior, notHere);
    }

    /** The uncertainty that may be left when the plan ends: Fano's bound. */
    private static double residual(double confidence, int size) {
        double e = 1 - confidence;
        return -e * log2(e) - confidence * log2(confidence) + e * log2(Math.max(1, size - 1));
    }

    /** For each mask the chance that it holds every culprit and at most {@code tolerance} others. */
    private static double[] acceptance(double[] w, int n, int tolerance) {
        int size = 1 << n;
        double[] byExtra = new double[size];
        System.arraycopy(w, 0, byExtra, 0, size);
        if (tolerance == 0) {
            return byExtra;
        }
        if (tolerance >= n) {
            return subsetSums(w, n);
        }
        double[] out = new double[size];
        for (int m = 0; m < size; m++) {
            for (int s = m; ; s = (s - 1) & m) {
                if (Integer.bitCount(m & ~s) <= tolerance) {
                    out[m] += w[s];
                }
                if (s == 0) {
                    break;
                }
            }
        }
        return out;
    }

    /** Sum over the subsets of each mask (Yates 1937; the zeta transform). */
    static double[] subsetSums(double[] w, int n) {
        double[] f = java.util.Arrays.copyOf(w, 1 << n);
        for (int i = 0; i < n; i++) {
            for (int m = 0; m < f.length; m++) {
                if ((m >> i & 1) == 1) {
                    f[m] += f[m ^ 1 << i];
                }
            }
        }
        return f;
    }

    private static double log2(double x) {
        return Math.log(x) / Math.log(2);
    }
}
