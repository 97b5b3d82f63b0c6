package org.salvedge.bench;

import java.util.Arrays;

/**
 * Lower bounds on the trials still to come, times the chance of the state: yes-or-no trials that end with one case each cannot
 * do better than a Huffman tree over the cases (Huffman 1952, Proceedings of the IRE 40, 1098-1101).
 */
final class TrialsLeft {
    private TrialsLeft() {}

    /** Weighted path length of the Huffman tree over the first {@code n} weights; overwrites them. */
    static double huffman(double[] w, int n) {
        Arrays.sort(w, 0, n);
        double[] merged = new double[Math.max(1, n)];
        int leaf = 0;
        int node = 0;
        int made = 0;
        double cost = 0;
        for (int step = 1; step < n; step++) {
            double sum = 0;
            for (int k = 0; k < 2; k++) {
                sum += node < made && (leaf >= n || merged[node] < w[leaf]) ? merged[node++] : w[leaf++];
            }
            merged[made++] = sum;
            cost += sum;
        }
        return cost;
    }

    /**
     * Bound where a mask may hold up to {@code tolerance} needless contacts, so that one end leaves several cases open: the
     * entropy of the cases less what their end can hide (Shannon 1948, Bell System Technical Journal 27, section 6). A set of k
     * culprits can only end together with others within a mask of at most k + tolerance contacts.
     *
     * @param sets culprit sets; 0 for "no mask on this side helps"
     * @param inSight contacts that some set holds
     */
    static double entropy(int[] sets, double[] w, int n, int inSight, int tolerance) {
        double total = 0;
        double sum = 0;
        for (int i = 0; i < n; i++) {
            total += w[i];
            sum += w[i] > 0 ? w[i] * Math.log(w[i]) : 0;
            if (sets[i] != 0) {
                int mask = Math.min(Integer.bitCount(sets[i]) + tolerance, inSight);
                sum += w[i] * Math.log(choices(mask, tolerance));
            }
        }
        return Math.max(0, (total * Math.log(total) - sum) / Math.log(2));
    }

    /** Subsets of m things that lack at most t of them. */
    static double choices(int m, int t) {
        double all = 1;
        double c = 1;
        for (int k = 1; k <= Math.min(t, m); k++) {
            c = c * (m - k + 1) / k;
            all += c;
        }
        return all;
    }
}
