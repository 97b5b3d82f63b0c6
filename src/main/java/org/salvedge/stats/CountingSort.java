package org.salvedge.stats;

/** Stable order of small whole keys, in time linear in rows and keys. */
final class CountingSort {
    private CountingSort() {}

    /**
     * @param keys each from 0 to bound - 1
     * @return the rows, by key; rows of one key keep their order
     */
    static int[] order(int[] keys, int bound) {
        int[] start = new int[bound + 1];
        for (int key : keys) {
            start[key + 1]++;
        }
        for (int k = 0; k < bound; k++) {
            start[k + 1] += start[k];
        }
        int[] order = new int[keys.length];
        for (int i = 0; i < keys.length; i++) {
            order[start[keys[i]]++] = i;
        }
        return order;
    }
}
