package org.salvedge.ledger;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.salvedge.shop.Facts.EUR;
import static org.salvedge.shop.Facts.attempt;
import static org.salvedge.shop.Facts.comeback;
import static org.salvedge.shop.Facts.eur;
import static org.salvedge.shop.Facts.exit;
import static org.salvedge.shop.Facts.lot;
import static org.salvedge.shop.Facts.set;
import static org.salvedge.shop.Facts.unit;

import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import org.assertj.core.api.ThrowableAssert.ThrowingCallable;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.shop.Basis;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;
import org.salvedge.shop.TvSet;

/** Corrections add entries; what they replace stays readable; nothing impossible comes of them. */
class CorrectionsTest {
    private static final Fact SOLD = exit("A", "2026-03-06", ExitKind.SOLD, "120.00");

    @TempDir
    Path folder;

    private Ledger ledger;

    @BeforeEach
    void aLotOfThreeSets() {
        ledger = Ledger.create(
                folder.resolve("shop.db"),
                Settings.defaults(EUR, ZoneOffset.UTC),
                new TestClock("2026-04-01T12:00:00Z"));
        ledger.record(List.of(
                lot("L1", "2026-03-01", "90.00"),
                set("A", "L1").build(),
                set("B", "L1").build(),
                set("C", "L1").build()));
    }

    @AfterEach
    void close() {
        assertThat(ledger.audit(Progress.NONE)).isEmpty();
        ledger.close();
    }

    private long record(Fact fact) {
        return ledger.record(List.of(fact)).get(0);
    }

    private void refuses(String why, ThrowingCallable call) {
        assertThatThrownBy(call).isInstanceOf(Refused.class).hasMessageContaining(why);
    }

    private TvSet standing(String label) {
        return (TvSet) requireNonNull(ledger.unit(unit(label)).orElseThrow().fact());
    }

    private List<String> shares() {
        return ledger.all(TvSet.class).stream()
                .map(s -> String.valueOf(s.landedCost()))
                .toList();
    }

    @Test
    void anAmendedEntryStaysReadableAndSaysWhatReplacedIt() {
        long sold = record(SOLD);

        long amended = ledger.amend(sold, exit("A", "2026-03-07", ExitKind.SOLD, "125.00"), "typed wrongly");

        Entry old = ledger.entry(sold).orElseThrow();
        assertThat(old.fact()).isEqualTo(SOLD);
        assertThat(old.supersededBy()).isEqualTo(amended);
        assertThat(old.stands()).isFalse();
        Entry fresh = ledger.entry(amended).orElseThrow();
        assertThat(fresh.supersedes()).isEqualTo(sold);
        assertThat(fresh.why()).isEqualTo("typed wrongly");
        assertThat(fresh.stands()).isTrue();
    }

    @Test
    void anUndoneEntryIsGoneFromThePresentOnly() {
        long sold = record(SOLD);

        long undone = ledger.undo(sold, "wrong set");

        assertThat(ledger.all(org.salvedge.shop.Exit.class)).isEmpty();
        assertThat(ledger.entriesOf(unit("A"))).extracting(Entry::number).containsExactly(2L, sold, undone);
        assertThat(ledger.entry(undone)).hasValueSatisfying(e -> {
            assertThat(e.fact()).isNull();
            assertThat(e.supersedes()).isEqualTo(sold);
            assertThat(e.why()).isEqualTo("wrong set");
        });
        record(SOLD); // the same may be recorded anew
    }

    @Test
    void theLatestEntryIsOneThatStandsAndNoUndoing() {
        long first = record(SOLD);
        long second = record(comeback("A", "2026-03-09", true));
        ledger.undo(second, "slip");

        assertThat(ledger.latest().orElseThrow().number()).isEqualTo(first);
    }

    @Test
    void whatWasReplacedCannotBeCorrectedAgain() {
        long sold = record(SOLD);
        long amended = ledger.amend(sold, exit("A", "2026-03-07", ExitKind.SOLD, "1.00"), "slip");

        refuses("already superseded by entry " + amended, () -> ledger.undo(sold, "again"));
        refuses("already superseded by entry " + amended, () -> ledger.amend(sold, SOLD, "again"));
        long undone = ledger.undo(ledger.undo(amended, "back"), "away");
        refuses("took entry", () -> ledger.undo(undone, "again"));
        refuses("there is no entry 999", () -> ledger.undo(999, "nothing"));
    }

