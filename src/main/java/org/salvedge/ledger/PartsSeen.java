package org.salvedge.ledger;

import java.sql.Connection;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.ZoneId;
import java.util.ArrayList;
import java.util.List;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.Part;

/** Parts as they stood at the end of a day. */
final class PartsSeen {
    private PartsSeen() {}

    static List<Part> of(Connection connection, Store store, ZoneId zone, AsOf asOf) throws SQLException {
        List<Stored<Part>> rows = store.where(Tables.PARTS, "1");
        List<Part> parts = new ArrayList<>();
        if (rows.isEmpty()) {
            return parts;
        }
        SeenEntries.Cursor cursor = SeenEntries.of(asOf, zone, connection).cursor();
        for (Stored<Part> row : rows) {
            Part p = row.fact();
            if (cursor.stands(row.entry()) && cursor.happened(row.entry(), p.on().toEpochDay())) {
                LocalDate until = asOf.happened();
                boolean later =
                        until != null && p.goneOn() != null && p.goneOn().isAfter(until);
                parts.add(
                        later
                                ? new Part(
                                        p.part(),
                                        p.fromUnit(),
                                        p.kind(),
                                        p.number(),
                                        p.on(),
                                        p.value(),
                                        p.tested(),
                                        p.attempt(),
                                        null)
                                : p);
            }
        }
        parts.sort(Tables.PARTS.byKey());
        return parts;
    }
}
