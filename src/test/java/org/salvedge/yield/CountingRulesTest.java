package org.salvedge.yield;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.salvedge.shop.ExitKind.LOST;
import static org.salvedge.shop.ExitKind.RECYCLED;
import static org.salvedge.shop.ExitKind.RETURNED;
import static org.salvedge.shop.ExitKind.SOLD;
import static org.salvedge.shop.ExitKind.STRIPPED;

import java.util.List;
import org.junit.jupiter.api.Test;
import org.salvedge.shop.Grade;
import org.salvedge.shop.History;

/** Each counting rule on a case small enough to count by hand. Labour is 24 an hour: 0.40 a minute. */
class CountingRulesTest {
    private static final double EXACT = 1e-12;

    private static String keys(List<YieldRow> rows) {
        return rows.stream().map(r -> String.join("/", r.keys())).toList().toString();
    }

    private static YieldRow row(List<YieldRow> rows, String... keys) {
        return rows.stream()
                .filter(r -> r.keys().equals(List.of(keys)))
                .findFirst()
                .orElseThrow();
    }

    @Test
    void aSetRowCountsArrivedSetsAndAllTheirAttempts() {
        YieldRow row = new SmallShop()
                .set("a", "KX")
                .attempt("a", 1, "backlight", "reseat_cable", "no", "5", "10")
                .attempt("a", 2, "backlight", "led_strips", "yes", "", "50")
                .set("b", "KX")
                .set("c", "KX", "L1", "0", 55_000_000, 0)
                .only("family");
        assertThat(row.sets()).isEqualTo(2);
        assertThat(row.attempts()).isEqualTo(2);
        assertThat(row.decided()).isEqualTo(1);
        assertThat(row.saved()).isEqualTo(1);
        assertThat(row.inProgress()).isEqualTo(1);
        assertThat(row.gone()).isZero();
        assertThat(row.marginTotal().toString()).isEqualTo("0.00");
        assertThat(row.marginPerSet()).isNaN();
        assertThat(row.minutesPerSaved()).isEqualTo(65);
    }

    @Test
    void returnedAndLostSetsAreInNoYieldButTheirMarginsCount() {
        YieldRow row = new SmallShop()
                .set("a", "KX", "L1", "20.00")
                .exit("a", 3, RETURNED, "15.00", "0", "")
                .set("b", "KX", "L1", "20.00")
                .exit("b", 3, LOST, "0", "0", "")
                .set("c", "KX", "L1", "20.00")
                .exit("c", 3, RECYCLED, "0", "2.00", "5")
                .only("family");
        assertThat(row.decided()).isEqualTo(1);
        assertThat(row.saved()).isZero();
        assertThat(row.inProgress()).isZero();
        assertThat(row.gone()).isEqualTo(3);
        // -5.00, -20.00 and -2.00 - 2.00 - 20.00
        assertThat(row.marginTotal().toString()).isEqualTo("-49.00");
        assertThat(row.marginPerSet()).isCloseTo(-49 / 3.0, within(EXACT));
        assertThat(row.marginPerHour()).isCloseTo(-49 / (5 / 60.0), within(1e-9));
        assertThat(row.minutesPerSaved()).isNaN();
    }

    @Test
    void aSetSoldAsItIsIsDecidedAndNotSaved() {
        YieldRow row = new SmallShop()
                .set("a", "KX")
                .attempt("a", 1, "row_drive", "none", "", "5", "")
                .exit("a", 2, SOLD, "10.00", "0", "")
                .only("");
        assertThat(row.decided()).isEqualTo(1);
        assertThat(row.saved()).isZero();
        assertThat(row.raw()).isZero();
        assertThat(row.firstPassYield()).isNaN();
    }

    @Test
    void aPassBeforeAFailureDoesNotSaveASoldSet() {
        YieldRow row = new SmallShop()
                .set("a", "KX")
                .attempt("a", 1, "row_drive", "contact_mask", "yes", "", "")
                .attempt("a", 2, "row_drive", "contact_mask", "no", "", "")
                .exit("a", 3, SOLD, "10.00", "0", "")
                .only("");
        assertThat(row.saved()).isZero();
        assertThat(row.firstPassYield()).isEqualTo(1);
    }