    @Test
    void anAmendmentKeepsLabelAndKind() {
        long sold = record(SOLD);
        long tried = record(attempt(1, "B", "2026-03-06T09:00:00", Fault.BACKLIGHT, Fix.LED_STRIPS, true));

        refuses("only by one of its own kind", () -> ledger.amend(sold, comeback("A", "2026-03-06", true), "x"));
        refuses(
                "keeps the label or number",
                () -> ledger.amend(2, set("Z", "L1").build(), "x"));
        refuses(
                "keeps the label or number",
                () -> ledger.amend(
                        tried, attempt(2, "B", "2026-03-06T09:00:00", Fault.BACKLIGHT, Fix.LED_STRIPS, true), "x"));
        record(lot("L2", "2026-03-01", "1.00"));
        refuses("set A came with lot L1", () -> ledger.amend(2, set("A", "L2").build(), "x"));
    }

    @Test
    void anAttemptBookedOnTheWrongSetMoves() {
        long tried = record(attempt(1, "B", "2026-03-06T09:00:00", Fault.BACKLIGHT, Fix.LED_STRIPS, true));

        ledger.amend(
                tried, attempt(1, "C", "2026-03-06T09:00:00", Fault.BACKLIGHT, Fix.LED_STRIPS, true), "wrong label");

        assertThat(ledger.entriesOf(unit("B"))).filteredOn(Entry::stands).hasSize(1);
        assertThat(ledger.entriesOf(unit("C"))).filteredOn(Entry::stands).hasSize(2);
    }

    @Test
    void anAmendmentThatMakesTheHistoryImpossibleIsRefused() {
        long sold = record(SOLD);
        record(comeback("A", "2026-03-09", true));

        refuses("comeback of A", () -> ledger.amend(sold, exit("A", "2026-03-10", ExitKind.SOLD, "1.00"), "later"));
        refuses("comeback of A", () -> ledger.amend(sold, exit("A", "2026-03-06", ExitKind.LOST, "0"), "lost"));
        Lot later = lot("L1", "2026-03-08", "90.00");
        refuses("is before the day the set was received", () -> ledger.amend(1, later, "later"));
    }

    @Test
    void undoNamesEveryEntryThatRestsOnIt() {
        long sold = record(SOLD);
        long back = record(comeback("A", "2026-03-09", true));
        long again = record(exit("A", "2026-03-12", ExitKind.SOLD, "80.00"));

        refuses("entry " + back + " (comeback of A on 2026-03-09)", () -> ledger.undo(sold, "x"));
        refuses("entry " + again + " (exit of A on 2026-03-12)", () -> ledger.undo(back, "x"));
        refuses("entry " + sold, () -> ledger.undo(2, "x"));
        refuses("entry 2 (set A), entry 3 (set B), entry 4 (set C)", () -> ledger.undo(1, "x"));
        ledger.undo(again, "x");
        ledger.undo(back, "x");
        ledger.undo(sold, "x");
    }

    @Test
    void aWholeLotCanBeTakenBackFromItsEnd() {
        for (String label : List.of("C", "B", "A")) {
            ledger.undo(ledger.unit(unit(label)).orElseThrow().number(), "booked twice");
        }
        ledger.undo(1, "booked twice");
        assertThat(ledger.all(TvSet.class)).isEmpty();
        ledger.record(List.of(lot("L1", "2026-03-02", "80.00"), set("A", "L1").build()));
        assertThat(shares()).containsExactly("80.00");
    }

    @Test
    void sharesAddUpAgainWhenASetTurnsOutMissing() {
        ledger.amend(4, set("C", "L1").arrived(false).build(), "not on the pallet");

        assertThat(shares()).containsExactly("45.00", "45.00", "null");
    }

