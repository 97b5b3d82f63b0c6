package org.salvedge.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.BitSet;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Settings;

/** Audits row by row: checksums, values that can be, codes in force, entry numbers without gap or double. */
final class AuditRows {
    private static final String CHECKSUM = "checksums agree";
    private static final String NUMBERS = "every entry is there once";
    private static final String CORRECTIONS = "corrections make sense";

    private final Connection connection;
    private final Findings findings;
    private final List<Table<?>> tables;
    private final Store store;
    private final Codec codec;
    private final FactCheck check;
    private final BitSet entries = new BitSet();
    private final BitSet undoings = new BitSet();
    private final BitSet corrections = new BitSet();
    private long last;

    AuditRows(Connection connection, Settings settings, Findings findings, List<Table<?>> tables) throws SQLException {
        this.connection = connection;
        this.findings = findings;
        this.tables = tables;
        store = new Store(connection, settings.currency(), settings.codes());
        codec = new Codec(
                new BulkDictionary(connection, "word"),
                new BulkDictionary(connection, "lot_label"),
                new BulkDictionary(connection, "unit_label"),
                settings.currency(),
                store.codec().lotCurrencies(),
                settings.codes());
        check = new FactCheck(LocalDate.MAX, settings.currency(), settings.codes());
    }

    void run() throws SQLException {
        for (String dictionary : new String[] {"word", "lot_label", "unit_label"}) {
            dictionary(dictionary);
        }
        batches();
        for (Table<?> table : tables) {
            rows(table);
        }
        supersedes();
        gaps();
        new Printings(connection).audit(findings);
    }

    private interface Row {
        void take(ResultSet row) throws SQLException;
    }

    private void each(String sql, Row taker) throws SQLException {
        try (PreparedStatement select = connection.prepareStatement(sql);
                ResultSet row = select.executeQuery()) {
            while (row.next()) {
                taker.take(row);
            }
        }
    }

    private void dictionary(String table) throws SQLException {
        each("SELECT id, text, crc FROM " + table, row -> {
            if (StoredDictionary.crc(row.getInt(1), row.getString(2)) != row.getInt(3)) {
                findings.add(
                        CHECKSUM, table + " " + row.getInt(1), "the text \"" + row.getString(2) + "\" was changed");
            }
        });
    }

    private void batches() throws SQLException {
        each("SELECT first, last, recorded_at, what, crc FROM batch ORDER BY first", row -> {
            long first = row.getLong(1);
            long millis = row.getLong(3);
            Long recorded = row.wasNull() ? null : millis;
            if (first != last + 1) {
                findings.add(NUMBERS, "entry " + first, "its batch does not follow entry " + last);
            }
            last = row.getLong(2);
            String what = row.getString(4);
            if (Batches.batchCrc(first, last, recorded, what) != row.getInt(5)) {
                findings.add(CHECKSUM, "batch of entry " + first, "its row was changed");
            }
            if (what.equals(Batches.UNDO) || what.equals(Batches.AMEND)) {
                corrections.set((int) first, (int) last + 1);
            }
            if (what.equals(Batches.UNDO)) {
                undoings.set((int) first);
            }
        });
    }

    private <F extends Fact> void rows(Table<F> table) throws SQLException {
        Cells cells = table.newCells(1);
        int crc = table.columns().size() + 2;
        each(table.select() + " ORDER BY entry", row -> {
            long entry = row.getLong(1);
            String where = table.name() + ", entry " + entry;
            table.readCells(row, cells, 0);
            if (cells.crc(table.mark(), entry, 0) != row.getInt(crc)) {
                findings.add(CHECKSUM, where, "its row was changed");
            }
            if (entry > last) {
                findings.add(NUMBERS, where, "is of no batch");
            } else if (entries.get((int) entry)) {
                findings.add(NUMBERS, where, "its number stands twice");
            } else {
                entries.set((int) entry);
            }
            String wrong = wrong(table, row);
            if (wrong != null) {
                findings.add("values can be", where, wrong);
            }
        });
    }

    /** What is wrong with a row's values; null if nothing. Codes count only while the row stands. */
    private <F extends Fact> @Nullable String wrong(Table<F> table, ResultSet row) throws SQLException {
        try {
            F fact = table.read(row, codec);
            check.check(fact);
            return null;
        } catch (BadCell e) {
            return e.problem();
        } catch (IllegalArgumentException | IndexOutOfBoundsException e) {
            return String.valueOf(e.getMessage());
        }
    }

    private void supersedes() throws SQLException {
        each("SELECT old, new, why, crc FROM supersede ORDER BY old", row -> {
            long old = row.getLong(1);
            long by = row.getLong(2);
            String where = "entry " + old;
            if (Batches.supersedeCrc(old, by, row.getString(3)) != row.getInt(4)) {
                findings.add(CHECKSUM, "correction of " + where, "its row was changed");
            }
            if (old > last || !entries.get((int) old)) {
                findings.add(CORRECTIONS, where, "was superseded, but is not there");
            } else if (by > last || !corrections.get((int) by)) {
                findings.add(CORRECTIONS, where, "is superseded by entry " + by + ", which is no correction");
            } else if (entries.get((int) by)) {
                sameKind(old, by);
            } else if (undoings.get((int) by)) {
                entries.set((int) by); // an undoing without a row of its own
            }
        });
    }

    private void sameKind(long old, long by) throws SQLException {
        var before = store.entry(old);
        var after = store.entry(by);
        if (before.isPresent()
                && after.isPresent()
                && before.get().fact().getClass() != after.get().fact().getClass()) {
            findings.add(CORRECTIONS, "entry " + by, "supersedes entry " + old + ", which is of another kind");
        }
    }

    private void gaps() {
        for (int entry = entries.nextClearBit(1); entry <= last; entry = entries.nextClearBit(entry + 1)) {
            findings.add(NUMBERS, "entry " + entry, "is missing");
        }
    }
}
