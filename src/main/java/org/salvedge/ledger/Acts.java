package org.salvedge.ledger;

import java.nio.charset.StandardCharsets;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.zip.CRC32C;
import org.salvedge.shop.Refused;

/** What one act put on record, and what became of it: an act is taken back whole. */
record Acts(Store store) {
    /** An act, or a batch, or one entry: what goes together. */
    private record Span(long first, long last) {}

    /** Notes that these entries were recorded in one act; one batch needs no note. */
    void add(long first, long last) throws SQLException {
        if (Database.number(store.connection(), "SELECT last FROM batch WHERE first = ?", 0, first) >= last) {
            return;
        }
        try (PreparedStatement insert =
                store.connection().prepareStatement("INSERT INTO act (first, last, crc) VALUES (?, ?, ?)")) {
            insert.setLong(1, first);
            insert.setLong(2, last);
            insert.setInt(3, crc(first, last));
            insert.executeUpdate();
        }
    }

    static int crc(long first, long last) {
        CRC32C crc = new CRC32C();
        crc.update((first + " " + last).getBytes(StandardCharsets.UTF_8));
        return (int) crc.getValue();
    }

    /** Ledgers of before acts were noted have none. */
    static boolean noted(Connection connection) throws SQLException {
        return Database.number(connection, "SELECT count(*) FROM sqlite_schema WHERE name = 'act'", 0) > 0;
    }

    /**
     * Entries that still stand of the act that an entry is of, the latest first; where one was changed since and changed back, the
     * one that has its values now.
     *
     * @param whole all that was recorded at once goes; else a set of a lot that was received stands for itself
     * @throws Refused naming an entry of it that was changed since
     */
    List<Long> standing(long entry, boolean whole) throws SQLException {
        Span span = span(entry, whole);
        if (span.first() == span.last()) {
            return List.of(entry);
        }
        List<Long> standing = new ArrayList<>();
        for (long[] batch : batches(span)) {
            for (long e = batch[1]; e >= batch[0]; e--) {
                long now = now(e);
                if (now < 0) {
                    throw new Refused("entry " + entry + " cannot be undone: entry " + e
                            + ", recorded with it, was changed by entry " + -now + " since; undo that first");
                }
                if (now > 0) {
                    standing.add(now);
                }
            }
        }
        return standing;
    }

    private Span span(long entry, boolean whole) throws SQLException {
        try (PreparedStatement select =
                store.connection().prepareStatement("SELECT first, last FROM act WHERE first <= ?1 AND last >= ?1")) {
            select.setLong(1, entry);
            try (ResultSet row = select.executeQuery()) {
                if (row.next()) {
                    return setAlone(entry, whole) ? new Span(entry, entry) : new Span(row.getLong(1), row.getLong(2));
                }
            }
        }
        try (PreparedStatement select = store.connection()
                .prepareStatement("SELECT first, last FROM batch WHERE first <= ?1 AND last >= ?1 AND what = ?2")) {
            select.setLong(1, entry);
            select.setString(2, Batches.RECORD);
            try (ResultSet row = select.executeQuery()) {
                boolean together = row.next() && !setAlone(entry, whole);
                return together ? new Span(row.getLong(1), row.getLong(2)) : new Span(entry, entry);
            }
        }
    }

    private boolean setAlone(long entry, boolean whole) throws SQLException {
        return !whole && Database.number(store.connection(), "SELECT 1 FROM unit WHERE entry = ?", 0, entry) == 1;
    }

    /** Entries to take back of each batch, the latest batch first: what followed from an amendment goes with it. */
    private List<long[]> batches(Span span) throws SQLException {
        List<long[]> batches = new ArrayList<>();
        try (PreparedStatement select = store.connection()
                .prepareStatement(
                        "SELECT first, last, what FROM batch WHERE last >= ? AND first <= ? ORDER BY first DESC")) {
            select.setLong(1, span.first());
            select.setLong(2, span.last());
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    long first = Math.max(row.getLong(1), span.first());
                    long last = row.getString(3).equals(Batches.RECORD) || span.first() == span.last()
                            ? Math.min(row.getLong(2), span.last())
                            : first;
                    batches.add(new long[] {first, last});
                }
            }
        }
        return batches;
    }

    /** The entry that has this one's values now; 0 = it was taken back; less than 0: minus the one that changed them. */
    long now(long entry) throws SQLException {
        long at = entry;
        int changes = 0;
        while (true) {
            long by = store.supersededBy(at);
            if (by == 0) {
                return changes == 0 ? at : -at;
            }
            changes += step(by);
            if (changes < 0) {
                return 0;
            }
            at = by;
        }
    }

    /** 1 = an amendment, -1 = an undoing, 0 = a share of landed cost that changed because something else did. */
    private int step(long entry) throws SQLException {
        try (PreparedStatement select = store.connection().prepareStatement("SELECT what FROM batch WHERE first = ?")) {
            select.setLong(1, entry);
            try (ResultSet row = select.executeQuery()) {
                return !row.next() ? 0 : row.getString(1).equals(Batches.UNDO) ? -1 : 1;
            }
        }
    }

    /** Acts of which some entries were taken back and others not. */
    void audit(Findings findings) throws SQLException {
        List<long[]> acts = new ArrayList<>();
        try (PreparedStatement select =
                        store.connection().prepareStatement("SELECT first, last, crc FROM act ORDER BY first");
                ResultSet row = select.executeQuery()) {
            while (row.next()) {
                acts.add(new long[] {row.getLong(1), row.getLong(2)});
                if (crc(row.getLong(1), row.getLong(2)) != row.getInt(3)) {
                    findings.add("checksums agree", "act of entry " + row.getLong(1), "its row was changed");
                }
            }
        }
        for (long[] act : acts) {
            long standing = 0;
            long undone = 0;
            for (long[] batch : batches(new Span(act[0], act[1]))) {
                for (long e = batch[0]; e <= batch[1]; e++) {
                    boolean set = setAlone(e, false);
                    if (now(e) == 0) {
                        undone = set ? undone : e;
                    } else {
                        standing = set ? standing : e;
                    }
                }
            }
            if (standing > 0 && undone > 0) {
                findings.add(
                        "an act is taken back whole",
                        "entries " + act[0] + "-" + act[1],
                        "were recorded together; entry " + undone + " was taken back and entry " + standing
                                + " was not: `undo " + standing + "` takes back the rest");
            }
        }
    }
}