    @Test
    void undoingGoesBackStepByStepAndEndsWithNothing() {
        long sold = record(SOLD);
        long second = ledger.amend(sold, exit("A", "2026-03-07", ExitKind.SOLD, "2.00"), "slip");
        long third = ledger.amend(second, exit("A", "2026-03-08", ExitKind.SOLD, "3.00"), "slip");

        long backToSecond = ledger.undo(third, "was right");
        assertThat(ledger.entry(backToSecond).orElseThrow().fact())
                .isEqualTo(exit("A", "2026-03-07", ExitKind.SOLD, "2.00"));
        long backToFirst = ledger.undo(backToSecond, "was right");
        assertThat(ledger.entry(backToFirst).orElseThrow().fact()).isEqualTo(SOLD);
        long nothing = ledger.undo(backToFirst, "never sold");
        assertThat(ledger.entry(nothing).orElseThrow().fact()).isNull();
    }

    @Test
    void undoingASetsAmendmentLooksThroughSharesThatOnlyFollowed() {
        ledger.amend(3, standing("B").toBuilder().place("shelf 4").build(), "moved");
        ledger.amend(1, lot("L1", "2026-03-01", "120.00"), "invoice");

        ledger.undo(ledger.unit(unit("B")).orElseThrow().number(), "never moved");

        assertThat(standing("B").place()).isNull();
        assertThat(shares()).containsExactly("40.00", "40.00", "40.00");
    }

    @Test
    void sharesAddUpAgainWhenASetIsTakenBack() {
        ledger.undo(4, "counted twice");

        assertThat(shares()).containsExactly("45.00", "45.00");
    }

    @Test
    void aShareChangedOnPurposeStaysAndTheOthersTakeTheRest() {
        ledger.amend(2, standing("A").toBuilder().landedCost(eur("50.00")).build(), "the good one");

        assertThat(shares()).containsExactly("50.00", "20.00", "20.00");
        refuses(
                "would not add up to its cost of 90.00",
                () -> ledger.amend(
                        ledger.unit(unit("A")).orElseThrow().number(),
                        standing("A").toBuilder().landedCost(eur("91.00")).build(),
                        "too much"));
    }

    @Test
    void undoingThatGivesAllSharesAndTheBasisBack() {
        long amended = ledger.amend(
                2, standing("A").toBuilder().landedCost(eur("50.00")).build(), "the good one");

        ledger.undo(amended, "it was not");

        assertThat(shares()).containsExactly("30.00", "30.00", "30.00");
        assertThat(ledger.all(Lot.class)).extracting(Lot::basis).containsExactly(Basis.EQUAL);
    }

    @Test
    void aShareChangedOnPurposeIsKeptInProportionLater() {
        ledger.amend(2, standing("A").toBuilder().landedCost(eur("50.00")).build(), "the good one");

        ledger.amend(ledger.lot(new LotId("L1")).orElseThrow().number(), lot("L1", "2026-03-01", "180.00"), "invoice");

        assertThat(shares()).containsExactly("100.00", "40.00", "40.00");
    }

    @Test
    void givenSharesKeepTheirProportions() {
        Lot given = new Lot(
                new LotId("L2"),
                "Kavo",
                org.salvedge.shop.Facts.day("2026-03-01"),
                EUR,
                null,
                eur("100.00"),
                null,
                null,
                null,
                null,
                null,
                Basis.GIVEN,
                null);
        long entry = ledger.record(List.of(
                        given,
                        set("D", "L2").landedCost(eur("75.00")).build(),
                        set("E", "L2").landedCost(eur("25.00")).build()))
                .get(0);

        ledger.amend(entry, lot("L2", "2026-03-01", "120.00"), "freight was in it");

        assertThat(standing("D").landedCost()).isEqualTo(eur("90.00"));
        assertThat(standing("E").landedCost()).isEqualTo(eur("30.00"));
    }

    @Test
    void anExtraFoundLaterCarriesNothing() {
        record(set("X", "L1").line(null).build());

        assertThat(standing("X").landedCost()).isEqualTo(eur("0.00"));
    }

    @Test
    void entriesOfASetStandInOrderOfTime() {
        record(exit("A", "2026-03-20", ExitKind.SOLD, "120.00"));
        record(attempt(2, "A", "2026-03-08T09:00:00", Fault.BACKLIGHT, Fix.LED_STRIPS, true));
        record(attempt(1, "A", "2026-03-07T09:00:00", Fault.BACKLIGHT, Fix.LED_STRIPS, false));

        assertThat(ledger.entriesOf(unit("A"))).extracting(Entry::number).containsExactly(2L, 7L, 6L, 5L);
    }
}
