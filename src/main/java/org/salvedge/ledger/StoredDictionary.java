package org.salvedge.ledger;

import it.unimi.dsi.fastutil.ints.Int2ObjectOpenHashMap;
import it.unimi.dsi.fastutil.objects.Object2IntOpenHashMap;
import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.zip.CRC32C;

/** A dictionary table, asked text by text and remembered. Forget it when a transaction that added to it is rolled back. */
final class StoredDictionary implements Dictionary {
    private static final int REMEMBERED = 200_000;

    private final Connection connection;
    private final String table;
    private final Object2IntOpenHashMap<String> ids = new Object2IntOpenHashMap<>();
    private final Int2ObjectOpenHashMap<String> texts = new Int2ObjectOpenHashMap<>();

    StoredDictionary(Connection connection, String table) {
        this.connection = connection;
        this.table = table;
        ids.defaultReturnValue(-1);
    }

    static int crc(int id, String text) {
        CRC32C crc = new CRC32C();
        for (int shift = 0; shift < Integer.SIZE; shift += Byte.SIZE) {
            crc.update(id >>> shift);
        }
        crc.update(text.getBytes(StandardCharsets.UTF_8));
        return (int) crc.getValue();
    }

    @Override
    public int id(String text) throws SQLException {
        int known = find(text);
        if (known > 0) {
            return known;
        }
        try (PreparedStatement insert =
                connection.prepareStatement("INSERT INTO " + table + " (id, text, crc) VALUES (?, ?, ?)")) {
            int id = (int) Database.number(connection, "SELECT max(id) FROM " + table, 0) + 1;
            insert.setInt(1, id);
            insert.setString(2, text);
            insert.setInt(3, crc(id, text));
            insert.executeUpdate();
            remember(id, text);
            return id;
        }
    }

    @Override
    public int find(String text) throws SQLException {
        int known = ids.getInt(text);
        if (known < 0) {
            known = (int) Database.number(connection, "SELECT id FROM " + table + " WHERE text = ?", -1, text);
            if (known > 0) {
                remember(known, text);
            }
        }
        return known;
    }

    @Override
    public String text(int id) throws SQLException {
        String known = texts.get(id);
        if (known != null) {
            return known;
        }
        try (PreparedStatement select = connection.prepareStatement("SELECT text FROM " + table + " WHERE id = ?")) {
            select.setInt(1, id);
            try (ResultSet row = select.executeQuery()) {
                if (!row.next()) {
                    throw new SQLException("row " + id + " of " + table + " is missing");
                }
                String text = row.getString(1);
                remember(id, text);
                return text;
            }
        }
    }

    private void remember(int id, String text) {
        if (ids.size() >= REMEMBERED) {
            forget();
        }
        ids.put(text, id);
        texts.put(id, text);
    }

    void forget() {
        ids.clear();
        texts.clear();
    }
}