    @Test
    void anAttemptWithoutRetestFailsWhenAnythingFollowsAndIsPendingElse() {
        List<YieldRow> rows = new SmallShop()
                .set("a", "KX")
                .attempt("a", 1, "row_drive", "contact_mask", "", "", "7")
                .attempt("a", 2, "row_drive", "none", "", "3", "")
                .set("b", "KX")
                .attempt("b", 1, "row_drive", "contact_mask", "", "", "9")
                .exit("b", 1, STRIPPED, "10.00", "0", "")
                .set("c", "KX")
                .attempt("c", 1, "row_drive", "contact_mask", "", "", "11")
                .rows("fix");
        YieldRow mask = row(rows, "contact_mask");
        assertThat(mask.attempts()).isEqualTo(3);
        assertThat(mask.decided()).isEqualTo(2);
        assertThat(mask.inProgress()).isEqualTo(1);
        assertThat(mask.minutesMedian()).isEqualTo(9);
        YieldRow none = row(rows, "none");
        assertThat(none.attempts()).isEqualTo(1);
        assertThat(none.sets()).isEqualTo(1);
        assertThat(none.decided()).isZero();
        assertThat(none.inProgress()).isZero();
        assertThat(none.raw()).isNaN();
        assertThat(none.shrunk()).isNaN();
        assertThat(none.minutesMedian()).isNaN();
    }

    @Test
    void takingsForAPartChangeNoStateButCountInTheMargin() {
        SmallShop bench = new SmallShop()
                .set("a", "KX", "L1", "20.00")
                .attempt("a", 1, "power_board", "power_board_repair", "", "", "30")
                .exit("a", 2, STRIPPED, false, "8.00", "1.00", "5", null);
        YieldRow open = bench.only("");
        assertThat(open.gone()).isZero();
        assertThat(open.inProgress()).isEqualTo(1);
        assertThat(open.marginTotal().toString()).isEqualTo("0.00");
        YieldRow gone = new SmallShop()
                .set("a", "KX", "L1", "20.00")
                .attempt("a", 1, "power_board", "power_board_repair", "", "", "30")
                .exit("a", 2, STRIPPED, false, "8.00", "1.00", "5", null)
                .exit("a", 4, STRIPPED, "12.00", "0", "")
                .only("");
        // 8.00 - 1.00 + 12.00 - 35 x 0.40 - 20.00
        assertThat(gone.marginTotal().toString()).isEqualTo("-15.00");
    }

    @Test
    void aComebackThatTheBuyerKeepsLeavesTheSetSavedAndCostsMoney() {
        YieldRow row = new SmallShop()
                .set("a", "KX", "L1", "20.00")
                .attempt("a", 1, "backlight", "led_strips", "yes", "", "50", "12.00", "Ines", Grade.A)
                .exit("a", 5, SOLD, "120.00", "15.00", "10")
                .comeback("a", 20, "30.00", false)
                .only("");
        assertThat(row.saved()).isEqualTo(1);
        assertThat(row.gone()).isEqualTo(1);
        // 120.00 - 15.00 - 12.00 - 30.00 - 60 x 0.40 - 20.00
        assertThat(row.marginTotal().toString()).isEqualTo("19.00");
        assertThat(row.marginPerHour()).isCloseTo(19, within(EXACT));
        assertThat(row.minutesPerSaved()).isEqualTo(60);
    }

