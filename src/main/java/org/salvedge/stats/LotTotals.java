package org.salvedge.stats;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/** Trials and successes of each node in each lot, in order of lots; a node occurs once a lot. */
final class LotTotals {
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
            lots = Math.max(lots, lot[i] + 1);
        }
        int[] order = CountingSort.order(lot, lots);
        int n = node.length;
        int[][] sorted = new int[4][n];
        for (int k = 0; k < n; k++) {
            int i = order[k];
            sorted[0][k] = lot[i];
            sorted[1][k] = node[i];
            sorted[2][k] = successes[i];
            sorted[3][k] = trials[i];
        }
        return new LotTotals(sorted[0], sorted[1], sorted[2], sorted[3]).mapped(nodes, null);
    }

    /** The same trials under the nodes' parents. */
    LotTotals grouped(int parents, int[] parentOf) {
        return mapped(parents, parentOf);
    }

    private LotTotals mapped(int nodes, int @Nullable [] to) {
        int n = node.length;
        int[][] out = new int[4][n];
        int[] place = new int[nodes];
        Arrays.fill(place, -1);
        int size = 0;
        for (int i = 0; i < n; i++) {
            if (trials[i] == 0) {
                continue;
            }
            int target = to == null ? node[i] : to[node[i]];
            int at = place[target];
            // A place of an earlier lot is stale: lots come in order.
            if (at < 0 || out[0][at] != lot[i]) {
                at = size++;
                place[target] = at;
                out[0][at] = lot[i];
                out[1][at] = target;
            }
            out[2][at] += successes[i];
            out[3][at] += trials[i];
        }
        return new LotTotals(
                Arrays.copyOf(out[0], size),
                Arrays.copyOf(out[1], size),
                Arrays.copyOf(out[2], size),
                Arrays.copyOf(out[3], size));
    }

    /** Effective number of trials of each node when those of one lot share the correlation rho. */
    double[] effectiveTrials(int nodes, double rho) {
        double[] sum = new double[nodes];
        for (int i = 0; i < node.length; i++) {
            sum[node[i]] += Spread.effective(trials[i], rho);
        }
        return sum;
    }

    /** The nodes' lots as samples of the nodes; lots of one size are summed, so the order of rows leaves no trace. */
    Spread spread(int nodes) {
        int largest = 0;
        for (int t : trials) {
            largest = Math.max(largest, t);
        }
        // Stable: by size, then by node, keeps sizes in order within a node.
        int[] sizeOrder = CountingSort.order(trials, largest + 1);
        int[] nodesBySize = new int[node.length];
        for (int k = 0; k < nodesBySize.length; k++) {
            nodesBySize[k] = node[sizeOrder[k]];
        }
        int[] bySize = new int[node.length];
        int[] both = CountingSort.order(nodesBySize, nodes);
        for (int k = 0; k < both.length; k++) {
            bySize[k] = sizeOrder[both[k]];
        }
        Spread.Builder out = new Spread.Builder(nodes);
        int k = 0;
        while (k < bySize.length) {
            int first = bySize[k];
            long count = 0;
            long sum = 0;
            long squares = 0;
            while (k < bySize.length && node[bySize[k]] == node[first] && trials[bySize[k]] == trials[first]) {
                long y = successes[bySize[k]];
                count++;
                sum += y;
                squares += y * y;
                k++;
            }
            double n = trials[first];
            out.add(node[first], n, (double) count, sum / n, squares / (n * n));
        }
        return out.build();
    }
}
