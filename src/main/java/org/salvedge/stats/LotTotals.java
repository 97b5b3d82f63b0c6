package org.salvedge.stats;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Trials and successes of each node in each lot, in order of lots; a node occurs once a lot. */
final class LotTotals {
    private static final int SMALL = 63;
    private static final int TABLE = 1 << 21;

    private final int[] lot;
    private final int[] node;
    private final int[] successes;
    private final int[] trials;

    private LotTotals(int[] lot, int[] node, int[] successes, int[] trials) {
        this.lot = lot;
        this.node = node;
        this.successes = successes;
        this.trials = trials;
    }

    /** From rows in any order; a node may occur several times in a lot. */
    static LotTotals of(int nodes, int[] node, int[] lot, int[] successes, int[] trials) {
        int lots = 0;
        boolean ordered = true;
        for (int i = 0; i < node.length; i++) {
            if (node[i] < 0 || node[i] >= nodes) {
                throw new IllegalArgumentException("row " + i + ": cell " + node[i] + " of " + nodes);
            }
            if (lot[i] < 0) {
                throw new IllegalArgumentException("row " + i + ": lot " + lot[i] + " is negative");
            }
            if (successes[i] < 0 || successes[i] > trials[i]) {
                throw new IllegalArgumentException("row " + i + ": " + successes[i] + " saved of " + trials[i]);
            }
            ordered &= i == 0 || lot[i] >= lot[i - 1];
            lots = Math.max(lots, lot[i] + 1);
        }
        // Rows often come lot by lot, and may be a million: then they are not copied.
        if (!ordered) {
            int[] order = CountingSort.order(lot, lots);
            return new LotTotals(
                            sorted(lot, order), sorted(node, order), sorted(successes, order), sorted(trials, order))
                    .collected(nodes, null);
        }
        return new LotTotals(lot, node, successes, trials).collected(nodes, null);
    }

    private static int[] sorted(int[] values, int[] order) {
        int[] sorted = new int[values.length];
        for (int k = 0; k < sorted.length; k++) {
            sorted[k] = values[order[k]];
        }
        return sorted;
    }

    /** The same trials under the nodes' parents. */
    LotTotals grouped(int parents, int[] parentOf) {
        return collected(parents, parentOf);
    }

    private LotTotals collected(int nodes, int @Nullable [] to) {
        int[][] out = new int[4][Math.min(node.length, 1024)];
        int[] place = new int[nodes];
        Arrays.fill(place, -1);
        int size = 0;
        for (int i = 0; i < node.length; i++) {
            if (trials[i] == 0) {
                continue;
            }
            int target = to == null ? node[i] : to[node[i]];
            int at = place[target];
            // A place of an earlier lot is stale: lots come in order.
            if (at < 0 || out[0][at] != lot[i]) {
                if (size == out[0].length) {
                    resize(out, 2 * size);
                }
                at = size++;
                place[target] = at;
                out[0][at] = lot[i];
                out[1][at] = target;
            }
            out[2][at] += successes[i];
            out[3][at] += trials[i];
        }
        resize(out, size);
        return new LotTotals(out[0], out[1], out[2], out[3]);
    }

    private static void resize(int[][] columns, int size) {
        for (int c = 0; c < columns.length; c++) {
            columns[c] = Arrays.copyOf(columns[c], size);
        }
    }

    /** Effective number of trials of each node when those of one lot share the correlation rho. */
    double[] effectiveTrials(int nodes, double rho) {
        double[] sum = new double[nodes];
        for (int i = 0; i < node.length; i++) {
            sum[node[i]] += Spread.effective(trials[i], rho);
        }
        return sum;
    }

    /** The nodes' lots as samples of the nodes; small lots of one size are summed, which is most of them. */
    Spread spread(int nodes) {
        int width = Math.max(2, Math.min(SMALL + 1, TABLE / Math.max(1, nodes)));
        int[] count = new int[nodes * width];
        int[] sum = new int[nodes * width];
        long[] squares = new long[nodes * width];
        Spread.Builder out = new Spread.Builder(nodes);
        for (int i = 0; i < node.length; i++) {
            int n = trials[i];
            int y = successes[i];
            if (n < width) {
                int at = node[i] * width + n;
                count[at]++;
                sum[at] += y;
                squares[at] += (long) y * y;
            } else {
                out.add(node[i], n, y / (double) n);
            }
        }
        for (int k = 0; k < nodes; k++) {
            for (int n = 1; n < width; n++) {
                int at = k * width + n;
                if (count[at] > 0) {
                    double size = n;
                    out.add(k, size, count[at], sum[at] / size, squares[at] / (size * size));
                }
            }
        }
        return out.build();
    }
}