    @Test
    void aRestockedComebackOpensTheSetAgainAndTheNextExitDecides() {
        SmallShop back = new SmallShop()
                .set("a", "KX", "L1", "20.00")
                .attempt("a", 1, "backlight", "led_strips", "yes", "", "50")
                .exit("a", 5, SOLD, "120.00", "0", "")
                .comeback("a", 20, "120.00", true);
        YieldRow open = back.only("");
        assertThat(open.decided()).isZero();
        assertThat(open.inProgress()).isEqualTo(1);
        assertThat(open.gone()).isZero();
        YieldRow stripped = new SmallShop()
                .set("a", "KX", "L1", "20.00")
                .attempt("a", 1, "backlight", "led_strips", "yes", "", "50")
                .exit("a", 5, SOLD, "120.00", "0", "")
                .comeback("a", 20, "120.00", true)
                .exit("a", 20, STRIPPED, "9.00", "0", "")
                .only("");
        assertThat(stripped.decided()).isEqualTo(1);
        assertThat(stripped.saved()).isZero();
        // 120.00 + 9.00 - 120.00 - 50 x 0.40 - 20.00
        assertThat(stripped.marginTotal().toString()).isEqualTo("-31.00");
    }

    @Test
    void marginsFallToTheDecidingAttempt() {
        List<YieldRow> rows = new SmallShop()
                .set("a", "KX", "L1", "1.00")
                .attempt("a", 1, "backlight", "reseat_cable", "no", "", "")
                .attempt("a", 2, "backlight", "led_strips", "no", "", "")
                .attempt("a", 3, "panel_broken", "none", "", "", "")
                .exit("a", 4, STRIPPED, "11.00", "0", "")
                .set("b", "KX", "L1", "1.00")
                .attempt("b", 1, "panel_broken", "none", "", "", "")
                .attempt("b", 2, "unknown", "none", "", "", "")
                .exit("b", 4, STRIPPED, "21.00", "0", "")
                .set("c", "KX", "L1", "1.00")
                .exit("c", 4, STRIPPED, "31.00", "0", "")
                .rows("fault,fix");
        assertThat(keys(rows))
                .isEqualTo("[/, backlight/led_strips, backlight/reseat_cable, panel_broken/none, unknown/none]");
        assertThat(row(rows, "backlight", "led_strips").marginTotal().toString())
                .isEqualTo("10.00");
        assertThat(row(rows, "backlight", "led_strips").gone()).isEqualTo(1);
        assertThat(row(rows, "unknown", "none").marginTotal().toString()).isEqualTo("20.00");
        YieldRow none = row(rows, "", "");
        assertThat(none.marginTotal().toString()).isEqualTo("30.00");
        assertThat(none.sets()).isZero();
        assertThat(none.gone()).isEqualTo(1);
    }

    @Test
    void anAttemptRowCountsMinutesOfPassesAndFailsOnly() {
        YieldRow row = new SmallShop()
                .set("a", "KX")
                .attempt("a", 1, "backlight", "led_strips", "no", "5", "40")
                .attempt("a", 2, "backlight", "led_strips", "yes", "1", "20")
                .set("b", "KX")
                .attempt("b", 1, "backlight", "led_strips", "", "100", "100")
                .exit("a", 9, SOLD, "10.00", "0", "30")
                .only("fix");
        assertThat(row.minutesPerSaved()).isEqualTo(66);
        assertThat(row.minutesMedian()).isEqualTo(40);
        assertThat(row.minutesP90()).isCloseTo(40 + 0.8 * 60, within(EXACT));
        assertThat(row.firstPassYield()).isZero();
        assertThat(row.raw()).isEqualTo(0.5);
    }

    @Test
    void minutesThatAreNotKnownAreLeftOutOfMediansAndZeroInSums() {
        YieldRow row = new SmallShop()
                .set("a", "KX")
                .attempt("a", 1, "backlight", "led_strips", "yes", "4", "")
                .set("b", "KX")
                .attempt("b", 1, "backlight", "led_strips", "yes", "", "0")
                .set("c", "KX")
                .attempt("c", 1, "backlight", "led_strips", "yes", "", "10")
                .only("family");
        assertThat(row.minutesMedian()).isEqualTo(5);
        assertThat(row.minutesPerSaved()).isCloseTo(14 / 3.0, within(EXACT));
    }

