package org.salvedge.worth;

import java.util.Arrays;

/**
 * Days from purchase to first sale of a saved set, unsold ones censored: Kaplan and Meier, Journal of the American Statistical
 * Association 53 (1958) 457-481. What lies beyond the last day seen is put half as long again after it.
 */
final class SaleWaits {
    private static final int WAITS = 8;

    /** Sets that what is assumed counts for. */
    private static final double WORTH = 5;

    private SaleWaits() {}

    /** At evenly spaced chances. */
    static double[] of(Records r) {
        int longest = 720;
        double[] sold = new double[longest + 1];
        double[] leaving = new double[longest + 1];
        double n = 0;
        for (int s = 0; s < r.fault.length; s++) {
            byte result = r.stays.result[s];
            int bought = r.history.lotBought(r.lot(s));
            if (result == Stays.SAVED && r.stays.sold(s)) {
                int d = clamp(r.stays.exitDay[s] - bought, longest);
                sold[d]++;
                leaving[d]++;
                n++;
            } else if (result == Stays.SAVED || result == Stays.UNTOUCHED || result == Stays.OPEN) {
                double w = result == Stays.SAVED ? 1 : result == Stays.UNTOUCHED ? 0.5 : 0.25;
                leaving[clamp(r.asOf - bought, longest)] += w;
                n += w;
            }
        }
        double[] assumed = new double[longest + 1];
        for (int d = 0; d <= longest; d++) {
            assumed[d] = Math.exp(-d / Assumed.DAYS_TO_SALE);
        }
        double[] out = new double[WAITS];
        double survive = 1;
        double at = n + WORTH;
        int next = 0;
        int last = 1;
        for (int d = 0; d <= longest && next < WAITS; d++) {
            double before = d == 0 ? 0 : WORTH * (assumed[d - 1] - assumed[d]);
            if (at > 1e-9) {
                survive *= 1 - Math.min(1, (sold[d] + before) / at);
            }
            at -= leaving[d] + before;
            if (sold[d] > 0) {
                last = d;
            }
            while (next < WAITS && 1 - survive >= (next + 0.5) / WAITS) {
                out[next++] = d;
            }
        }
        Arrays.fill(out, next, WAITS, 1.5 * Math.max(last, Assumed.DAYS_TO_SALE));
        return out;
    }

    private static int clamp(int days, int longest) {
        return Math.max(0, Math.min(longest, days));
    }
}
