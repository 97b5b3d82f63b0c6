package org.salvedge.ledger;

import java.math.BigDecimal;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.YearMonth;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.Optional;
import java.util.zip.CRC32C;

/** The printings of months' reviews, within a transaction of the caller. A ledger of an older version has none. */
record Printings(Connection connection) {
    private static final String COLUMNS = "SELECT month, printed_at, last, figures, crc FROM printing";

    /** @param before milliseconds since 1970, UTC: printings from then on are not seen */
    Optional<Printing> latest(YearMonth month, long before) throws SQLException {
        if (!there()) {
            return Optional.empty();
        }
        try (PreparedStatement select = connection.prepareStatement(
                COLUMNS + " WHERE month = ? AND printed_at < ? ORDER BY number DESC LIMIT 1")) {
            select.setString(1, month.toString());
            select.setLong(2, before);
            try (ResultSet row = select.executeQuery()) {
                return row.next() ? Optional.of(read(row)) : Optional.empty();
            }
        }
    }

    void add(Printing printing) throws SQLException {
        String figures = text(printing.figures());
        try (PreparedStatement insert = connection.prepareStatement(
                "INSERT INTO printing (month, printed_at, last, figures, crc) VALUES (?, ?, ?, ?, ?)")) {
            insert.setString(1, printing.month().toString());
            insert.setLong(2, printing.at().toEpochMilli());
            insert.setLong(3, printing.last());
            insert.setString(4, figures);
            insert.setInt(5, crc(printing.month().toString(), printing.at().toEpochMilli(), printing.last(), figures));
            insert.executeUpdate();
        }
    }

    void audit(Findings findings) throws SQLException {
        if (!there()) {
            return;
        }
        try (PreparedStatement select = connection.prepareStatement(COLUMNS + " ORDER BY number");
                ResultSet row = select.executeQuery()) {
            while (row.next()) {
                if (crc(row.getString(1), row.getLong(2), row.getLong(3), row.getString(4)) != row.getInt(5)) {
                    findings.add("checksums agree", "a printing of " + row.getString(1), "its row was changed");
                }
            }
        }
    }

    private boolean there() throws SQLException {
        return Database.number(connection, "SELECT count(*) FROM sqlite_schema WHERE name = 'printing'", 0) > 0;
    }

    private static Printing read(ResultSet row) throws SQLException {
        Map<String, BigDecimal> figures = new LinkedHashMap<>();
        for (String line : row.getString(4).lines().toList()) {
            int equals = line.indexOf('=');
            if (equals > 0) {
                figures.put(line.substring(0, equals), new BigDecimal(line.substring(equals + 1)));
            }
        }
        return new Printing(
                YearMonth.parse(row.getString(1)), Instant.ofEpochMilli(row.getLong(2)), row.getLong(3), figures);
    }

    private static String text(Map<String, BigDecimal> figures) {
        StringBuilder text = new StringBuilder();
        figures.forEach((name, value) ->
                text.append(name).append('=').append(value.toPlainString()).append('\n'));
        return text.toString();
    }

    private static int crc(String month, long at, long last, String figures) {
        CRC32C crc = new CRC32C();
        crc.update((month + " " + at + " " + last + " " + figures).getBytes(StandardCharsets.UTF_8));
        return (int) crc.getValue();
    }
}
