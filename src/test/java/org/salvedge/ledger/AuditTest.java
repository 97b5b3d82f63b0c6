package org.salvedge.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.salvedge.shop.Facts.EUR;
import static org.salvedge.shop.Facts.attempt;
import static org.salvedge.shop.Facts.comeback;
import static org.salvedge.shop.Facts.day;
import static org.salvedge.shop.Facts.eur;
import static org.salvedge.shop.Facts.exit;
import static org.salvedge.shop.Facts.lot;
import static org.salvedge.shop.Facts.set;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.salvedge.shop.Codes;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Offer;
import org.salvedge.shop.Settings;

/** An audit finds each kind of damage, names it, and finds nothing where nothing is wrong. */
class AuditTest {
    private static final Settings SETTINGS = Settings.defaults(EUR, ZoneOffset.UTC);
    private static final TestClock CLOCK = new TestClock("2026-06-01T12:00:00Z");

    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void aShopWithSomeCorrections() {
        file = folder.resolve("shop.db");
        try (Ledger ledger = Ledger.create(file, SETTINGS, CLOCK)) {
            ledger.record(List.of(
                    lot("L1", "2026-03-01", "90.00"),
                    set("A", "L1").serial("SERIALNUMBER").build(),
                    set("B", "L1").build(),
                    set("N", "L1").arrived(false).build()));
            ledger.record(List.of(attempt(1, "A", "2026-03-02T09:00:00", Fault.BACKLIGHT, Fix.LED_STRIPS, true)));
            ledger.record(List.of(exit("A", "2026-03-05", ExitKind.SOLD, "120.00")));
            ledger.amend(6, exit("A", "2026-03-05", ExitKind.SOLD, "125.00"), "slip");
            ledger.record(List.of(comeback("A", "2026-03-09", true)));
            ledger.undo(8, "never came back");
        }
    }

    private List<Finding> audit() {
        return audit(SETTINGS);
    }

    private List<Finding> audit(Settings settings) {
        try (Ledger ledger = Ledger.openForReading(file, settings)) {
            return ledger.audit(Progress.NONE);
        }
    }

