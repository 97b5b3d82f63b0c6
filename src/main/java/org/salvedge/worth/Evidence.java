package org.salvedge.worth;

import org.salvedge.shop.ExitKind;

/** How many sets of a kind have a known fate, what ended those that were not saved, and how often glass was broken. */
final class Evidence implements java.io.Serializable {
    private static final int ROUTES = 3;
    /** What becomes of sets not saved where nothing is known: sold as they are, stripped, recycled. */
    private static final double[] USUAL = {0.3, 2, 0.7};

    private final int[][] fates;
    private final int[] ofClaim;
    private final int[] ofFamily;
    private final int[] ofFault;
    private final double[][] ways;
    /** Sets with a known fault by claim and supplier, and those of them with broken glass. */
    private final int[][] looked;

    private final int[][] broken;
    private int all;

    Evidence(Records r) {
        int claims = r.codes.claims.size();
        fates = new int[r.history.families().size()][claims];
        ofClaim = new int[claims];
        ofFamily = new int[fates.length];
        ofFault = new int[r.codes.faults.size()];
        ways = new double[claims][];
        for (int c = 0; c < claims; c++) {
            ways[c] = USUAL.clone();
        }
        looked = new int[claims][r.history.suppliers().size()];
        broken = new int[claims][r.history.suppliers().size()];
        for (int s = 0; s < r.fault.length; s++) {
            if (r.fault[s] >= 0) {
                looked[r.claim[s]][r.supplier(s)]++;
                broken[r.claim[s]][r.supplier(s)] += r.fault[s] == r.codes.broken ? 1 : 0;
            }
            byte result = r.stays.result[s];
            if (result != Stays.SAVED && result != Stays.NOT_SAVED) {
                continue;
            }
            all++;
            fates[r.family(s)][r.claim[s]]++;
            ofFamily[r.family(s)]++;
            ofClaim[r.claim[s]]++;
            if (r.fault[s] >= 0) {
                ofFault[r.fault[s]]++;
            }
            int exit = r.stays.exit[s];
            if (result == Stays.NOT_SAVED && exit >= 0 && exit < ROUTES) {
                ways[r.claim[s]][exit]++;
            }
        }
    }

    int all() {
        return all;
    }

    int of(int family, int claim) {
        return family < 0 ? 0 : fates[family][claim];
    }

    int family(int family) {
        return family < 0 ? 0 : ofFamily[family];
    }

    int claim(int claim) {
        return ofClaim[claim];
    }

    int fault(int fault) {
        return ofFault[fault];
    }

    /** What most likely becomes of a set with this claim and this chance to be saved. */
    Route route(int claim, double saved) {
        double[] w = ways[claim];
        double total = w[0] + w[1] + w[2];
        Route best = Route.FIX;
        double most = saved;
        for (ExitKind kind : new ExitKind[] {ExitKind.SOLD, ExitKind.STRIPPED, ExitKind.RECYCLED}) {
            double share = (1 - saved) * w[kind.ordinal()] / total;
            if (share > most) {
                most = share;
                best = kind == ExitKind.SOLD
                        ? Route.SELL_AS_IS
                        : kind == ExitKind.STRIPPED ? Route.STRIP : Route.RECYCLE;
            }
        }
        return best;
    }

    /** Sets with a known fault and this claim, from this supplier or from all others: how many, and how many with broken glass. */
    int[] broken(int claim, int supplier, boolean others) {
        int n = 0;
        int x = 0;
        for (int i = 0; i < looked[claim].length; i++) {
            if ((i == supplier) != others) {
                n += looked[claim][i];
                x += broken[claim][i];
            }
        }
        return new int[] {n, x};
    }
}
