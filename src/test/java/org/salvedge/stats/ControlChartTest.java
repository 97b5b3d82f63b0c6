package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ControlChartTest {
    private static long[] longs(Published table, String column) {
        return Arrays.stream(table.integers(column)).asLongStream().toArray();
    }

    private static int[] numbers(int[] indices) {
        return Arrays.stream(indices).map(i -> i + 1).toArray();
    }

    /**
     * D. C. Montgomery, "Introduction to Statistical Quality Control", 6th ed., example 7.1; the same counts in NIST/SEMATECH
     * e-Handbook, section 6.3.3.2.
     */
    @Test
    void orangeJuiceCans() {
        Published cans = Published.table("orangejuice");
        PChart chart = PChart.plain(longs(cans, "defectives"), longs(cans, "n"));
        assertThat(chart.centre()).isCloseTo(0.2313, within(5e-5));
        assertThat(chart.points().get(0).high()).isCloseTo(0.4102, within(5e-5));
        assertThat(chart.points().get(0).low()).isCloseTo(0.0524, within(5e-5));
        assertThat(numbers(chart.outside())).containsExactly(15, 23);
    }

    /** The same example after samples 15 and 23 are left out. */
    @Test
    void orangeJuiceCansRevised() {
        Published cans = Published.table("orangejuice");
        long[] bad = longs(cans, "defectives");
        int[] kept = IntStream.range(0, 30).filter(i -> i != 14 && i != 22).toArray();
        long[] n = new long[28];
        Arrays.fill(n, 50);
        PChart chart = PChart.plain(Arrays.stream(kept).mapToLong(i -> bad[i]).toArray(), n);
        assertThat(chart.centre()).isCloseTo(0.2150, within(5e-5));
        assertThat(chart.points().get(0).high()).isCloseTo(0.3893, within(5e-5));
        assertThat(chart.points().get(0).low()).isCloseTo(0.0407, within(5e-5));
        assertThat(Arrays.stream(chart.outside()).map(i -> kept[i] + 1)).containsExactly(21);
    }

    /** The same book, table 7.2: the next 24 samples; the negative limit is cut to 0. */
    @Test
    void orangeJuiceCansAfterTheChange() {
        Published cans = Published.table("orangejuice2");
        PChart chart = PChart.plain(longs(cans, "defectives"), longs(cans, "n"));
        assertThat(chart.centre()).isCloseTo(0.1108, within(5e-5));
        assertThat(chart.points().get(0).high()).isCloseTo(0.2440, within(5e-5));
        assertThat(chart.points().get(0).low()).isEqualTo(0);
        assertThat(chart.outside()).isEmpty();
    }

    /**
     * M. A. Mohammed, J. S. Panesar, D. B. Laney, R. Wilson, BMJ Quality and Safety 22 (2013) 362-368: very large samples; figures by R
     * 4.2.2 on Laney's formula with d2 = 1.128.
     */
    @Test
    void laneyKeepsEmergencyAttendancesInside() {
        Published weeks = Published.table("ae_attendance");
        long[] seen = longs(weeks, "within4h");
        long[] all = longs(weeks, "attendances");
        PChart chart = PChart.laney(seen, all, PChart.D2_TABLE);
        assertThat(chart.centre()).isCloseTo(0.952900, within(5e-7));
        assertThat(chart.sigmaZ()).isCloseTo(10.64042, within(5e-6));
        assertThat(chart.points().get(0).low()).isCloseTo(0.940130, within(1e-6));
        assertThat(chart.points().get(0).high()).isCloseTo(0.965670, within(1e-6));
        assertThat(chart.points().get(12).low()).isCloseTo(0.939803, within(1e-6));
        assertThat(chart.points().get(12).high()).isCloseTo(0.965996, within(1e-6));
        assertThat(chart.outside()).isEmpty();
        assertThat(PChart.laney(seen, all, PChart.D2_EXACT).sigmaZ()).isCloseTo(10.63685, within(5e-6));
        assertThat(numbers(PChart.plain(seen, all).outside()))
                .containsExactly(1, 2, 3, 4, 6, 8, 9, 10, 11, 12, 13, 14, 15, 16, 17, 19);
    }

    @Test
    void aLaterSampleIsJudgedByTheChartOfTheEarlierOnes() {
        PChart chart = PChart.laney(new long[] {50, 55, 45, 52}, new long[] {100, 100, 100, 100}, PChart.D2_TABLE);
        assertThat(chart.at(90, 100).outside()).isTrue();
        assertThat(chart.at(9, 10).low()).isLessThan(chart.at(90, 100).low());
    }

    @Test
    void allSavedOrOneSampleMakeNoFalseSignal() {
        assertThat(PChart.laney(new long[] {9, 9}, new long[] {9, 9}, PChart.D2_TABLE)
                        .outside())
                .isEmpty();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> PChart.laney(new long[] {1}, new long[] {2}, PChart.D2_TABLE));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> PChart.plain(new long[] {3}, new long[] {2}))
                .withMessage("sample 0: 3 of 2");
    }

    /** NIST/SEMATECH e-Handbook, section 6.3.2.2: ten flow rates, moving range 1.8778, limits 45.8159 and 55.8041. */
    @Test
    void individualFlowRates() {
        IndividualsChart chart = IndividualsChart.of(49.6, 47.6, 49.9, 51.3, 47.8, 51.2, 52.6, 52.4, 53.6, 52.1);
        assertThat(chart.centre()).isCloseTo(50.81, within(1e-9));
        assertThat(chart.movingRange()).isCloseTo(1.8778, within(5e-5));
        assertThat(chart.limits().low()).isCloseTo(45.8159, within(2e-4));
        assertThat(chart.limits().high()).isCloseTo(55.8041, within(2e-4));
        assertThat(chart.z(55.8041)).isCloseTo(3, within(1e-3));
    }

    /** NIST/SEMATECH e-Handbook, section 6.3.2.4 (its limits round the root of .3/1.7 to .4201). */
    @Test
    void ewmaOfTwentyValues() {
        Ewma chart = new Ewma(50, 2.0539, 0.3, 3);
        double[] averages = chart.of(Published.table("ewma").numbers("x"));
        assertThat(averages)
                .containsExactly(
                        new double[] {
                            50.60, 49.52, 50.56, 50.18, 50.16, 49.21, 49.75, 49.85, 50.26, 50.33, 50.11, 49.36, 49.52,
                            50.05, 49.38, 49.92, 50.73, 51.23, 51.94, 51.99
                        },
                        within(5.1e-3));
        assertThat(chart.limits().low()).isCloseTo(47.4115, within(1e-4));
        assertThat(chart.limits().high()).isCloseTo(52.5884, within(1e-4));
        assertThat(Arrays.stream(averages).allMatch(chart.limits()::contains)).isTrue();
        assertThat(chart.limitsAfter(1).width()).isCloseTo(2 * 3 * 0.3 * 2.0539, within(1e-9));
        assertThat(chart.limitsAfter(100).width()).isCloseTo(chart.limits().width(), within(1e-9));
    }
}