    /** Runs statements against the bare file, its guards taken away for the while. */
    private void tamper(String... statements) throws SQLException {
        try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file)) {
            Map<String, String> triggers = new LinkedHashMap<>();
            try (var rows =
                    c.createStatement().executeQuery("SELECT name, sql FROM sqlite_schema WHERE type = 'trigger'")) {
                while (rows.next()) {
                    triggers.put(rows.getString(1), rows.getString(2));
                }
            }
            for (String name : triggers.keySet()) {
                Database.execute(c, "DROP TRIGGER " + name);
            }
            for (String statement : statements) {
                Database.execute(c, statement);
            }
            for (String sql : triggers.values()) {
                String table = sql.substring(sql.indexOf(" ON ") + 4, sql.indexOf(" BEGIN"));
                if (Database.number(c, "SELECT count(*) FROM sqlite_schema WHERE name = ?", 0, table) == 1) {
                    Database.execute(c, sql);
                }
            }
        }
    }

    @Test
    void aColumnThatALaterScriptAddsIsAsTheScriptsMadeIt() throws SQLException {
        List<String> scripts = new ArrayList<>(Schema.SCRIPTS);
        scripts.add("later-column.sql");
        try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file)) {
            assertThat(Schema.differences(c, scripts)).containsExactly("offer");
            Schema.run(c, List.of("later-column.sql"));
            assertThat(Schema.differences(c, scripts)).isEmpty();
            assertThat(Schema.differences(c)).containsExactly("offer");
        }
    }

    private void smuggle(Fact... facts) {
        try (Database database = Database.forWriting(file, false)) {
            database.doWrite(c -> {
                Store store = new Store(c, EUR, Codes.BUILT_IN);
                long next = store.lastEntry() + 1;
                long first = next;
                for (Fact fact : facts) {
                    store.insert(next++, fact);
                }
                Batches.add(c, first, next - 1, 0L, Batches.RECORD);
            });
        }
    }

    @Test
    void aGoodLedgerPasses() {
        assertThat(audit()).isEmpty();
    }

    @ParameterizedTest(name = "{0} -> {1}")
    @CsvSource(delimiter = '|', textBlock = """
            UPDATE exit SET gross = gross + 1 WHERE entry = 7 | checksums agree | exit, entry 7
            UPDATE exit SET minutes = 5 WHERE entry = 6 | checksums agree | exit, entry 6
            UPDATE word SET text = 'led_stripes' WHERE text = 'led_strips' | checksums agree | word
            UPDATE unit_label SET text = 'Z' WHERE text = 'A' | checksums agree | unit_label
            UPDATE supersede SET why = 'because' WHERE old = 6 | checksums agree | correction of entry 6
            UPDATE batch SET recorded_at = recorded_at - 1 WHERE first = 5 | checksums agree | batch of entry 5
            DELETE FROM attempt | every entry is there once | entry 5
            DELETE FROM batch WHERE first = 5 | every entry is there once | entry 6
            UPDATE exit SET entry = 12 WHERE entry = 7 | every entry is there once | exit, entry 12
            UPDATE comeback SET entry = 5 | every entry is there once | comeback, entry 5
            DELETE FROM supersede WHERE old = 6 | a key stands once | exit
            DELETE FROM exit WHERE entry = 6 | corrections make sense | entry 6
            UPDATE supersede SET new = 8 WHERE old = 6 | corrections make sense | entry 6
            UPDATE unit SET landed_cost = landed_cost + 1 WHERE entry = 2 | landed costs add up | lot L1
            UPDATE unit SET landed_cost = NULL WHERE entry = 2 | landed costs add up | lot L1
            UPDATE unit SET landed_cost = 5 WHERE entry = 4 | landed costs add up | lot L1
            UPDATE attempt SET passed = 0, grade = 1 | values can be | attempt, entry 5
            UPDATE attempt SET fault = 999 | references hold | attempt, entry 5
            UPDATE attempt SET unit = 3 | histories are possible | set N
            INSERT INTO supersede VALUES (2, 9, 'x', 0) | no row is an orphan | entry 5
            DROP INDEX exit_by_unit | the tables are as they were made | exit_by_unit
            DROP TABLE offer | the tables are as they were made | offer
            CREATE TABLE mine (a) | the tables are as they were made | mine
            """)
    void damageIsFound(String statement, String rule, String where) throws SQLException {
        tamper(
                "PRAGMA ignore_check_constraints = ON",
                statement.startsWith("INSERT INTO supersede")
                        ? "UPDATE supersede SET new = 10 WHERE old = 8"
                        : "SELECT 1",
                statement);

        assertThat(audit()).anySatisfy(f -> {
            assertThat(f.rule()).isEqualTo(rule);
            assertThat(f.where()).startsWith(where);
            assertThat(f.what()).isNotEmpty();
        });
    }

    @Test
    void anImpossibleHistoryIsFoundHoweverItCameIn() {
        smuggle(comeback("B", "2026-03-09", true));

        assertThat(audit())
                .containsExactly(new Finding(
                        "histories are possible",
                        "set B",
                        "comeback on 2026-03-09 is of a set that was not sold at that time"));
    }

    @Test
    void aKeyThatStandsTwiceIsFound() {
        Offer offer = new Offer(org.salvedge.shop.Facts.unit("B"), day("2026-03-09"), eur("5.00"), null);
        smuggle(offer, offer);

        assertThat(audit())
                .containsExactly(
                        new Finding("a key stands once", "offer", "entries 10 and 11 stand for the same thing"));
    }

    @Test
    void aCodeThatTheShopGaveUpIsFound() {
        Fault own = new Fault("water_damage");
        Map<Fault, String> faults = new LinkedHashMap<>(Codes.BUILT_IN.faults());
        faults.put(own, "wet");
        Settings more = new Settings(
                EUR,
                ZoneOffset.UTC,
                SETTINGS.labourRate(),
                SETTINGS.basis(),
                0.8,
                0,
                20_000,
                1,
                "A4",
                Map.of(),
                Map.of(),
                Map.of(),
                new Codes(faults, Codes.BUILT_IN.fixes(), Codes.BUILT_IN.claims()));
        try (Ledger ledger = Ledger.open(file, more, CLOCK)) {
            ledger.record(List.of(attempt(2, "B", "2026-03-02T09:00:00", own, Fix.NONE, null)));
            assertThat(ledger.audit(Progress.NONE)).isEmpty();
        }

        assertThat(audit())
                .containsExactly(
                        new Finding("values can be", "attempt, entry 10", "\"water_damage\" is not a known code"));
    }

    @Test
    void aFlippedBitThatSqliteDoesNotNoticeIsFound() throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        byte[] text = "SERIALNUMBER".getBytes(StandardCharsets.UTF_8);
        int at = -1;
        for (int i = 0; i + text.length <= bytes.length && at < 0; i++) {
            at = java.util.Arrays.equals(bytes, i, i + text.length, text, 0, text.length) ? i : -1;
        }
        bytes[at + 3] ^= 1;
        Files.write(file, bytes);

        assertThat(audit()).containsExactly(new Finding("checksums agree", "unit, entry 2", "its row was changed"));
    }

    @Test
    void aFileInPiecesIsAFindingNotACrash() throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        java.util.Arrays.fill(bytes, 6 * 4096, 12 * 4096, (byte) 0x5a); // tables; the schema stands before and after
        Files.write(file, bytes);

        assertThat(audit()).isNotEmpty().anySatisfy(f -> assertThat(f.rule()).isEqualTo("the file is sound"));
    }

    @Test
    void whatIsFoundOftenIsCountedNotListed() throws SQLException {
        try (Ledger ledger = Ledger.open(file, SETTINGS, CLOCK)) {
            ledger.record(java.util.stream.IntStream.range(0, 250)
                    .mapToObj(i -> set("M" + i, "L1").build())
                    .toList());
        }
        tamper("UPDATE unit SET serial = 'x' WHERE entry > 9");

        assertThat(audit()).hasSize(101).last().isEqualTo(new Finding("checksums agree", "", "and 150 more"));
    }
}
