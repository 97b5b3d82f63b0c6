package org.salvedge.ledger;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.zip.CRC32C;
import org.jspecify.annotations.Nullable;

/** Writes the rows that say when entries were recorded and which one replaced which. */
final class Batches {
    static final String RECORD = "record";
    static final String AMEND = "amend";
    static final String UNDO = "undo";
    static final String IMPORT = "import";

    private Batches() {}

    /** @param recordedAt milliseconds since 1970 UTC; null for an import */
    static void add(Connection connection, long first, long last, @Nullable Long recordedAt, String what)
            throws SQLException {
        try (PreparedStatement insert = connection.prepareStatement(
                "INSERT INTO batch (first, last, recorded_at, what, crc) VALUES (?, ?, ?, ?, ?)")) {
            insert.setLong(1, first);
            insert.setLong(2, last);
            insert.setObject(3, recordedAt);
            insert.setString(4, what);
            insert.setInt(5, batchCrc(first, last, recordedAt, what));
            insert.executeUpdate();
        }
    }

    static void supersede(Connection connection, long old, long replacement, String why) throws SQLException {
        try (PreparedStatement insert =
                connection.prepareStatement("INSERT INTO supersede (old, new, why, crc) VALUES (?, ?, ?, ?)")) {
            insert.setLong(1, old);
            insert.setLong(2, replacement);
            insert.setString(3, why);
            insert.setInt(4, supersedeCrc(old, replacement, why));
            insert.executeUpdate();
        }
    }

    static int batchCrc(long first, long last, @Nullable Long recordedAt, String what) {
        return crc(first + " " + last + " " + recordedAt + " " + what);
    }

    static int supersedeCrc(long old, long replacement, String why) {
        return crc(old + " " + replacement + " " + why);
    }

    private static int crc(String text) {
        CRC32C crc = new CRC32C();
        crc.update(text.getBytes(StandardCharsets.UTF_8));
        return (int) crc.getValue();
    }
}
