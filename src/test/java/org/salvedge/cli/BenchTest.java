package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.nio.file.Path;
import java.util.Arrays;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** A talk at the bench, line by line, the clock moving on between them. */
class BenchTest {
    @TempDir
    Path folder;

    private TestShop shop;

    @BeforeEach
    void open() {
        shop = TestShop.withLot(folder);
    }

    private int talk(String... lines) {
        return shop.answering(lines).run("bench", "--technician", "Ada");
    }

    @Test
    void aUsualTurnTakesTwelveKeyStrokesAtMost() {
        String[] typed = {"r", ". y b so"};
        // The label comes from the scanner; each line ends with Enter.
        assertThat(Arrays.stream(typed).mapToInt(l -> l.length() + 1).sum()).isLessThanOrEqualTo(12);
        talk("L0042-001", "later PT8M", "1", "later PT41M", ". y b so", "q");
        assertThat(shop.out())
                .contains("row_drive; . = contact_mask")
                .contains(
                        "L0042-001 row_drive, contact_mask, 49 min, passed, grade B, safety tested, owner data reset, by Ada");
        assertThat(shop.err()).contains("the buyer must be told");
        shop.run("show", "--entry", "5");
        assertThat(shop.out()).contains("diagnosis_minutes: 8").contains("fix_minutes: 41");
    }

    @Test
    void takingAnotherSetsTurnBackNamesItAndIsAskedFor() {
        talk("L0042-001", "1 . n", "L0042-002", "u", "n", "u", "L0042-003", "u", "y", "q");
        assertThat(shop.questions())
                .filteredOn(q -> q.contains("take it back"))
                .containsExactly(
                        "  not L0042-002, which is in hand: take it back (y, n)? ",
                        "  not L0042-002, which is in hand: take it back (y, n)? ",
                        "  not L0042-003, which is in hand: take it back (y, n)? ");
        assertThat(shop.out())
                .contains("entry 5: L0042-001 row_drive, contact_mask, failed, by Ada, of 12:00\n")
                .contains("entry 5 stays")
                .contains("entry 6: takes entry 5 back, L0042-001 row_drive, contact_mask, failed, by Ada, of 12:00\n");
        talk("L0042-002", "1 . n", "u", "q");
        assertThat(shop.questions()).noneMatch(q -> q.contains("L0042-002, which") && q.contains("not L0042-001"));
        assertThat(shop.out()).contains("entry 8: takes entry 7 back, L0042-002 row_drive");
    }

    @Test
    void releaseChecksAreAskedAtTheRetestAndAScanInsteadOfAnAnswerIsNotLost() {
        talk("L0042-001", "1 . y b", "so", "L0042-002", "1 . y a", "L0042-003", "5 7 n", "q");
        assertThat(shop.questions())
                .filteredOn(q -> q.contains("safety tested (s)"))
                .hasSize(2);
        assertThat(shop.out())
                .contains("L0042-001 row_drive, contact_mask, passed, grade B, safety tested, owner data reset")
                .contains("L0042-002 row_drive, contact_mask, passed, grade A, by Ada")
                .contains("L0042-003 power_board, power_board_repair, failed");
        assertThat(shop.err()).contains("L0042-002: before it is sold: safety_tested, owner_data_reset");
    }

    @Test
    void eachSetHasItsWatchAndAnotherScanStopsIt() {
        talk(
                "L0042-001",
                "later PT5M",
                "L0042-002",
                "later PT7M",
                "L0042-001",
                "later PT10M",
                "1 . n",
                "L0042-002",
                "p",
                "later PT60M",
                "L0042-002",
                "later PT3M",
                "1 none -",
                "q");
        assertThat(shop.out())
                .contains("L0042-001 row_drive, contact_mask, 15 min, failed")
                .contains("L0042-002 row_drive, no fix, 10 min");
    }

    @Test
    void aSlipIsUndoneAndWhatIsNotUnderstoodIsToldAndRecordsNothing() {
        assertThat(talk("L0042-001", "p . y", "row xyz y", "row . maybe", "1 . n", "u", "u", "?", "q"))
                .isZero();
        assertThat(shop.err())
                .contains("\"p\" may be 5 power_board, 8 panel_broken, 9 ports_audio")
                .contains("\"xyz\" is no fix")
                .contains("\"maybe\" is not understood")
                .contains("nothing was recorded here yet");
        assertThat(shop.out()).contains("takes entry 5 back").contains("1 row_drive, 2 column_drive");
        shop.run("show", "L0042-001");
        assertThat(shop.out()).contains("[why: slip at the bench]");
        assertThat(shop.run("audit")).isZero();
    }

    @Test
    void aTurnLeftUnrecordedIsNamedAtTheEnd() {
        talk("L0042-001", "later PT12M");
        assertThat(shop.err()).contains("not recorded: L0042-001, 12 min on its watch");
    }

    @Test
    void minutesPartsSoakAndNoteMayBeTyped() {
        talk("001", "led led_strips y a so 6+80m p21.50 h8 \"two strips bridged", "q");
        assertThat(shop.err()).contains("\"led\" is no fault");
        talk("L0042-001\tbacklight led_strips y a so 6+80m p21.50 h8 \"two strips bridged", "q");
        assertThat(shop.out())
                .contains("backlight, led_strips, 86 min, passed, grade A, parts 21.50, soaked 8 h")
                .contains("\"two strips bridged\"");
    }

    @Test
    void anImpossibleTurnIsRefusedAndTheTalkGoesOn() {
        shop.run("recycle", "L0042-001", "--on", "2026-03-10");
        talk("L0042-001", "1 . n", "L0042-002", "1 . n", "q");
        assertThat(shop.err())
                .contains("L0042-001 has gone: recycled on 2026-03-10")
                .contains("after the set has gone");
        assertThat(shop.out()).contains("L0042-002 row_drive, contact_mask, failed");
    }
}
