package org.salvedge.ledger;

import it.unimi.dsi.fastutil.longs.LongArrayList;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.time.ZoneId;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.AsOf;

/** Which entries a reading sees: those that had been recorded, nothing had superseded, and had happened. */
final class SeenEntries {
    private final long last;
    private final long[] superseded;
    private final long[] hidden; // first and last of each run of entries that were recorded later
    private final long[] imported; // first and last of each import, where its recording counts by day
    private final long happenedBy;
    private final long recordedBy;

    private SeenEntries(
            long last, long[] superseded, long[] hidden, long[] imported, long happenedBy, long recordedBy) {
        this.last = last;
        this.superseded = superseded;
        this.hidden = hidden;
        this.imported = imported;
        this.happenedBy = happenedBy;
        this.recordedBy = recordedBy;
    }

    static SeenEntries of(AsOf asOf, ZoneId zone, Connection connection) throws SQLException {
        long last = Database.number(connection, "SELECT last FROM batch ORDER BY first DESC LIMIT 1", 0);
        LocalDate recorded = asOf.recorded();
        LongArrayList hidden = new LongArrayList();
        LongArrayList imported = new LongArrayList();
        if (recorded != null) {
            long end = recorded.plusDays(1).atStartOfDay(zone).toInstant().toEpochMilli();
            runs(connection, "recorded_at >= ?", end, hidden);
            runs(connection, "recorded_at IS NULL AND ? >= 0", 0, imported);
        }
        LongArrayList superseded = new LongArrayList();
        Cursor cursor = new SeenEntries(last, new long[0], hidden.toLongArray(), new long[0], 0, 0).cursor();
        try (PreparedStatement select = connection.prepareStatement("SELECT old, new FROM supersede ORDER BY new");
                ResultSet row = select.executeQuery()) {
            while (row.next()) {
                if (cursor.recorded(row.getLong(2))) {
                    superseded.add(row.getLong(1));
                }
            }
        }
        superseded.sort(null);
        return new SeenEntries(
                last,
                superseded.toLongArray(),
                hidden.toLongArray(),
                imported.toLongArray(),
                limit(asOf.happened()),
                limit(recorded));
    }

    private static long limit(@Nullable LocalDate day) {
        return day == null ? Long.MAX_VALUE : day.toEpochDay();
    }

    private static void runs(Connection connection, String condition, long parameter, LongArrayList into)
            throws SQLException {
        try (PreparedStatement select =
                connection.prepareStatement("SELECT first, last FROM batch WHERE " + condition + " ORDER BY first")) {
            select.setLong(1, parameter);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    int n = into.size();
                    if (n > 0 && into.getLong(n - 1) == row.getLong(1) - 1) {
                        into.set(n - 1, row.getLong(2));
                    } else {
                        into.add(row.getLong(1));
                        into.add(row.getLong(2));
                    }
                }
            }
        }
    }

    /** The last entry there is; rows after it came later than this reading began. */
    long last() {
        return last;
    }

    boolean hasSuperseded() {
        return superseded.length > 0;
    }

    Cursor cursor() {
        return new Cursor();
    }

    /** Asks about entries in ascending order. */
    final class Cursor {
        private int atSuperseded;
        private int atHidden;
        private int atImported;

        /** Whether it had been recorded and nothing had superseded it. */
        boolean stands(long entry) {
            while (atSuperseded < superseded.length && superseded[atSuperseded] < entry) {
                atSuperseded++;
            }
            return (atSuperseded == superseded.length || superseded[atSuperseded] != entry) && recorded(entry);
        }

        private boolean recorded(long entry) {
            while (atHidden < hidden.length && hidden[atHidden + 1] < entry) {
                atHidden += 2;
            }
            return entry <= last && (atHidden == hidden.length || entry < hidden[atHidden]);
        }

        /** Whether what an entry tells had happened by then. */
        boolean happened(long entry, long day) {
            if (day > happenedBy) {
                return false;
            }
            if (day <= recordedBy) {
                return true;
            }
            while (atImported < imported.length && imported[atImported + 1] < entry) {
                atImported += 2;
            }
            return atImported == imported.length || entry < imported[atImported];
        }
    }
}
