package org.salvedge.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.salvedge.shop.Facts.EUR;
import static org.salvedge.shop.Facts.attempt;
import static org.salvedge.shop.Facts.eur;
import static org.salvedge.shop.Facts.exit;
import static org.salvedge.shop.Facts.lot;
import static org.salvedge.shop.Facts.set;
import static org.salvedge.shop.Facts.unit;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.ledger.Ledger.Detail;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.History;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;
import org.salvedge.shop.TvSet;

class LedgerTest {
    private static final Settings SETTINGS = Settings.defaults(EUR, ZoneOffset.UTC);
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-06-01T12:00:00Z"), ZoneOffset.UTC);

    @TempDir
    Path folder;

    private Ledger ledger;

    @BeforeEach
    void aLotOfThreeSets() {
        ledger = Ledger.create(folder.resolve("shop.db"), SETTINGS, CLOCK);
        ledger.record(List.of(
                lot("L1", "2026-03-01", "100.00"),
                set("L1-001", "L1").build(),
                set("L1-002", "L1").build(),
                set("L1-003", "L1").build()));
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    @Test
    void sharesTheLandedCostToTheCent() {
        assertThat(ledger.all(TvSet.class))
                .extracting(TvSet::landedCost)
                .containsExactly(eur("33.34"), eur("33.33"), eur("33.33"));
    }

    @Test
    void keepsWhatIsRecorded() {
        var fact = attempt(1, "L1-001", "2026-03-02T09:00:00", Fault.ROW_DRIVE, Fix.CONTACT_MASK, true);

        List<Long> numbers = ledger.record(List.of(fact));

        assertThat(numbers).containsExactly(5L);
        assertThat(ledger.entry(5)).hasValueSatisfying(e -> {
            assertThat(e.fact()).isEqualTo(fact);
            assertThat(e.recordedAt()).isEqualTo(CLOCK.instant());
        });
        assertThat(ledger.entriesOf(unit("L1-001"))).extracting(Entry::number).containsExactly(2L, 5L);
        assertThat(ledger.unitsLike("-00", 9)).hasSize(3);
    }

    @Test
    void refusesAnExitAfterAnExit() {
        ledger.record(List.of(exit("L1-001", "2026-03-05", ExitKind.SOLD, "120.00")));

        assertThatThrownBy(() -> ledger.record(List.of(exit("L1-001", "2026-03-09", ExitKind.SOLD, "90.00"))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("exit of L1-001 on 2026-03-09 is after the set has gone");
        assertThat(ledger.latest())
                .hasValueSatisfying(e -> assertThat(e.number()).isEqualTo(5));
    }

    @Test
    void anUndoneAmendmentBringsTheOldValuesBack() {
        ledger.record(List.of(exit("L1-001", "2026-03-05", ExitKind.SOLD, "120.00")));
        long amended = ledger.amend(5, exit("L1-001", "2026-03-06", ExitKind.SOLD, "130.00"), "typed wrongly");

        long back = ledger.undo(amended, "was right");

        assertThat(ledger.entry(back).orElseThrow().fact())
                .isEqualTo(exit("L1-001", "2026-03-05", ExitKind.SOLD, "120.00"));
        assertThat(ledger.entriesOf(unit("L1-001")))
                .extracting(Entry::supersededBy)
                .containsExactly(0L, 6L, 0L, 7L);
    }

    @Test
    void undoNamesTheEntriesThatRestOnIt() {
        ledger.record(List.of(exit("L1-001", "2026-03-05", ExitKind.SOLD, "120.00")));

        assertThatThrownBy(() -> ledger.undo(2, "slip"))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("entry 5 (exit of L1-001 on 2026-03-05)");
    }

    @Test
    void aCorrectedPriceIsSharedAgain() {
        ledger.amend(1, lot("L1", "2026-03-01", "90.00"), "invoice");

        assertThat(ledger.all(TvSet.class)).extracting(TvSet::landedCost).containsOnly(eur("30.00"));
    }

    @Test
    void readsColumns() {
        ledger.record(List.of(
                attempt(1, "L1-001", "2026-03-02T09:00:00", Fault.ROW_DRIVE, Fix.CONTACT_MASK, true),
                exit("L1-001", "2026-03-05", ExitKind.SOLD, "120.00")));

        History now = ledger.history(AsOf.NOW, Detail.FULL);

        assertThat(now.sets()).isEqualTo(3);
        assertThat(now.label(0)).isEqualTo("L1-001");
        assertThat(now.exitGross(0)).isEqualTo(12000);
        assertThat(now.attemptFixMicros(0)).isEqualTo(24_500_000);
        assertThat(ledger.history(AsOf.happenedBy(java.time.LocalDate.parse("2026-03-04")), Detail.COUNTS)
                        .exits())
                .isZero();
        assertThat(ledger.lot(new LotId("L1"))).isPresent();
    }
}
