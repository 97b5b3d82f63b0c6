package org.salvedge.ledger;

import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/**
 * Reads several small whole numbers of a row in one call: a call a cell is what costs. SQLite shifts them together into 64-bit
 * numbers, and here they are taken apart.
 */
final class Packing {
    private static final int ROOM = 63;

    private final List<StringBuilder> expressions = new ArrayList<>();
    private final List<Integer> used = new ArrayList<>();
    private long[] row = new long[0];

    /** One number of the row, from 0 up. */
    final class Field {
        private final int slot;
        private final int shift;
        private final long mask;

        private Field(int slot, int shift, int bits) {
            this.slot = slot;
            this.shift = shift;
            this.mask = (1L << bits) - 1;
        }

        int get() {
            return (int) (row[slot] >>> shift & mask);
        }

        long getLong() {
            return row[slot] >>> shift & mask;
        }
    }

    /** How many bits hold the numbers from 0 to that one. */
    static int bits(long largest) {
        return Math.max(1, Long.SIZE - Long.numberOfLeadingZeros(largest));
    }

    /** A column that is never NULL nor negative, and at most {@code largest}. */
    Field field(String expression, long largest) {
        int bits = bits(largest);
        int slot = 0;
        while (slot < used.size() && used.get(slot) + bits > ROOM) {
            slot++;
        }
        if (slot == used.size()) {
            used.add(0);
            expressions.add(new StringBuilder());
            row = new long[used.size()];
        }
        int shift = used.get(slot);
        StringBuilder sum = expressions.get(slot);
        sum.append(sum.isEmpty() ? "" : " | ")
                .append(shift == 0 ? "(" + expression + ")" : "((" + expression + ") << " + shift + ")");
        used.set(slot, shift + bits);
        return new Field(slot, shift, bits);
    }

    /** A column that may be NULL: reads as 0 then, else as the value and one. */
    Field optional(String column, long largest) {
        return field("ifnull(" + column + " + 1, 0)", largest + 1);
    }

    String select() {
        return String.join(", ", expressions);
    }

    /** Moves to the next row of a query of {@link #select}. */
    boolean next(ResultSet result) throws SQLException {
        if (!result.next()) {
            return false;
        }
        for (int slot = 0; slot < row.length; slot++) {
            row[slot] = result.getLong(slot + 1);
        }
        return true;
    }
}
