package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** NIST Statistical Reference Datasets, univariate summary statistics: certified values. */
class MomentsTest {
    @Test
    void numAcc1() {
        Moments m = Moments.of(10000001, 10000003, 10000002);
        assertThat(m.mean()).isCloseTo(10000002, within(1e-12));
        assertThat(m.sd()).isCloseTo(1, within(1e-12));
        assertThat(Moments.lag1(10000001, 10000003, 10000002)).isCloseTo(-0.5, within(1e-12));
    }

    /** NumAcc2, 3 and 4: one value, then 500 pairs about it (S. D. Simon and J. P. Lesage (1989)). */
    @ParameterizedTest(name = "{0}")
    @CsvSource({"1.2, 1e-13, 1e-13", "1000000.2, 1e-8, 1e-9", "10000000.2, 1e-7, 1e-8"})
    void numAcc2To4(double centre, double meanTolerance, double sdTolerance) {
        double low = Double.parseDouble(String.format(java.util.Locale.ROOT, "%.1f", centre - 0.1));
        double high = Double.parseDouble(String.format(java.util.Locale.ROOT, "%.1f", centre + 0.1));
        double[] values = new double[1001];
        for (int i = 0; i < values.length; i++) {
            values[i] = i == 0 ? centre : i % 2 == 1 ? low : high;
        }
        Moments m = Moments.of(values);
        assertThat(m.mean()).isCloseTo(centre, within(meanTolerance));
        assertThat(m.sd()).isCloseTo(0.1, within(sdTolerance));
        assertThat(Moments.lag1(values)).isCloseTo(-0.999, within(1e-6));
    }

    @Test
    void lottery() {
        double[] y = Published.table("strd_lottery").numbers("y");
        Moments m = Moments.of(y);
        assertThat(m.n()).isEqualTo(218);
        assertThat(m.mean()).isCloseTo(518.958715596330, within(1e-11));
        assertThat(m.sd()).isCloseTo(291.699727470969, within(1e-11));
        assertThat(Moments.lag1(y)).isCloseTo(-0.120948622967393, within(1e-13));
        Moments merged = Moments.of(Arrays.copyOf(y, 100)).merge(Moments.of(Arrays.copyOfRange(y, 100, 218)));
        assertThat(merged.n()).isEqualTo(218);
        assertThat(merged.mean()).isCloseTo(518.958715596330, within(1e-11));
        assertThat(merged.sd()).isCloseTo(291.699727470969, within(1e-11));
    }

    @Test
    void mavro() {
        double[] y = Published.table("strd_mavro").numbers("y");
        Moments m = Moments.of(y);
        assertThat(m.n()).isEqualTo(50);
        assertThat(m.mean()).isCloseTo(2.001856, within(1e-14));
        assertThat(m.sd()).isCloseTo(0.000429123454003053, within(1e-14));
        assertThat(Moments.lag1(y)).isCloseTo(0.937989183438248, within(1e-9));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void oneByOneAndMergedInAnyCutAgreeWithTheWhole(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] y = random.doubles(40, -5, 1000).toArray();
        Moments whole = Moments.of(y);
        int cut = random.nextInt(41);
        Moments one = Moments.NONE;
        for (int i = 0; i < cut; i++) {
            one = one.with(y[i]);
        }
        Moments merged = one.merge(Moments.of(Arrays.copyOfRange(y, cut, 40)));
        assertThat(merged.n()).isEqualTo(whole.n());
        assertThat(merged.mean()).isCloseTo(whole.mean(), within(1e-10));
        assertThat(merged.squares()).isCloseTo(whole.squares(), within(1e-7));
        assertThat(whole.se()).isCloseTo(whole.sd() / Math.sqrt(40), within(1e-12));
    }

    @Test
    void oneValueHasNoVariance() {
        assertThat(Moments.of(3).variance()).isNaN();
    }
}
