package org.salvedge.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import org.salvedge.shop.Names;

/** What the readers of all tables share in one reading: which entries it sees, the words, how large the keys are. */
final class Scan {
    private final SeenEntries visible;
    private final int lots;
    private final int units;
    private final String[] words;
    private final int[] arrival;

    private Scan(SeenEntries visible, int lots, int units, String[] words) {
        this.visible = visible;
        this.lots = lots;
        this.units = units;
        this.words = words;
        this.arrival = new int[lots + 1];
    }

    static Scan of(Connection connection, SeenEntries visible) throws SQLException {
        int words = largest(connection, "word");
        return new Scan(
                visible,
                largest(connection, "lot_label"),
                largest(connection, "unit_label"),
                texts(connection, "word", words));
    }

    private static int largest(Connection connection, String table) throws SQLException {
        return (int) Database.number(connection, "SELECT max(id) FROM " + table, 0);
    }

    SeenEntries visible() {
        return visible;
    }

    /** The largest number of a lot's label. */
    int lots() {
        return lots;
    }

    /** The largest number of a set's label. */
    int units() {
        return units;
    }

    /** The largest number of a word. */
    int words() {
        return words.length - 1;
    }

    Numbering numbering(Names names) {
        return new Numbering(words, names);
    }

    void arrival(int lot, int day) {
        arrival[lot] = day;
    }

    /** Epoch day on which a lot's sets were received. */
    int arrival(int lot) {
        return arrival[lot];
    }

    /** The texts of a dictionary by number; "" for 0, which it does not have. */
    static String[] texts(Connection connection, String table, int largest) throws SQLException {
        String[] texts = new String[largest + 1];
        java.util.Arrays.fill(texts, "");
        try (PreparedStatement select =
                connection.prepareStatement("SELECT id, text FROM " + table + " WHERE id <= ?")) {
            select.setInt(1, largest);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    texts[row.getInt(1)] = row.getString(2);
                }
            }
        }
        return texts;
    }
}
