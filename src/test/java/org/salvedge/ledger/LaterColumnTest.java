package org.salvedge.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.salvedge.shop.Facts.EUR;
import static org.salvedge.shop.Facts.day;
import static org.salvedge.shop.Facts.eur;
import static org.salvedge.shop.Facts.lot;
import static org.salvedge.shop.Facts.set;
import static org.salvedge.shop.Facts.unit;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.ledger.Cells.Cell;
import org.salvedge.shop.Codes;
import org.salvedge.shop.Offer;
import org.salvedge.shop.Settings;

/** A column that a later script adds damages no older row, and a changed cell of it is found like any other. */
class LaterColumnTest {
    private static final Settings SETTINGS = Settings.defaults(EUR, ZoneOffset.UTC);
    private static final String LATER = "later-column.sql";
    private static final RankedOfferTable MARKED = new RankedOfferTable(Cell.of(3));

    @TempDir
    Path folder;

    private Path file;

    /** Entry 3 is an offer from before the script; 4, 5 and 6 are offers from after it. */
    @BeforeEach
    void aShopThatWasThereBeforeTheScript() throws SQLException {
        file = folder.resolve("shop.db");
        try (Ledger ledger = Ledger.create(file, SETTINGS, new TestClock("2026-06-01T12:00:00Z"))) {
            ledger.record(List.of(
                    lot("L1", "2026-03-01", "90.00"), set("A", "L1").build(), offer("2026-03-02", "150.07", "market")));
        }
        try (Connection c = open()) {
            Schema.run(c, List.of(LATER));
        }
        try (Database database = Database.forWriting(file, false)) {
            database.doWrite(c -> {
                Codec codec = new Store(c, EUR, Codes.BUILT_IN).codec();
                Chunk<Offer> chunk = new Chunk<>(MARKED, 4);
                chunk.add(offer("2026-03-03", "140.07", "market"), codec);
                chunk.add(offer("2026-03-04", "140.03", null), codec);
                chunk.add(offer("2026-03-05", "140.00", null), codec);
                try (PreparedStatement insert = c.prepareStatement(MARKED.insert())) {
                    chunk.write(insert);
                }
                Batches.add(c, 4, 6, 0L, Batches.RECORD);
            });
        }
    }

    private static Offer offer(String on, String price, @Nullable String channel) {
        return new Offer(unit("A"), day(on), eur(price), channel);
    }

    private Connection open() throws SQLException {
        return DriverManager.getConnection("jdbc:sqlite:" + file);
    }

    private List<Finding> audit(Table<Offer> offers) throws SQLException {
        List<Table<?>> tables = new ArrayList<>(Tables.ALL);
        tables.replaceAll(t -> t.equals(Tables.OFFERS) ? offers : t);
        Findings findings = new Findings();
        try (Connection c = open()) {
            new AuditRows(c, SETTINGS, findings, tables).run();
        }
        return findings.list();
    }

    @Test
    void rowsFromBeforeAndAfterTheScriptAreSound() throws SQLException {
        assertThat(audit(MARKED)).isEmpty();
        assertThat(audit(new RankedOfferTable(null))).isNotEmpty();
        try (Connection c = open()) {
            assertThat(Database.number(c, "SELECT rank FROM offer WHERE entry = 3", 0))
                    .isEqualTo(3);
            assertThat(Database.number(c, "SELECT rank FROM offer WHERE entry = 4", 0))
                    .isEqualTo(7);
        }
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "rank = 7 WHERE entry = 3",
                "colour = 1 WHERE entry = 3",
                "rank = 8 WHERE entry = 4",
                "rank = 3 WHERE entry = 4",
                "colour = NULL WHERE entry = 4",
                "rank = 7, colour = 1 WHERE entry = 3",
                "rank = 4 WHERE entry = 5",
                "price = price + 1 WHERE entry = 5",
                "rank = 3 WHERE entry = 6"
            })
    void aChangedCellIsFound(String change) throws SQLException {
        try (Connection c = open()) {
            Database.execute(c, "DROP TRIGGER offer_no_update");
            Database.execute(c, "UPDATE offer SET " + change);
        }
        String entry = change.substring(change.length() - 1);
        assertThat(audit(MARKED))
                .containsExactly(new Finding("checksums agree", "offer, entry " + entry, "its row was changed"));
    }

    @Test
    void aColumnThatTheFirstScriptDidNotMakeIsMarkedWithTheDefaultOfTheOneThatDid() throws SQLException {
        assertThat(mistakes(Tables.ALL, Schema.SCRIPTS)).isEmpty();

        List<String> more = new ArrayList<>(Schema.SCRIPTS);
        more.add(LATER);
        assertThat(mistakes(List.of(MARKED), more)).isEmpty();
        assertThat(mistakes(List.of(new RankedOfferTable(null)), more))
                .containsExactly("offer.rank: say Table.later(column, 3)");
        assertThat(mistakes(List.of(new RankedOfferTable(Cell.EMPTY)), more))
                .containsExactly("offer.rank: say Table.later(column, 3)");
        assertThat(mistakes(List.of(new RankedOfferTable(Cell.of(4))), more))
                .containsExactly("offer.rank: say Table.later(column, 3)");
    }

    /** Columns that are not marked as they must be, each with what to do. */
    private static List<String> mistakes(List<? extends Table<?>> tables, List<String> scripts) throws SQLException {
        List<String> mistakes = new ArrayList<>();
        try (Connection first = DriverManager.getConnection("jdbc:sqlite::memory:");
                Connection all = DriverManager.getConnection("jdbc:sqlite::memory:")) {
            Schema.run(first, scripts.subList(0, 1));
            Schema.run(all, scripts);
            for (Table<?> table : tables) {
                Map<String, String> old = defaults(first, table);
                Map<String, String> now = defaults(all, table);
                for (Column<?, ?> column : table.columns()) {
                    String wanted = old.containsKey(column.name()) ? null : now.get(column.name());
                    if (!Objects.equals(wanted, sql(column.before()))) {
                        mistakes.add(table.name() + "." + column.name()
                                + (wanted == null
                                        ? ": is no later column"
                                        : ": say Table.later(column, " + wanted + ")"));
                    }
                }
            }
        }
        return mistakes;
    }

    /** Defaults as SQL by column of a table; NULL where there is none. */
    private static Map<String, String> defaults(Connection c, Table<?> table) throws SQLException {
        Map<String, String> defaults = new HashMap<>();
        try (PreparedStatement select =
                c.prepareStatement("SELECT name, ifnull(dflt_value, 'NULL') FROM pragma_table_info(?)")) {
            select.setString(1, table.name());
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    defaults.put(row.getString(1), row.getString(2));
                }
            }
        }
        return defaults;
    }

    private static @Nullable String sql(@Nullable Cell before) {
        if (before == null) {
            return null;
        }
        return before.text() != null
                ? "'" + before.text() + "'"
                : before.number() == Cells.NULL ? "NULL" : Long.toString(before.number());
    }
}
