package org.salvedge.worth;

import java.util.HashMap;
import java.util.Map;

/** How much of the variance of a lot's recovery is told by looking at so many sets of each kind. */
final class Telling {
    private static final double RIDGE = 1e-9;

    private final double[][] first;
    private final double[] withRecovery;
    private final double[] variance;
    private final double[] within;
    private final int[] sets;
    private final Map<Long, Double> crosses = new HashMap<>();
    private double explained;

    Telling(double[] recovery, Probe probe, int[] sets) {
        this.sets = sets;
        int n = sets.length;
        first = new double[n][];
        withRecovery = new double[n];
        variance = new double[n];
        within = new double[n];
        double[] r = centred(recovery);
        for (int i = 0; i < n; i++) {
            first[i] = centred(probe.signal(i, 0));
            variance[i] = product(first[i], first[i]);
            withRecovery[i] = product(first[i], r);
            if (sets[i] > 1) {
                double[] second = centred(probe.signal(i, 1));
                within[i] = Math.max(0, product(first[i], second));
                withRecovery[i] = (withRecovery[i] + product(second, r)) / 2;
            }
        }
    }

    private static double[] centred(double[] x) {
        double mean = 0;
        for (double v : x) {
            mean += v / x.length;
        }
        double[] c = new double[x.length];
        for (int i = 0; i < c.length; i++) {
            c[i] = x[i] - mean;
        }
        return c;
    }

    private static double product(double[] a, double[] b) {
        double sum = 0;
        for (int i = 0; i < a.length; i++) {
            sum += a[i] * b[i];
        }
        return sum / a.length;
    }

    /** Variance told by the latest choice. */
    double explained() {
        return explained;
    }

    /** How many sets of each kind to look at: one after the other, each time the one that adds most. */
    int[] choose(int most) {
        int[] chosen = new int[sets.length];
        for (int step = 0; step < most; step++) {
            int best = -1;
            double told = explained;
            for (int i = 0; i < sets.length; i++) {
                if (chosen[i] < sets[i] && variance[i] > 0) {
                    chosen[i]++;
                    double now = told(chosen);
                    chosen[i]--;
                    if (now > told * (1 + RIDGE) + RIDGE) {
                        told = now;
                        best = i;
                    }
                }
            }
            if (best < 0) {
                break;
            }
            chosen[best]++;
            explained = told;
        }
        return chosen;
    }

    /** c' V^-1 c over the means of the sets looked at, by Cholesky. */
    private double told(int[] chosen) {
        int n = 0;
        int[] kind = new int[sets.length];
        for (int i = 0; i < sets.length; i++) {
            if (chosen[i] > 0) {
                kind[n++] = i;
            }
        }
        double[][] l = new double[n][n];
        double[] z = new double[n];
        double sum = 0;
        for (int a = 0; a < n; a++) {
            int i = kind[a];
            for (int b = 0; b <= a; b++) {
                double v = a == b
                        ? (variance[i] + (chosen[i] - 1) * within[i]) / chosen[i] * (1 + RIDGE)
                        : cross(i, kind[b]);
                for (int k = 0; k < b; k++) {
                    v -= l[a][k] * l[b][k];
                }
                if (a == b) {
                    if (v <= variance[i] * RIDGE) {
                        return sum; // told by the others already
                    }
                    l[a][a] = Math.sqrt(v);
                } else {
                    l[a][b] = v / l[b][b];
                }
            }
            double c = withRecovery[i];
            for (int k = 0; k < a; k++) {
                c -= l[a][k] * z[k];
            }
            z[a] = c / l[a][a];
            sum += z[a] * z[a];
        }
        return sum;
    }

    private double cross(int i, int j) {
        return crosses.computeIfAbsent((long) i * sets.length + j, k -> product(first[i], first[j]));
    }
}
