package org.salvedge.ledger;

import it.unimi.dsi.fastutil.ints.IntOpenHashSet;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.BitSet;
import java.util.HashSet;
import java.util.Set;

/** Keys that stand in the shop, which a package may not bring again. */
final class KeysHeld {
    private final BitSet lots = new BitSet();
    private final BitSet units = new BitSet();
    private final NumberSet attempts = new NumberSet();
    private final IntOpenHashSet bids = new IntOpenHashSet();
    private final Set<String> parts = new HashSet<>();
    private final Set<String> recipes = new HashSet<>();

    KeysHeld(Connection connection) throws SQLException {
        each(connection, "lot", "lot", row -> lots.set(row.getInt(1)));
        each(connection, "unit", "unit", row -> units.set(row.getInt(1)));
        each(connection, "attempt", "attempt", row -> attempts.add(row.getInt(1)));
        each(connection, "bid", "bid", row -> bids.add(row.getInt(1)));
        each(connection, "part", "part", row -> parts.add(row.getString(1)));
        each(
                connection,
                "recipe",
                "(SELECT text FROM word WHERE id = panel), side, contacts",
                row -> recipes.add(recipe(row.getString(1), row.getInt(2), row.getString(3))));
    }

    private interface Row {
        void take(ResultSet row) throws SQLException;
    }

    private static void each(Connection connection, String table, String columns, Row taker) throws SQLException {
        String sql = "SELECT " + columns + " FROM " + table + " WHERE" + Store.STANDS;
        try (PreparedStatement select = connection.prepareStatement(sql);
                ResultSet row = select.executeQuery()) {
            while (row.next()) {
                taker.take(row);
            }
        }
    }

    /** One text for the three columns that name a recipe. */
    static String recipe(String panel, int side, String contacts) {
        return panel + '\0' + side + '\0' + contacts;
    }

    boolean lot(int id) {
        return lots.get(id);
    }

    boolean unit(int id) {
        return units.get(id);
    }

    boolean attempt(int number) {
        return attempts.contains(number);
    }

    boolean bid(int number) {
        return bids.contains(number);
    }

    boolean part(String label) {
        return parts.contains(label);
    }

    boolean recipe(String key) {
        return recipes.contains(key);
    }
}
