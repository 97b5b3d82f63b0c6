package org.salvedge.shop;

import it.unimi.dsi.fastutil.ints.IntArrays;
import it.unimi.dsi.fastutil.ints.IntComparator;
import java.util.List;

/** The order of sets that does not depend on when they were recorded. */
final class SetOrder {
    private SetOrder() {}

    /** The rows by lot, then by label; by id where there are no labels. */
    static int[] of(SetColumns sets, List<String> labels) {
        int n = sets.lot.size();
        int lots = 0;
        for (int i = 0; i < n; i++) {
            lots = Math.max(lots, sets.lot.get(i) + 1);
        }
        int[] next = new int[lots + 1];
        for (int i = 0; i < n; i++) {
            next[sets.lot.get(i) + 1]++;
        }
        for (int l = 0; l < lots; l++) {
            next[l + 1] += next[l];
        }
        int[] start = next.clone();
        int[] rows = new int[n];
        for (int i = 0; i < n; i++) {
            rows[next[sets.lot.get(i)]++] = i;
        }
        for (int l = 0; l < lots; l++) {
            IntComparator order = (x, y) -> compare(x, y, sets, labels);
            boolean sorted = true;
            for (int i = start[l] + 1; i < start[l + 1] && sorted; i++) {
                sorted = order.compare(rows[i - 1], rows[i]) <= 0;
            }
            if (!sorted) {
                IntArrays.quickSort(rows, start[l], start[l + 1], order);
            }
        }
        return rows;
    }

    private static int compare(int a, int b, SetColumns sets, List<String> labels) {
        return labels.isEmpty()
                ? Integer.compare(sets.id.get(a), sets.id.get(b))
                : Text.CODE_POINTS.compare(labels.get(a), labels.get(b));
    }

    static boolean isAscending(int[] rows) {
        for (int i = 1; i < rows.length; i++) {
            if (rows[i] < rows[i - 1]) {
                return false;
            }
        }
        return true;
    }
}
