package org.salvedge.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;

/**
 * Labels of sets whose numbers follow one another, read in one call: a call a label is what costs. SQLite strings them together, one a
 * line, which no label can break, and here they are taken apart.
 */
final class LabelBlock {
    private static final int BITS = 12;

    /** How many numbers a block spans. */
    static final int SIZE = 1 << BITS;

    private LabelBlock() {}

    /** Which block a number is in. */
    static int of(int id) {
        return id >>> BITS;
    }

    /** Where in its block. */
    static int place(int id) {
        return id & SIZE - 1;
    }

    /** Fills in the labels from a place of the array on; a number without a label leaves its place as it was. */
    static void read(Connection connection, int block, String[] into, int at) throws SQLException {
        int first = block << BITS;
        try (PreparedStatement select =
                connection.prepareStatement("SELECT min(id), max(id), count(*), group_concat(text, char(10))"
                        + " FROM (SELECT id, text FROM unit_label WHERE id BETWEEN ? AND ? ORDER BY id)")) {
            bounds(select, first);
            try (ResultSet row = select.executeQuery()) {
                int count = row.next() ? row.getInt(3) : 0;
                boolean whole = row.getInt(2) - row.getInt(1) + 1 == count;
                if (count > 0 && !(whole && split(row.getString(4), into, at + row.getInt(1) - first, count))) {
                    oneByOne(connection, first, into, at);
                }
            }
        }
    }

    private static void bounds(PreparedStatement select, int first) throws SQLException {
        select.setInt(1, first);
        select.setInt(2, first + SIZE - 1);
    }

    /** False if there are not as many lines as labels, which only a damaged ledger brings about. */
    private static boolean split(String lines, String[] into, int at, int count) {
        int from = 0;
        for (int i = 0; i < count - 1; i++) {
            int end = lines.indexOf('\n', from);
            if (end < 0) {
                return false;
            }
            into[at + i] = lines.substring(from, end);
            from = end + 1;
        }
        into[at + count - 1] = lines.substring(from);
        return lines.indexOf('\n', from) < 0;
    }

    private static void oneByOne(Connection connection, int first, String[] into, int at) throws SQLException {
        try (PreparedStatement select =
                connection.prepareStatement("SELECT id, text FROM unit_label WHERE id BETWEEN ? AND ?")) {
            bounds(select, first);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    into[at + row.getInt(1) - first] = row.getString(2);
                }
            }
        }
    }
}
