package org.salvedge.yield;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.stream.IntStream;
import org.salvedge.stats.ShrunkYield;

/** Yields of cells that borrow strength from the cells they are part of: those without the first key, the first two, and so on. */
final class Shrinking {
    private Shrinking() {}

    static ShrunkYield of(Count count, List<Key> keys, List<KeyColumn> columns, double level) {
        int[] decided = new int[count.trialCell.size()];
        java.util.Arrays.fill(decided, 1);
        return ShrunkYield.fit(
                count.cells.size(),
                count.trialCell.toIntArray(),
                sharing(count, keys),
                count.trialSaved.toIntArray(),
                decided,
                parents(count.cells, keys, columns),
                level);
    }

    /**
     * What sets share beyond their cell. Where a cell is of one lot, what its sets share is the very thing asked for: each set then
     * counts by itself.
     */
    private static int[] sharing(Count count, List<Key> keys) {
        return keys.contains(Key.LOT)
                ? IntStream.range(0, count.trialLot.size()).toArray()
                : count.trialLot.toIntArray();
    }

    /** For each step up, the parent of each cell; the last step, to the one root, is left out. */
    static int[][] parents(Cells cells, List<Key> keys, List<KeyColumn> columns) {
        List<Integer> order =
                new ArrayList<>(IntStream.range(0, keys.size()).boxed().toList());
        order.sort(Comparator.comparing(keys::get));
        int steps = Math.max(0, order.size() - 1);
        int[][] parents = new int[steps][];
        Cells below = cells;
        List<Integer> belowOrder = IntStream.range(0, keys.size()).boxed().toList();
        for (int step = 0; step < steps; step++) {
            List<Integer> kept = order.subList(step + 1, order.size());
            Cells above = new Cells(kept.stream().map(columns::get).toList());
            parents[step] = new int[below.size()];
            int[] key = new int[kept.size()];
            for (int c = 0; c < parents[step].length; c++) {
                for (int i = 0; i < key.length; i++) {
                    key[i] = below.code(belowOrder.indexOf(kept.get(i)), c);
                }
                parents[step][c] = above.number(key);
            }
            below = above;
            belowOrder = kept;
        }
        return parents;
    }
}
