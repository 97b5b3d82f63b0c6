package org.salvedge.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.salvedge.shop.UnitId;

/** Finds sets by a part of their label. */
final class LabelSearch {
    private LabelSearch() {}

    static List<UnitId> units(Connection connection, String text, int limit) throws SQLException {
        if (text.isEmpty()) {
            return List.of();
        }
        List<UnitId> exact = matching(connection, "text = ?", text, 1);
        if (!exact.isEmpty()) {
            return exact;
        }
        String like = text.replace("\\", "\\\\").replace("%", "\\%").replace("_", "\\_");
        for (String pattern : List.of(like, like + "%", "%" + like, "%" + like + "%")) {
            List<UnitId> found = matching(connection, "text LIKE ? ESCAPE '\\'", pattern, limit);
            if (!found.isEmpty()) {
                return found;
            }
        }
        return List.of();
    }

    private static List<UnitId> matching(Connection connection, String condition, String value, int limit)
            throws SQLException {
        List<UnitId> labels = new ArrayList<>();
        // UTF-8 bytes, as SQLite compares them, stand in the order of code points.
        String sql = "SELECT text FROM unit_label WHERE " + condition
                + " AND EXISTS (SELECT 1 FROM unit WHERE unit = id AND" + Store.STANDS + ") ORDER BY text LIMIT ?";
        try (PreparedStatement select = connection.prepareStatement(sql)) {
            select.setString(1, value);
            select.setInt(2, limit);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    labels.add(new UnitId(row.getString(1)));
                }
            }
        }
        labels.sort(Comparator.naturalOrder());
        return labels;
    }
}