    @Test
    void aSetStandsUnderTheMonthItWasDecidedInAndItsMarginUnderThatOfItsExit() {
        List<YieldRow> rows = new SmallShop()
                .set("saved", "KX", "L1", "10.00")
                .attempt("saved", 10, "backlight", "led_strips", "yes", "", "30")
                .exit("saved", 40, SOLD, "100.00", "0", "")
                .set("stripped", "KX", "L1", "10.00")
                .attempt("stripped", 10, "backlight", "led_strips", "no", "", "60")
                .exit("stripped", 70, STRIPPED, "10.00", "0", "")
                .set("open", "KX", "L1", "10.00")
                .set("lost", "KX", "L1", "10.00")
                .exit("lost", 45, LOST, "0", "0", "")
                .rows("month");
        assertThat(keys(rows)).isEqualTo("[, 2026-01, 2026-02, 2026-03]");
        assertThat(row(rows, "").sets()).isEqualTo(2);
        assertThat(row(rows, "").inProgress()).isEqualTo(1);
        assertThat(row(rows, "").gone()).isZero();
        YieldRow january = row(rows, "2026-01");
        assertThat(january.saved()).isEqualTo(1);
        assertThat(january.gone()).isZero();
        assertThat(january.minutesMedian()).isEqualTo(30);
        YieldRow february = row(rows, "2026-02");
        assertThat(february.sets()).isZero();
        assertThat(february.gone()).isEqualTo(2);
        // 100.00 - 12.00 - 10.00 and -10.00
        assertThat(february.marginTotal().toString()).isEqualTo("68.00");
        assertThat(row(rows, "2026-03").decided()).isEqualTo(1);
        assertThat(row(rows, "2026-03").saved()).isZero();
        assertThat(row(rows, "2026-03").marginTotal().toString()).isEqualTo("-24.00");
    }

    @Test
    void theGradeIsThatOfTheExitElseOfTheLatestPass() {
        List<YieldRow> rows = new SmallShop()
                .set("a", "KX")
                .attempt("a", 1, "backlight", "led_strips", "yes", "", "", "0", "Ines", Grade.A)
                .exit("a", 2, SOLD, true, "10.00", "0", "", Grade.B)
                .set("b", "KX")
                .attempt("b", 1, "backlight", "led_strips", "yes", "", "", "0", "Ines", Grade.B)
                .attempt("b", 2, "backlight", "led_strips", "yes", "", "", "0", "Ines", Grade.C)
                .set("c", "KX")
                .rows("grade");
        assertThat(keys(rows)).isEqualTo("[, B, C]");
    }

    @Test
    void inchesAreWholeHalfUpAndRowsAreInOrderOfCodePoints() {
        List<YieldRow> rows = new SmallShop()
                .set("a", "KX", "L1", "0", 54_500_000, History.ARRIVED)
                .set("b", "KX", "L1", "0", 54_499_999, History.ARRIVED)
                .set("c", "KX", "L1", "0", 100_000_000, History.ARRIVED)
                .set("d", "KX", "L1", "0", -1, History.ARRIVED)
                .rows("inches");
        assertThat(keys(rows)).isEqualTo("[, 100, 54, 55]");
    }

    @Test
    void familiesAreOrderedByCodePointsNotByUtf16() {
        List<YieldRow> rows = new SmallShop()
                .set("a", "\uff5e")
                .set("b", "\ud83d\ude00")
                .set("c", "b")
                .set("d", "A")
                .rows("family");
        assertThat(keys(rows)).isEqualTo("[A, b, \uff5e, \ud83d\ude00]");
    }

    @Test
    void anUnknownTechnicianIsTheEmptyKey() {
        List<YieldRow> rows = new SmallShop()
                .set("a", "KX")
                .attempt("a", 1, "backlight", "led_strips", "yes", "", "", "0", "", null)
                .set("b", "KX")
                .exit("b", 4, STRIPPED, "31.00", "0", "")
                .rows("technician");
        assertThat(keys(rows)).isEqualTo("[]");
        assertThat(rows.get(0).sets()).isEqualTo(1);
        assertThat(rows.get(0).gone()).isEqualTo(1);
    }

    @Test
    void anEmptyShopHasNoRows() {
        assertThat(new SmallShop().rows("family,fault,fix")).isEmpty();
        assertThat(new SmallShop().rows("")).isEmpty();
    }
}
