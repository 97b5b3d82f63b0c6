package org.salvedge.shop;

/** Brings rows that speak of sets together set by set, in the order in which they were added. */
final class SetRows {
    private final int[] start;
    private final int[] order;

    /**
     * @param ids each row's set, by the id the reader gave it
     * @param rowOf the set's row by id; -1, or beyond the end, where there is none: such rows are dropped
     */
    SetRows(IntColumn ids, int[] rowOf, int sets) {
        int n = ids.size();
        int[] setOf = new int[n];
        start = new int[sets + 1];
        for (int i = 0; i < n; i++) {
            int id = ids.get(i);
            int set = id < rowOf.length ? rowOf[id] : -1;
            setOf[i] = set;
            if (set >= 0) {
                start[set + 1]++;
            }
        }
        for (int s = 0; s < sets; s++) {
            start[s + 1] += start[s];
        }
        order = new int[start[sets]];
        int[] next = start.clone();
        for (int i = 0; i < n; i++) {
            if (setOf[i] >= 0) {
                order[next[setOf[i]]++] = i;
            }
        }
    }

    /** The first place of each set's rows; one more at the end. */
    int[] start() {
        return start;
    }

    /** The rows, set by set. */
    int[] order() {
        return order;
    }

    /** The set that a row belongs to, found by halving. */
    static int owner(int[] start, int row) {
        int low = 0;
        int high = start.length - 1;
        while (high - low > 1) {
            int middle = (low + high) >>> 1;
            if (start[middle] <= row) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return low;
    }
}
