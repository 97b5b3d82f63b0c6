package org.salvedge.worth;

/** Notes the faults of the first two sets of each kind in each draw, and what such sets bring. Draws may come from several threads. */
final class Probe {
    private static final int SETS = 2;
    private static final byte NONE = -1;

    private final byte[][] fault;
    private final float[][] takings;
    private final int faults;

    Probe(int draws, int kinds, int faults) {
        this.faults = faults;
        fault = new byte[draws][kinds * SETS];
        takings = new float[draws][kinds * SETS];
        for (byte[] row : fault) {
            java.util.Arrays.fill(row, NONE);
        }
    }

    void saw(int draw, int kind, int set, int k, double x) {
        if (set < SETS) {
            fault[draw][kind * SETS + set] = (byte) k;
            takings[draw][kind * SETS + set] = (float) x;
        }
    }

    /** What the fault found says of a set, by draw: mean takings of such sets, of the first or second set of the kind. */
    double[] signal(int kind, int set) {
        double[] sum = new double[faults];
        int[] n = new int[faults];
        for (int d = 0; d < fault.length; d++) {
            for (int s = 0; s < SETS; s++) {
                int k = fault[d][kind * SETS + s];
                if (k != NONE) {
                    sum[k] += takings[d][kind * SETS + s];
                    n[k]++;
                }
            }
        }
        double all = 0;
        int seen = 0;
        for (int k = 0; k < faults; k++) {
            all += sum[k];
            seen += n[k];
        }
        double[] signal = new double[fault.length];
        for (int d = 0; d < signal.length; d++) {
            int k = fault[d][kind * SETS + set];
            // A set that is not there says no more than the average.
            signal[d] = k == NONE ? seen == 0 ? 0 : all / seen : sum[k] / n[k];
        }
        return signal;
    }
}
