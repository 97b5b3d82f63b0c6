package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.apache.commons.statistics.descriptive.Quantile;
import org.apache.commons.statistics.descriptive.Quantile.EstimationMethod;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class QuantilesTest {
    /** NIST/SEMATECH e-Handbook, section 7.2.6.2: twelve gauge measurements. */
    private static final double[] GAUGE = {
        95.1772, 95.1567, 95.1937, 95.1959, 95.1442, 95.0610, 95.1591, 95.1195, 95.1065, 95.0925, 95.1990, 95.1682
    };

    /** Wikipedia, "Quartile", example 1. */
    private static final double[] ELEVEN = {6, 7, 15, 36, 39, 40, 41, 42, 43, 47, 49};

    /** The spreadsheet's 90th percentile of the gauge data, R 4.2.2 quantile(type = 7). */
    @Test
    void ninetiethPercentileOfTheGauge() {
        assertThat(Quantiles.of(GAUGE, 0.90)).isCloseTo(95.1957, within(5.1e-5)).isCloseTo(95.19568, within(5.1e-6));
    }

    /**
     * The library's other definitions, so that none is mistaken for type 7: type 6 is the handbook's, 95.1981; the others by R
     * 4.2.2 quantile(type = k).
     */
    @ParameterizedTest(name = "{0}")
    @CsvSource({"HF6, 95.19807", "HF1, 95.1959", "HF4, 95.19546", "HF5, 95.19683", "HF8, 95.19724", "HF9, 95.19714"})
    void otherDefinitionsDiffer(EstimationMethod method, double expected) {
        double found = Quantile.withDefaults().with(method).evaluate(GAUGE, 0.90);
        assertThat(found).isCloseTo(expected, within(5.1e-6));
        assertThat(found).isNotCloseTo(Quantiles.of(GAUGE, 0.90), within(5e-5));
    }

    @Test
    void quartilesOfElevenValues() {
        assertThat(Quantiles.of(ELEVEN, 0.25, 0.5, 0.75)).containsExactly(new double[] {25.5, 40, 42.5}, within(1e-12));
        Quantile type6 = Quantile.withDefaults().with(EstimationMethod.HF6);
        assertThat(type6.evaluate(ELEVEN, 0.25, 0.5, 0.75)).containsExactly(new double[] {15, 40, 43}, within(1e-12));
        Quantile type5 = Quantile.withDefaults().with(EstimationMethod.HF5);
        assertThat(type5.evaluate(ELEVEN, 0.25, 0.5, 0.75))
                .containsExactly(new double[] {20.25, 40, 42.75}, within(1e-12));
    }

    /** NIST StRD Lottery, by R 4.2.2 quantile(type = 7). */
    @Test
    void quantilesOfTheLottery() {
        double[] y = Published.table("strd_lottery").numbers("y");
        assertThat(Quantiles.of(y, 0.1, 0.25, 0.5, 0.75, 0.9))
                .containsExactly(new double[] {106.8, 272.75, 522.5, 779.25, 909.2}, within(1e-9));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void slicesGiveTheQuantilesOfTheirCopiesAndTouchNothingElse(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] values = random.doubles(1 + random.nextInt(60)).toArray();
        int from = random.nextInt(values.length);
        int to = from + 1 + random.nextInt(values.length - from);
        double p = random.nextDouble();
        double[] slice = Arrays.copyOfRange(values, from, to);
        double expected = Quantiles.of(slice, p);
        double[] work = values.clone();
        assertThat(Quantiles.reordering(work, from, to, p)[0]).isEqualTo(expected);
        assertThat(Arrays.copyOf(work, from)).isEqualTo(Arrays.copyOf(values, from));
        assertThat(Arrays.copyOfRange(work, to, work.length)).isEqualTo(Arrays.copyOfRange(values, to, values.length));
        Arrays.sort(slice);
        assertThat(Arrays.stream(work, from, to).sorted().toArray()).isEqualTo(slice);
        Arrays.sort(values, from, to);
        double sorted = Quantiles.ofSorted(values, from, to, p);
        assertThat(sorted).isCloseTo(expected, within(1e-15));
    }

    @Test
    void wholeNumbersAndEmptySlices() {
        int[] minutes = {90, 10, 20, 30, 40, 5};
        assertThat(Quantiles.reordering(minutes, 1, 5, 0.5, 0.9)).containsExactly(new double[] {25, 37}, within(1e-12));
        assertThat(Quantiles.reordering(minutes, 2, 2, 0.5)[0]).isNaN();
        assertThat(Quantiles.ofSorted(new double[0], 0, 0, 0.5)).isNaN();
    }
}
