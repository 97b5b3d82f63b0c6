package org.salvedge.worth;

import java.util.Arrays;

/**
 * How much of a lot's broken glass has been seen while the lot is still being worked. Broken sets are often found at the pallet,
 * before the others have their turn, so that the sets looked at so far are no fair sample. From lots that are through, it is learnt
 * how far into the work on whole sets the broken ones were found; for a lot under way this gives the chance that a broken set of
 * it would have been found by now.
 */
final class Sighting {
    private static final int BINS = 10;
    private static final int FEWEST = 5;
    private static final double WORTH = 10;
    private static final int ROUNDS = 20;

    private final Records r;
    /** Of the broken sets, the share found before any whole one, and then by tenths of the work on whole ones. */
    private final double atOnce;

    private final double[] cumulated = new double[BINS + 1];
    private final double[] seen;

    Sighting(Records r) {
        this.r = r;
        int lots = r.history.lots();
        int[] start = new int[lots + 1];
        for (int s = 0; s < r.fault.length; s++) {
            start[r.lot(s) + 1]++;
        }
        for (int l = 0; l < lots; l++) {
            start[l + 1] += start[l];
        }
        int[] next = start.clone();
        int[] bySet = new int[r.fault.length];
        for (int s = 0; s < r.fault.length; s++) {
            bySet[next[r.lot(s)]++] = s;
        }
        double first = 0.2 * WORTH;
        double[] found = new double[BINS];
        Arrays.fill(found, 0.8 * WORTH / BINS);
        double all = WORTH;
        int[] days = new int[r.fault.length];
        for (int l = 0; l < lots; l++) {
            int whole = 0;
            int open = 0;
            for (int i = start[l]; i < start[l + 1]; i++) {
                int s = bySet[i];
                if (counts(s) && r.fault[s] < 0) {
                    open++;
                } else if (r.fault[s] >= 0 && r.fault[s] != r.codes.broken) {
                    days[whole++] = r.stays.begun[s];
                }
            }
            if (whole < FEWEST || open > 0) {
                continue;
            }
            Arrays.sort(days, 0, whole);
            for (int i = start[l]; i < start[l + 1]; i++) {
                int s = bySet[i];
                if (r.fault[s] == r.codes.broken) {
                    int before = rank(days, whole, r.stays.begun[s]);
                    int upTo = rank(days, whole, r.stays.begun[s] + 1);
                    all++;
                    if (upTo == 0) {
                        first++;
                    } else {
                        found[Math.min(BINS - 1, (int) ((before + upTo) / 2.0 / whole * BINS))]++;
                    }
                }
            }
        }
        atOnce = first / all;
        cumulated[0] = atOnce;
        for (int b = 0; b < BINS; b++) {
            cumulated[b + 1] = cumulated[b] + found[b] / all;
        }
        seen = new double[lots];
        for (int l = 0; l < lots; l++) {
            seen[l] = seen(bySet, start[l], start[l + 1]);
        }
    }

    /** Number of days before the day. */
    private static int rank(int[] days, int n, int day) {
        int at = Arrays.binarySearch(days, 0, n, day);
        if (at < 0) {
            return -at - 1;
        }
        while (at > 0 && days[at - 1] == day) {
            at--;
        }
        return at;
    }

    private double seen(int[] bySet, int from, int to) {
        double broken = 0;
        double whole = 0;
        double open = 0;
        for (int i = from; i < to; i++) {
            int s = bySet[i];
            if (!counts(s)) {
                continue;
            }
            if (r.fault[s] < 0) {
                open++;
            } else if (r.fault[s] == r.codes.broken) {
                broken++;
            } else {
                whole++;
            }
        }
        if (open == 0) {
            return 1;
        }
        if (whole == 0) {
            return 0;
        }
        double progress = whole / (whole + open);
        double share = 1;
        for (int i = 0; i < ROUNDS; i++) {
            share = share(progress);
            double rest = Math.max(0, Math.min(open, broken * (1 - share) / share));
            progress = whole / (whole + open - rest);
        }
        return share;
    }

    private double share(double progress) {
        double at = Math.min(1, progress) * BINS;
        int low = Math.min(BINS - 1, (int) at);
        return cumulated[low] + (at - low) * (cumulated[low + 1] - cumulated[low]);
    }

    /** Whether a set is among those whose glass is or will be judged. */
    boolean counts(int set) {
        byte result = r.stays.result[set];
        return result != Stays.MISSING && (result != Stays.ASIDE || r.fault[set] >= 0);
    }

    /** Chance that a broken set of the lot has been found by now; 0 where nothing can be said. */
    double seen(int lot) {
        return seen[lot];
    }
}
