package org.salvedge.yield;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.math.BigDecimal;
import java.time.YearMonth;
import java.util.Currency;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.History;
import org.salvedge.shop.HistoryBuilder;

/** Four suppliers, a lot each a month, every set claimed to have lines; broken glass is what cannot be mended. */
class CausesTest {
    private static final YearMonth MONTH = YearMonth.of(2026, 2);
    private static final int MONTHS = 13;
    private static final int SUPPLIERS = 4;
    private static final int SETS = 40;
    private static final int SHOPS = 40;
    private static final double USUALLY_BROKEN = 0.1;

    @Test
    void moreBrokenGlassFromAllSuppliersIsTheMixAndHardlyEverOneOfThem() {
        int mix = 0;
        int besides = 0;
        for (int seed = 1; seed <= SHOPS; seed++) {
            List<Cause> causes = causes(seed, .3, .3, .3, .3);
            Cause first = causes.get(0);
            mix += first.kind() == Cause.Kind.MIX && !first.up() && first.standsOut() ? 1 : 0;
            besides += standsOut(causes, Cause.Kind.SUPPLIER);
        }
        assertThat(mix).isGreaterThanOrEqualTo(SHOPS * 9 / 10);
        assertThat(besides).as("a supplier, set against the others").isLessThanOrEqualTo(SHOPS / 10);
    }

    @Test
    void moreBrokenGlassFromOneSupplierIsThatSupplierAndHardlyEverTheMix() {
        int supplier = 0;
        int besides = 0;
        for (int seed = 1; seed <= SHOPS; seed++) {
            List<Cause> causes = causes(seed, USUALLY_BROKEN, .5, USUALLY_BROKEN, USUALLY_BROKEN);
            Cause first = causes.get(0);
            supplier += first.kind() == Cause.Kind.SUPPLIER && first.what().equals("S1") && !first.up() ? 1 : 0;
            besides += standsOut(causes, Cause.Kind.MIX);
        }
        assertThat(supplier).isGreaterThanOrEqualTo(SHOPS * 9 / 10);
        assertThat(besides).as("what is left without that supplier").isLessThanOrEqualTo(SHOPS / 10);
    }

    private static int standsOut(List<Cause> causes, Cause.Kind kind) {
        return causes.stream().anyMatch(c -> c.kind() == kind && c.standsOut()) ? 1 : 0;
    }

    @ParameterizedTest
    @ValueSource(longs = {4, 5, 6, 7, 8})
    void causesStandByChanceTimesHowManyThereAreOfTheirKind(long seed) {
        List<Cause> causes = causes(seed, .1, .15, .2, .1);
        Map<Cause.Kind, Integer> many = new EnumMap<>(Cause.Kind.class);
        causes.forEach(c -> many.merge(c.kind(), 1, Integer::sum));
        assertThat(many).containsEntry(Cause.Kind.SUPPLIER, SUPPLIERS);
        double[] weighted = causes.stream()
                .mapToDouble(c -> c.p() * many.getOrDefault(c.kind(), 0))
                .toArray();
        assertThat(weighted).isSorted();
        assertThat(causes.get(0).adjusted())
                .as("each kind and each of the two charts weighs alike")
                .isCloseTo(Math.min(1, (many.size() + 2) * weighted[0]), within(1e-12));
    }

    /** @param broken share of broken glass in the last month, by supplier */
    private static List<Cause> causes(long seed, double... broken) {
        SplittableRandom random = new SplittableRandom(seed);
        HistoryBuilder history = History.builder(Currency.getInstance("EUR"));
        int set = 0;
        for (int m = 0; m < MONTHS; m++) {
            int first = (int) MONTH.minusMonths(MONTHS - 1L - m).atDay(1).toEpochDay();
            for (int s = 0; s < SUPPLIERS; s++) {
                int lot = m * SUPPLIERS + s;
                history.lot("L" + lot, history.suppliers().number("S" + s), first, first + 1, 100_000, -1);
                for (int i = 0; i < SETS; i++) {
                    boolean glass = random.nextDouble() < (m == MONTHS - 1 ? broken[s] : USUALLY_BROKEN);
                    set(history, set++, lot, first + 2 + i / 2, glass, random);
                }
            }
        }
        return Causes.of(Outcomes.of(history.build(), new BigDecimal("22")), MONTH);
    }

    private static void set(HistoryBuilder history, int set, int lot, int day, boolean glass, SplittableRandom random) {
        boolean lines = random.nextDouble() < .7;
        boolean passed = !glass && random.nextDouble() < (lines ? .7 : .8);
        history.set(
                set,
                lot,
                history.families().number("F"),
                history.makers().number("Kestrel"),
                history.models().number("F-1"),
                history.claims().number("horizontal_lines"),
                -1,
                -1,
                -1,
                -1,
                History.ARRIVED | History.ON_MANIFEST,
                -1,
                2_000);
        history.attempt(
                set,
                day,
                30_000 + set % 20_000,
                set + 1,
                history.faults().number(glass ? "panel_broken" : lines ? "row_drive" : "backlight"),
                history.fixes().number(glass ? "none" : lines ? "contact_mask" : "led_strips"),
                -1,
                passed ? 1 : 0,
                passed ? 0 : -1,
                8_000_000,
                glass ? -1 : 30_000_000,
                100);
        if (!passed) {
            history.exit(set, day, 1, ExitKind.STRIPPED.ordinal(), 1, 1_000, 200, 10_000_000, -1, -1);
        }
    }
}
