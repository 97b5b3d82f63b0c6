package org.salvedge.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.salvedge.shop.Facts.EUR;
import static org.salvedge.shop.Facts.lot;
import static org.salvedge.shop.Facts.set;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.Statement;
import java.time.LocalDate;
import java.time.YearMonth;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.shop.Settings;

/** Printings are kept beside the entries; ledgers from before they were have none. */
class PrintingsTest {
    private static final Settings UTC = Settings.defaults(EUR, ZoneOffset.UTC);
    private static final YearMonth MARCH = YearMonth.of(2026, 3);

    private final TestClock clock = new TestClock("2026-04-01T08:00:00Z");
    private Path file = Path.of("");

    @BeforeEach
    void aLedger(@TempDir Path folder) {
        file = folder.resolve("shop.db");
        try (Ledger ledger = Ledger.create(file, UTC, clock)) {
            ledger.record(
                    List.of(lot("L1", "2026-03-01", "10.00"), set("A", "L1").build()));
        }
    }

    private void change(String... statements) throws Exception {
        try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file);
                Statement s = c.createStatement()) {
            for (String sql : statements) {
                s.execute(sql);
            }
        }
    }

    @Test
    void theLatestPrintingOfAMonthComesBackWithItsFiguresInOrder() {
        Map<String, BigDecimal> figures = new LinkedHashMap<>();
        figures.put("sets", BigDecimal.TEN);
        figures.put("margin", new BigDecimal("-1732.13"));
        try (Ledger ledger = Ledger.open(file, UTC, clock)) {
            ledger.printings().add(MARCH, 1, Map.of());
            clock.set("2026-04-03T08:00:00Z");
            ledger.printings().add(MARCH, 2, figures);
            ledger.printings().add(MARCH.plusMonths(1), 2, Map.of());
        }
        try (Ledger ledger = Ledger.openForReading(file, UTC)) {
            Printing latest = ledger.printings().latest(MARCH, null).orElseThrow();
            assertThat(latest.last()).isEqualTo(2);
            assertThat(latest.figures()).containsExactlyEntriesOf(figures);
            assertThat(ledger.printings()
                            .latest(MARCH, LocalDate.of(2026, 4, 2))
                            .orElseThrow()
                            .last())
                    .isOne();
            assertThat(ledger.printings().latest(MARCH, LocalDate.of(2026, 3, 31)))
                    .isEmpty();
        }
    }

    @Test
    void aLedgerFromBeforeIsReadAsItIsAndBroughtUpWhenItIsWritten() throws Exception {
        change("DROP TABLE act", "DROP TABLE printing", "PRAGMA user_version = 3");
        try (Ledger ledger = Ledger.openForReading(file, UTC)) {
            assertThat(ledger.printings().latest(MARCH, null)).isEmpty();
            assertThat(ledger.audit(Progress.NONE)).isEmpty();
        }
        try (Ledger ledger = Ledger.open(file, UTC, clock)) {
            ledger.printings().add(MARCH, 2, Map.of());
            assertThat(ledger.printings().latest(MARCH, null)).isPresent();
            assertThat(ledger.audit(Progress.NONE)).isEmpty();
        }
    }

    @Test
    void aChangedPrintingIsFoundByTheAudit() throws Exception {
        try (Ledger ledger = Ledger.open(file, UTC, clock)) {
            ledger.printings().add(MARCH, 2, Map.of("sets", BigDecimal.ONE));
        }
        String trigger =
                "CREATE TRIGGER printing_no_update BEFORE UPDATE ON printing BEGIN SELECT RAISE(ABORT, 'the ledger is append-only'); END";
        change("DROP TRIGGER printing_no_update", "UPDATE printing SET figures = 'sets=2'", trigger);
        try (Ledger ledger = Ledger.openForReading(file, UTC)) {
            assertThat(ledger.audit(Progress.NONE))
                    .hasSize(1)
                    .first()
                    .asString()
                    .contains("a printing of 2026-03");
        }
    }
}
