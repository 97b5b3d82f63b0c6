package org.salvedge.ledger;

import it.unimi.dsi.fastutil.objects.Object2IntOpenHashMap;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;

/** A dictionary table held in memory whole; new texts are written at once by {@link #write}. */
final class BulkDictionary implements Dictionary {
    private static final int BATCH = 1000;

    private final String table;
    private final Object2IntOpenHashMap<String> ids = new Object2IntOpenHashMap<>();
    private final List<String> texts = new ArrayList<>();
    private final int known;
    private String lastText = "";
    private int lastId = -1;

    BulkDictionary(Connection connection, String table) throws SQLException {
        this.table = table;
        ids.defaultReturnValue(-1);
        texts.add("");
        try (PreparedStatement select = connection.prepareStatement("SELECT id, text FROM " + table + " ORDER BY id");
                ResultSet row = select.executeQuery()) {
            while (row.next()) {
                while (texts.size() < row.getInt(1)) {
                    texts.add("");
                }
                texts.add(row.getString(2));
                ids.put(row.getString(2), row.getInt(1));
            }
        }
        known = texts.size();
    }

    @Override
    public int id(String text) {
        int id = find(text);
        if (id < 0) {
            id = texts.size();
            ids.put(text, id);
            texts.add(text);
            lastId = id;
        }
        return id;
    }

    /** Labels of one row are asked for several times: the last answer is at hand. */
    @Override
    @SuppressWarnings("ReferenceEquality") // another object of the same text only misses the shortcut
    public int find(String text) {
        if (text != lastText) {
            lastId = ids.getInt(text);
            lastText = text;
        }
        return lastId;
    }

    @Override
    public String text(int id) {
        return texts.get(id);
    }

    /** The largest number given so far. */
    int largest() {
        return texts.size() - 1;
    }

    /** Adds to the table what is new. */
    void write(Connection connection) throws SQLException {
        try (PreparedStatement insert =
                connection.prepareStatement("INSERT INTO " + table + " (id, text, crc) VALUES (?, ?, ?)")) {
            for (int id = known; id < texts.size(); id++) {
                insert.setInt(1, id);
                insert.setString(2, texts.get(id));
                insert.setInt(3, StoredDictionary.crc(id, texts.get(id)));
                insert.addBatch();
                if ((id - known) % BATCH == BATCH - 1) {
                    insert.executeBatch();
                }
            }
            insert.executeBatch();
        }
    }
}
