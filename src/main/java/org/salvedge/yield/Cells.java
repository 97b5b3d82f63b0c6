package org.salvedge.yield;

import it.unimi.dsi.fastutil.longs.Long2IntOpenHashMap;
import java.util.Arrays;
import java.util.List;

/**
 * The combinations of keys that occur, numbered from 0 in order of first sight. A combination is one number in mixed radix while
 * it is looked up; where the radices would overflow, what stands before is numbered on its own first.
 */
final class Cells {
    private static final int DIRECT = 1 << 20;
    private static final long MOST = 1L << 62;
    private static final int START = 64;

    private final int[] sizes;
    /** Numbers of the combinations before a key, where the product with its size would overflow; else null. */
    private final Numbers[] before;

    private final Numbers numbers;
    private int[][] codes;

    Cells(List<KeyColumn> columns) {
        sizes = columns.stream().mapToInt(KeyColumn::size).toArray();
        before = new Numbers[sizes.length];
        codes = new int[sizes.length][START];
        long span = 1;
        for (int k = 0; k < sizes.length; k++) {
            if (span > MOST / sizes[k]) {
                before[k] = new Numbers(span);
                span = Integer.MAX_VALUE;
            }
            span *= sizes[k];
        }
        numbers = new Numbers(span);
    }

    /** The number of a combination, given it now if it is new. */
    int number(int[] key) {
        long code = 0;
        for (int k = 0; k < sizes.length; k++) {
            Numbers shorter = before[k];
            code = (shorter == null ? code : shorter.number(code)) * sizes[k] + key[k];
        }
        int met = numbers.size;
        int cell = numbers.number(code);
        if (cell == met) {
            keep(cell, key);
        }
        return cell;
    }

    private void keep(int cell, int[] key) {
        for (int k = 0; k < sizes.length; k++) {
            if (cell == codes[k].length) {
                codes[k] = Arrays.copyOf(codes[k], cell * 2);
            }
            codes[k][cell] = key[k];
        }
    }

    int size() {
        return numbers.size;
    }

    /** Code of the k-th key of a cell. */
    int code(int k, int cell) {
        return codes[k][cell];
    }

    /** Codes below {@code span} to numbers: an array where it is small, else a hash. */
    private static final class Numbers {
        private final int[] direct;
        private final Long2IntOpenHashMap hashed;
        private int size;

        Numbers(long span) {
            direct = new int[span <= DIRECT ? (int) span : 0];
            Arrays.fill(direct, -1);
            hashed = new Long2IntOpenHashMap(span <= DIRECT ? 0 : START);
            hashed.defaultReturnValue(-1);
        }

        int number(long code) {
            int known = direct.length > 0 ? direct[(int) code] : hashed.get(code);
            if (known >= 0) {
                return known;
            }
            if (direct.length > 0) {
                direct[(int) code] = size;
            } else {
                hashed.put(code, size);
            }
            return size++;
        }
    }
}
