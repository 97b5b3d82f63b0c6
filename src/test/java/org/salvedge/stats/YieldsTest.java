package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class YieldsTest {
    /** T. Pyzdek, "The Six Sigma Project Planner" (2003), p. 241, table 24: rolled yield of four steps, units to start for 1000. */
    @Test
    void rolledYieldFromDefectsPerMillion() {
        double[] steps = Arrays.stream(new double[] {5000, 15000, 1000, 50})
                .map(Yields::ofDpmo)
                .toArray();
        assertThat(Yields.rolled(steps)).isCloseTo(0.979, within(5e-4)).isCloseTo(0.97904597, within(1e-8));
        assertThat(1000 / Yields.rolled(steps)).isCloseTo(1021.40, within(5e-3));
        assertThat(Math.ceil(1000 / Yields.rolled(steps))).isEqualTo(1022);
    }

    /** Minitab Support, "What are throughput yield (YTP) and rolled throughput yield (YRT)?": 1000, 950, 800, 700 units. */
    @Test
    void rolledYieldMultipliesUnroundedSteps() {
        double[] steps = {950.0 / 1000, 800.0 / 950, 700.0 / 800};
        assertThat(steps).containsExactly(new double[] {0.95, 0.8421, 0.875}, within(5e-5));
        assertThat(Yields.rolled(steps)).isCloseTo(0.70, within(1e-12));
    }

    /** D. C. Montgomery, "Introduction to Statistical Quality Control", 6th ed. (2009), section 1.2: a product of 100 parts. */
    @Test
    void aHundredPartsMultiplyTheirChances() {
        double[] parts = new double[100];
        Arrays.fill(parts, 0.9973);
        assertThat(Yields.rolled(parts)).isCloseTo(0.7631, within(5e-5));
        Arrays.fill(parts, 0.999998);
        assertThat(Yields.rolled(parts)).isCloseTo(0.9998, within(5e-5));
    }

    /** The convention of a shift of 1.5 sigma, as tabulated in Pyzdek and Keller, "The Six Sigma Handbook". */
    @ParameterizedTest(name = "{0} sigma")
    @CsvSource({"1, 691462, 0.5", "2, 308538, 0.5", "3, 66807, 0.5", "4, 6210, 0.5", "5, 232.6, 0.05", "6, 3.4, 0.05"})
    void defectsPerMillionAtASigmaLevel(double sigma, double dpmo, double tolerance) {
        assertThat(Yields.dpmoAtSigma(sigma)).isCloseTo(dpmo, within(tolerance));
    }

    /** CodeProject article 404751, "Process Performance Determination in C#, Part 3": 40000 pencils, 6 opportunities each. */
    @Test
    void defectsOfPencils() {
        int defects = 36 + 118 + 11;
        assertThat(Yields.dpmo(defects, 40_000, 6)).isCloseTo(687.5, within(1e-9));
        assertThat(Yields.ofDpmo(Yields.dpmo(defects, 40_000, 6))).isCloseTo(0.9993125, within(1e-12));
        assertThat(Yields.ofDefectsPerUnit(defects / 40_000.0)).isCloseTo(0.995883, within(5e-7));
    }

    /** Wikipedia, "First-pass yield", worked example: in, out and reworked of four steps. */
    @Test
    void reworkCountsAgainstTheFirstPass() {
        int[][] steps = {{100, 90, 5}, {90, 80, 10}, {80, 75, 3}, {75, 70, 2}};
        double[] plain =
                Arrays.stream(steps).mapToDouble(s -> s[1] / (double) s[0]).toArray();
        double[] first = Arrays.stream(steps)
                .mapToDouble(s -> (s[1] - s[2]) / (double) s[0])
                .toArray();
        assertThat(plain).containsExactly(new double[] {0.9000, 0.8889, 0.9375, 0.9333}, within(5e-5));
        assertThat(Yields.rolled(plain)).isCloseTo(0.70, within(1e-12));
        assertThat(first).containsExactly(new double[] {0.8500, 0.7778, 0.9000, 0.9067}, within(5e-5));
        assertThat(Yields.rolled(first)).isCloseTo(0.5395, within(5e-5));
    }

    /** International Society of Six Sigma Professionals, "First Time Yield and Rolled Throughput Yield". */
    @Test
    void yieldsOfAChainCancel() {
        assertThat(Yields.rolled(95.0 / 100, 85.0 / 95, 80.0 / 85)).isCloseTo(0.80, within(1e-12));
        assertThat(Yields.rolled((100 - 10 - 5) / 100.0)).isCloseTo(0.85, within(1e-12));
    }

    @Test
    void aYieldAboveOneIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Yields.rolled(0.9, 1.1))
                .withMessageContaining("1.1");
    }
}
