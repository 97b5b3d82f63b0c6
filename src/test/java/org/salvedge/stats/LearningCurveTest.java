package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;
import static org.salvedge.stats.LearningCurve.Theory.CUMULATIVE_AVERAGE;
import static org.salvedge.stats.LearningCurve.Theory.UNIT;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;

class LearningCurveTest {
    /** J. Heizer and B. Render, "Operations Management", module E, table E.3: 80 %, unit and cumulative. */
    @Test
    void eightyPercentByUnit() {
        LearningCurve c = new LearningCurve(UNIT, 100, 0.8);
        assertThat(c.slope()).isCloseTo(-0.3219281, within(5e-8));
        assertThat(LongStream.of(1, 2, 3, 4, 5, 8, 10, 20).mapToDouble(c::unit).toArray())
                .containsExactly(new double[] {100, 80, 70.21, 64, 59.56, 51.2, 47.65, 38.12}, within(5.1e-3));
        assertThat(LongStream.of(2, 3, 4, 5, 10, 20).mapToDouble(c::total).toArray())
                .containsExactly(new double[] {180, 250.21, 314.21, 373.77, 631.54, 1048.49}, within(5.1e-3));
    }

    /** T. P. Wright (1936); the table as in a professional accountancy text: first unit 100 hours, 80 %. */
    @Test
    void eightyPercentByCumulativeAverage() {
        LearningCurve c = new LearningCurve(CUMULATIVE_AVERAGE, 100, 0.8);
        long[] n = {1, 2, 4, 8, 16};
        assertThat(LongStream.of(n).mapToDouble(c::average).toArray())
                .containsExactly(new double[] {100, 80, 64, 51.2, 40.96}, within(1e-9));
        assertThat(LongStream.of(n).mapToDouble(c::total).toArray())
                .containsExactly(new double[] {100, 160, 256, 409.6, 655.36}, within(1e-9));
        double[] batches = {100, 60, 48, 38.4, 30.72};
        for (int i = 1; i < 5; i++) {
            double batch = (c.total(n[i]) - c.total(n[i - 1])) / (n[i] - n[i - 1]);
            assertThat(batch).isCloseTo(batches[i], within(1e-9));
        }
        assertThat(c.unit(3)).isCloseTo(50.63, within(5e-3));
        assertThat(c.unit(4)).isCloseTo(45.37, within(5e-3));
    }

    @Test
    void theTwoTheoriesDifferAtTheSecondUnit() {
        assertThat(new LearningCurve(UNIT, 100, 0.8).unit(2)).isCloseTo(80, within(1e-12));
        assertThat(new LearningCurve(CUMULATIVE_AVERAGE, 100, 0.8).unit(2)).isCloseTo(60, within(1e-12));
    }

    /** B. Boehmke, vignette of the package learningCurve, "Implementing learningCurve": 85 %, unit 125. */
    @Test
    void eightyFivePercentAtUnit125() {
        LearningCurve unit = new LearningCurve(UNIT, 100, 0.85);
        assertThat(unit.unit(125)).isCloseTo(32.23647, within(5e-4));
        assertThat(unit.total(125)).isCloseTo(5201.085, within(5e-4));
        assertThat(unit.total(1_000_000)).isCloseTo(5119612, within(0.5));
        LearningCurve wright = new LearningCurve(CUMULATIVE_AVERAGE, 100, 0.85);
        assertThat(wright.unit(125)).isCloseTo(24.70136, within(5e-4));
        assertThat(wright.total(125)).isCloseTo(4029.559, within(5e-4));
        assertThat(new LearningCurve(UNIT, 1, 0.85).slope()).isCloseTo(-0.2344653, within(5e-8));
        assertThat(new LearningCurve(UNIT, 1, 0.90).slope()).isCloseTo(-0.1520031, within(5e-8));
        assertThat(LearningCurve.through(100, 100, 0.85).unit(125)).isCloseTo(94.903, within(5e-4));
        assertThat(LearningCurve.through(20, 120, 0.92).unit(150)).isCloseTo(94.17084, within(5e-4));
        assertThat(LearningCurve.through(10, 90, 0.87).unit(175)).isCloseTo(50.64078, within(5e-4));
    }

    /** Heizer and Render, table E.3: coefficients at 90 % and 70 %. */
    @Test
    void coefficientsAtNinetyAndSeventyPercent() {
        long[] n = {2, 3, 4, 5, 10, 20};
        LearningCurve ninety = new LearningCurve(UNIT, 1, 0.9);
        assertThat(LongStream.of(n).mapToDouble(ninety::unit).toArray())
                .containsExactly(new double[] {.9000, .8462, .8100, .7830, .7047, .6342}, within(5.1e-5));
        LearningCurve seventy = new LearningCurve(UNIT, 1, 0.7);
        assertThat(LongStream.of(n).mapToDouble(seventy::unit).toArray())
                .containsExactly(new double[] {.7000, .5682, .4900, .4368, .3058, .2141}, within(5.1e-5));
    }

    @Test
    void aFitToACurveWithoutScatterFindsIt() {
        long[] n = LongStream.rangeClosed(1, 30).toArray();
        LearningCurve truth = new LearningCurve(UNIT, 40, 0.83);
        LearningFit fit =
                LearningFit.of(n, LongStream.of(n).mapToDouble(truth::unit).toArray());
        assertThat(fit.curve().first()).isCloseTo(40, within(1e-9));
        assertThat(fit.curve().rate()).isCloseTo(0.83, within(1e-12));
        assertThat(fit.residual()).isLessThan(1e-12);
    }

    /** R 4.2.2: summary(lm(log(c(42, 35, 36, 28, 30, 25)) ~ log(c(1, 2, 3, 5, 8, 13)))). */
    @Test
    void slopeAndErrorAgreeWithLeastSquares() {
        LearningFit fit = LearningFit.of(new long[] {1, 2, 3, 5, 8, 13}, new double[] {42, 35, 36, 28, 30, 25});
        assertThat(fit.intercept()).isCloseTo(3.7269797792, within(1e-7));
        assertThat(fit.slope()).isCloseTo(-0.1905472026, within(1e-7));
        assertThat(fit.se()).isCloseTo(0.0329880286, within(1e-7));
        assertThat(fit.residual()).isCloseTo(0.0691345416, within(1e-7));
    }

    /** 300 noisy curves of 25 units: the 90 % interval holds the rate; standard error of the share 0.017. */
    @Test
    void theIntervalHoldsTheRateAsOftenAsItSays() {
        SplittableRandom random = new SplittableRandom(5);
        long[] n = LongStream.rangeClosed(1, 25).toArray();
        LearningCurve truth = new LearningCurve(UNIT, 60, 0.9);
        int held = 0;
        for (int r = 0; r < 300; r++) {
            double[] effort = Arrays.stream(n)
                    .mapToDouble(i -> truth.unit(i) * Math.exp(0.4 * Normals.quantile(random.nextDouble())))
                    .toArray();
            held += LearningFit.of(n, effort).rateInterval(0.9).contains(0.9) ? 1 : 0;
        }
        assertThat(held / 300.0).isBetween(0.85, 0.95);
    }

    @Test
    void impossibleCurvesAreRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> new LearningCurve(UNIT, 0, 0.8));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LearningFit.of(new long[] {4, 4, 4}, new double[] {1, 2, 3}));
    }
}
