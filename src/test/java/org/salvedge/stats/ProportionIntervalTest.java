package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.salvedge.stats.ProportionInterval.CLOPPER_PEARSON;
import static org.salvedge.stats.ProportionInterval.JEFFREYS;
import static org.salvedge.stats.ProportionInterval.JEFFREYS_MODIFIED;
import static org.salvedge.stats.ProportionInterval.MID_P;
import static org.salvedge.stats.ProportionInterval.WILSON;
import static org.salvedge.stats.ProportionInterval.WILSON_CORRECTED;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.EnumSource;

class ProportionIntervalTest {
    /** R. G. Newcombe, Statistics in Medicine 17 (1998) 857-872, table I. */
    @ParameterizedTest(name = "{0} of {1} in {2}")
    @CsvSource({
        "WILSON, 81, 263, 0.2553, 0.3662",
        "CLOPPER_PEARSON, 81, 263, 0.2527, 0.3676",
        "WILSON_CORRECTED, 81, 263, 0.2535, 0.3682",
        "MID_P, 81, 263, 0.2544, 0.3658",
        "WILSON, 0, 20, 0, 0.1611",
        "CLOPPER_PEARSON, 0, 20, 0, 0.1684",
        "MID_P, 0, 20, 0, 0.1391",
        "WILSON_CORRECTED, 0, 20, 0, 0.2005",
        "WILSON, 20, 20, 0.8389, 1",
        "CLOPPER_PEARSON, 20, 20, 0.8316, 1",
        "MID_P, 20, 20, 0.8609, 1",
        "WILSON_CORRECTED, 20, 20, 0.7995, 1",
    })
    void agreesWithNewcombe1998(ProportionInterval method, int x, int n, double low, double high) {
        expect(method.of(x, n, 0.95), low, high, 5.01e-5);
    }

    /** R 4.2.2: qnorm, qbeta and uniroot on Newcombe's formulas, seven digits. */
    @Test
    void agreesWithMoreDigitsByR() {
        assertThat(WILSON.of(0, 20, 0.95).high()).isCloseTo(0.1611252, within(5e-7));
        assertThat(CLOPPER_PEARSON.of(0, 20, 0.95).high()).isCloseTo(0.1684335, within(5e-7));
        assertThat(MID_P.of(81, 263, 0.95).high()).isCloseTo(0.365773, within(5e-7));
        expect(JEFFREYS.of(81, 263, 0.95), 0.254522, 0.365647, 5e-7);
    }

    @ParameterizedTest
    @EnumSource
    void noSuccessEndsAtExactly0AndAllAtExactly1(ProportionInterval method) {
        for (int n : new int[] {1, 2, 7, 20, 1_000_000}) {
            assertThat(method.of(0, n, 0.95).low()).isEqualTo(0.0);
            assertThat(method.of(n, n, 0.95).high()).isEqualTo(1.0);
        }
    }

    /** NIST/SEMATECH e-Handbook of Statistical Methods, section 7.2.4.2: 4 of 20, 90 %. */
    @Test
    void agreesWithTheHandbooksSmallSample() {
        expect(CLOPPER_PEARSON.of(4, 20, 0.90), 0.071354, 0.401028, 1.5e-6);
    }

    /** L. D. Brown, T. T. Cai, A. DasGupta, Statistical Science 16 (2001) 101-133, table 5. */
    @ParameterizedTest(name = "{0} of {1}")
    @CsvSource({
        "1, 10, 0, 0.381, 5e-4",
        "2, 10, 0.044, 0.503, 5e-4",
        "3, 10, 0.093, 0.606, 5e-4",
        "4, 10, 0.153, 0.696, 5e-4",
        "2, 7, 0.065, 0.648, 1e-3",
        "3, 7, 0.139, 0.765, 1e-3",
        "1, 8, 0, 0.454, 5e-4",
        "2, 8, 0.056, 0.592, 5e-4",
        "3, 8, 0.119, 0.705, 5e-4",
        "4, 8, 0.199, 0.801, 5e-4",
        "2, 12, 0.036, 0.436, 5e-4",
        "3, 12, 0.076, 0.529, 5e-4",
    })
    void modifiedJeffreysAgreesWithBrownCaiDasGupta2001(int x, int n, double low, double high, double tolerance) {
        expect(JEFFREYS_MODIFIED.of(x, n, 0.95), low, high, tolerance);
        expect(JEFFREYS_MODIFIED.of(n - x, n, 0.95), 1 - high, 1 - low, tolerance);
    }

    /** The formulas of the same paper (plain and modified), by R's qbeta. */
    @Test
    void plainJeffreysDiffersFromModifiedAtTheEnds() {
        assertThat(JEFFREYS.of(1, 10, 0.95).low()).isCloseTo(0.011, within(5e-4));
        assertThat(JEFFREYS.of(1, 8, 0.95).low()).isCloseTo(0.014, within(5e-4));
        assertThat(JEFFREYS.of(0, 10, 0.95).high()).isCloseTo(0.2172, within(5e-5));
        assertThat(JEFFREYS_MODIFIED.of(0, 10, 0.95).high()).isCloseTo(0.3085, within(5e-5));
    }

    /** R. Lowry, VassarStats, "The confidence interval of a proportion": its example 23 of 60. */
    @Test
    void agreesOnTheWorkedInput23Of60() {
        expect(WILSON.of(23, 60, 0.95), 0.2709, 0.5098, 5e-5);
        expect(WILSON_CORRECTED.of(23, 60, 0.95), 0.2635, 0.5181, 5e-5);
    }

    /** Brown, Cai, DasGupta (2001), formulas of section 3, by R's qnorm and qbeta. */
    @Test
    void agreesOn10Of100() {
        expect(WILSON.of(10, 100, 0.95), 0.0552, 0.1744, 5.1e-5);
        expect(CLOPPER_PEARSON.of(10, 100, 0.95), 0.0490, 0.1762, 5.1e-5);
        expect(JEFFREYS.of(10, 100, 0.95), 0.0526, 0.1701, 5.1e-5);
    }

    @Test
    void jeffreysLiesWithinClopperPearsonAndAllHoldTheProportion() {
        for (int n : new int[] {2, 5, 17, 60, 250}) {
            for (int x = 1; x < n; x++) {
                Interval exact = CLOPPER_PEARSON.of(x, n, 0.95);
                Interval jeffreys = JEFFREYS.of(x, n, 0.95);
                assertThat(jeffreys.low()).isGreaterThan(exact.low());
                assertThat(jeffreys.high()).isLessThan(exact.high());
                for (ProportionInterval method : ProportionInterval.values()) {
                    assertThat(method.of(x, n, 0.8).contains((double) x / n)).isTrue();
                }
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void successesAndFailuresMirrorEachOther(ProportionInterval method) {
        for (int x = 0; x <= 13; x++) {
            Interval one = method.of(x, 13, 0.9);
            expect(method.of(13 - x, 13, 0.9), 1 - one.high(), 1 - one.low(), 1e-12);
        }
    }

    @Test
    void impossibleCountsAreRefusedWithTheirValues() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> WILSON.of(5, 4, 0.95))
                .withMessage("5 successes in 4 trials");
        assertThatIllegalArgumentException().isThrownBy(() -> WILSON.of(0, 0, 0.95));
        assertThatIllegalArgumentException().isThrownBy(() -> WILSON.of(1, 4, 1));
    }

    private static void expect(Interval found, double low, double high, double tolerance) {
        assertThat(found.low()).isCloseTo(low, within(tolerance));
        assertThat(found.high()).isCloseTo(high, within(tolerance));
    }
}
