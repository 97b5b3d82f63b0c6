package org.salvedge.shop;

import java.util.Arrays;

/** A growing column of whole numbers; takes no room while all of them are -1. */
final class IntColumn implements java.io.Serializable {
    private static final int[] NONE = {};
    private static final int START_CAPACITY = 1024;

    private int[] values = NONE;
    private int size;

    void add(int value) {
        if (values.length == 0) {
            if (value == -1) {
                size++;
                return;
            }
            values = new int[Math.max(START_CAPACITY, size + size / 2)];
            Arrays.fill(values, 0, size, -1);
        } else if (size == values.length) {
            values = Arrays.copyOf(values, size + size / 2);
        }
        values[size++] = value;
    }

    int get(int row) {
        return values.length == 0 ? -1 : values[row];
    }

    int size() {
        return size;
    }

    /** The rows named, in that order. */
    IntColumn pick(int[] rows) {
        IntColumn picked = new IntColumn();
        picked.size = rows.length;
        if (values.length > 0) {
            picked.values = new int[rows.length];
            for (int i = 0; i < rows.length; i++) {
                picked.values[i] = values[rows[i]];
            }
        }
        return picked;
    }
}
