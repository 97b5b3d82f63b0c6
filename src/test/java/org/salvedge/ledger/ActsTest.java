package org.salvedge.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.salvedge.shop.Facts.EUR;
import static org.salvedge.shop.Facts.attempt;
import static org.salvedge.shop.Facts.exit;
import static org.salvedge.shop.Facts.lot;
import static org.salvedge.shop.Facts.set;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Lot;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;
import org.salvedge.shop.TvSet;

/** What one act recorded is taken back in one act, whole; ledgers of before acts were noted go on. */
class ActsTest {
    private static final Settings SETTINGS = Settings.defaults(EUR, ZoneOffset.UTC);
    private static final TestClock CLOCK = new TestClock("2026-06-01T12:00:00Z");

    @TempDir
    Path folder;

    private Path file;

    @BeforeEach
    void aLotOfTwoSets() {
        file = folder.resolve("shop.db");
        try (Ledger ledger = Ledger.create(file, SETTINGS, CLOCK)) {
            ledger.record(List.of(
                    lot("L1", "2026-03-01", "90.00"),
                    set("A", "L1").build(),
                    set("B", "L1").build()));
        }
    }

    private Ledger open() {
        return Ledger.open(file, SETTINGS, CLOCK);
    }

    /** A turn at one set and takings of another, recorded as two batches of one act: entries 4 and 5 where they are the first. */
    private static void actOfTwo(Ledger ledger, int number) {
        ledger.act(() -> {
            ledger.record(List.of(attempt(number, "A", "2026-03-02T09:00:00", Fault.BACKLIGHT, Fix.LED_STRIPS, true)));
            return ledger.record(List.of(exit("B", "2026-03-05", ExitKind.STRIPPED, "12.00")));
        });
    }

    @Test
    void anActIsTakenBackWholeFromAnyOfItsEntries() {
        try (Ledger ledger = open()) {
            actOfTwo(ledger, 1);
            assertThat(ledger.undoAct(4L, "slip"))
                    .containsExactly(java.util.Map.entry(5L, 6L), java.util.Map.entry(4L, 7L));
            actOfTwo(ledger, 2);
            assertThat(ledger.undoAct(null, "slip").keySet()).containsExactly(9L, 8L);
            assertThatThrownBy(() -> ledger.undoAct(8L, "again"))
                    .isInstanceOf(Refused.class)
                    .hasMessageContaining("already superseded");
            assertThat(ledger.audit(Progress.NONE)).isEmpty();
        }
    }

    @Test
    void theAuditFindsAnActThatWasHalfTakenBackAndUndoFinishesIt() {
        try (Ledger ledger = open()) {
            actOfTwo(ledger, 1);
            ledger.undo(5, "half of it");
            assertThat(ledger.audit(Progress.NONE)).singleElement().satisfies(f -> {
                assertThat(f.rule()).isEqualTo("an act is taken back whole");
                assertThat(f.toString()).contains("entries 4-5").contains("undo 4");
            });
            ledger.undoAct(4L, "the rest");
            assertThat(ledger.audit(Progress.NONE)).isEmpty();
        }
    }

    @Test
    void aSetOfALotGoesAloneAndTheLotWithAllOfThem() {
        try (Ledger ledger = open()) {
            assertThat(ledger.undoAct(3L, "counted twice")).hasSize(1);
            assertThat(ledger.all(TvSet.class)).hasSize(1);
            assertThat(ledger.audit(Progress.NONE)).isEmpty();
            ledger.undoAct(1L, "wrong list");
            assertThat(ledger.all(TvSet.class)).isEmpty();
            assertThat(ledger.all(Lot.class)).isEmpty();
            assertThat(ledger.audit(Progress.NONE)).isEmpty();
        }
    }

    @Test
    void aLedgerOfBeforeActsIsReadAuditedAndWrittenOn() throws Exception {
        try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file)) {
            Database.execute(c, "DROP TABLE act");
            Database.execute(c, "PRAGMA user_version = 4");
        }
        try (Ledger ledger = Ledger.openForReading(file, SETTINGS)) {
            assertThat(ledger.all(TvSet.class)).hasSize(2);
            assertThat(ledger.audit(Progress.NONE)).isEmpty();
        }
        try (Ledger ledger = open()) {
            actOfTwo(ledger, 1);
            assertThat(ledger.undoAct(null, "slip")).hasSize(2);
            ledger.undoAct(1L, "wrong list");
            assertThat(ledger.audit(Progress.NONE)).isEmpty();
        }
    }
}
