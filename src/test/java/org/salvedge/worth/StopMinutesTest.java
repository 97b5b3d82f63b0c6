package org.salvedge.worth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.time.LocalDate;
import java.time.ZoneOffset;
import java.util.Currency;
import org.junit.jupiter.api.Test;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.History;
import org.salvedge.shop.HistoryBuilder;
import org.salvedge.shop.Settings;

/** When to give up, out of a record made by hand. */
class StopMinutesTest {
    private static final Currency EUR = Currency.getInstance("EUR");
    private static final LocalDate DAY = LocalDate.of(2026, 3, 14);
    private static final int BOUGHT = (int) DAY.toEpochDay() - 100;
    private static final long MICROS = 1_000_000;
    /** Of a hundred sets with row_drive: passed at minute 10, 20 and 40, given up at 30 and at 60. */
    private static final int[][] TURNS = {{10, 30}, {20, 20}, {40, 5}, {-30, 10}, {-60, 35}};

    private final HistoryBuilder b = History.builder(EUR);
    private int sets;

    private void set(String family, String fault, int minutes) {
        int day = BOUGHT + 5;
        int s = sets++;
        b.set(
                s,
                0,
                b.families().number(family),
                b.makers().number("Kestrel"),
                b.models().number(family + "A"),
                b.claims().number("untested"),
                55 * MICROS,
                -1,
                -1,
                -1,
                History.ARRIVED | History.ON_MANIFEST,
                -1,
                0);
        b.label("L1-" + (1000 + s));
        boolean passed = minutes > 0;
        int fix = b.fixes().number("contact_mask");
        b.attempt(
                s,
                day,
                s,
                s + 1,
                b.faults().number(fault),
                fix,
                -1,
                passed ? 1 : 0,
                -1,
                0,
                Math.abs(minutes) * MICROS,
                0);
        ExitKind kind = passed ? ExitKind.SOLD : ExitKind.STRIPPED;
        b.exit(s, day + 1, 1, kind.ordinal(), 1, passed ? 120_00 : 20_00, 0, 0, -1, -1);
    }

    private StopMinutes stops() {
        b.lot("L1", b.suppliers().number("Northquay"), BOUGHT, BOUGHT, 100_00, 0);
        for (int repeat = 0; repeat < 20; repeat++) {
            for (int[] turn : TURNS) {
                for (int i = 0; i < turn[1]; i++) {
                    set("KX", "row_drive", turn[0]);
                }
            }
        }
        for (int i = 0; i < 50; i++) {
            set("KX", "panel_broken", -5);
        }
        set("VS", "row_drive", 10);
        b.fixes().number("none");
        return StopMinutes.of(b.build(), DAY, Settings.defaults(EUR, ZoneOffset.UTC));
    }

    /**
     * Every minute tried, with give-ups that would never have been saved: gain x share passed by then - cost x mean minutes until then.
     * At 100 for a saved set and 2 a minute: 10: 30 - 20 = 10; 20: 50 - (10 + 7) x 2 = 16; 40: 55 - (17 + 10) x 2 = 1.
     */
    @Test
    void theMinuteIsTheBestOfAllThatCanBeTried() {
        StopMinutes stops = stops();
        assertThat(stops.gainIfSaved("KX")).isCloseTo(100, within(3.0));
        double best = 0;
        int at = 0;
        for (int t = 1; t <= 60; t++) {
            double passed = 0;
            double minutes = 0;
            for (int[] turn : TURNS) {
                passed += turn[0] > 0 && turn[0] <= t ? turn[1] / 100.0 : 0;
                minutes += turn[1] / 100.0 * (turn[0] > 0 ? Math.min(turn[0], t) : t);
            }
            double net = stops.gainIfSaved("KX") * passed - 2 * minutes;
            if (net > best) {
                best = net;
                at = t;
            }
        }
        StopMinutes.Stop stop = stops.stop("KX", "row_drive", "contact_mask", 0, 2);
        assertThat(at).isEqualTo(20);
        assertThat(stop.low()).isEqualTo(at);
        assertThat(stop.minute()).isEqualTo(at);
        assertThat(stop.gain()).isCloseTo(best, within(1.0));
        assertThat(stop.sets()).isEqualTo(2000);
    }

    /** Censored at 30 and 60, those that are left at 40 are fewer, and the late passes weigh more. */
    @Test
    void theBandStandsBetweenGiveUpsThatSayNothingAndGiveUpsThatSayAll() {
        StopMinutes.Stop stop = stops().stop("KX", "row_drive", null, 0, 0.4);
        assertThat(stop.low()).isLessThanOrEqualTo(stop.minute());
        assertThat(stop.high()).isGreaterThanOrEqualTo(stop.minute());
        assertThat(stop.high()).isGreaterThanOrEqualTo(40);
    }

    @Test
    void dearerMinutesStopEarlierAndBrokenGlassIsNotBegun() {
        StopMinutes stops = stops();
        int before = Integer.MAX_VALUE;
        for (double cost : new double[] {0.01, 0.5, 1, 2, 4, 20}) {
            int minute = stops.stop("KX", "row_drive", "contact_mask", 0, cost).minute();
            assertThat(minute).isLessThanOrEqualTo(before);
            before = minute;
        }
        assertThat(before).isZero();
        assertThat(stops.stop("KX", "panel_broken", null).minute()).isZero();
    }

    @Test
    void aFamilyWithOneSetTakesTheShopsCurve() {
        StopMinutes stops = stops();
        StopMinutes.Stop stop = stops.stop("VS", "row_drive", "contact_mask");
        assertThat(stop.sets()).isEqualTo(1);
        assertThat(stop.others()).isEqualTo(2000);
        assertThat(stop.chance())
                .isCloseTo(stops.stop("KX", "row_drive", "contact_mask").chance(), within(0.1));
    }

    @Test
    void whatTheRecordDoesNotHoldIsAssumed() {
        StopMinutes.Stop stop = stops().stop("nobody", "power_board", null);
        assertThat(stop.assumed()).isTrue();
        assertThat(stop.minute()).isPositive();
        assertThat(stops().stop("nobody", "own_word", null).assumed()).isTrue();
    }
}
