package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class KnapsackTest {
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12})
    void agreesWithAllSubsets(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int n = 1 + random.nextInt(14);
        double[] v = random.doubles(n, -20, 100).toArray();
        double[] a = random.doubles(n, 0, 50).toArray();
        double[] b = random.doubles(n, 0, 30).toArray();
        double one = 25.0 * n * random.nextDouble();
        double two = 15.0 * n * random.nextDouble();
        double best = 0;
        for (int set = 0; set < 1 << n; set++) {
            double value = 0;
            double sizeA = 0;
            double sizeB = 0;
            for (int i = 0; i < n; i++) {
                if ((set >> i & 1) == 1) {
                    value += v[i];
                    sizeA += a[i];
                    sizeB += b[i];
                }
            }
            best = sizeA <= one && sizeB <= two ? Math.max(best, value) : best;
        }
        Knapsack found = Knapsack.of(v, a, b, one, two);
        assertThat(found.proven()).isTrue();
        assertThat(found.value()).isCloseTo(best, within(1e-6));
        double value = 0;
        double sizeA = 0;
        double sizeB = 0;
        for (int i = 0; i < n; i++) {
            if (found.takes(i)) {
                value += v[i];
                sizeA += a[i];
                sizeB += b[i];
            }
        }
        assertThat(value).isCloseTo(best, within(1e-6));
        assertThat(sizeA).isLessThanOrEqualTo(one + 1e-9);
        assertThat(sizeB).isLessThanOrEqualTo(two + 1e-9);
        assertThat(found.bound()).isGreaterThanOrEqualTo(best - 1e-9);
    }

    /**
     * Worked by hand, one limit of 10: values 60, 50, 40 at sizes 6, 5, 5. Whole: 90 (the last two); split: 60 + 4/5 of 50 = 100, and one more
     * unit would bring 50/5 = 10.
     */
    @Test
    void shadowPriceOfOneLimit() {
        Knapsack k = Knapsack.of(
                new double[] {60, 50, 40}, new double[] {6, 5, 5}, new double[3], 10, Double.POSITIVE_INFINITY);
        assertThat(k.value()).isEqualTo(90);
        assertThat(k.takes(0)).isFalse();
        assertThat(k.bound()).isCloseTo(100, within(1e-9));
        assertThat(k.shadowPriceFirst()).isCloseTo(10, within(1e-9));
        assertThat(k.shadowPriceSecond()).isZero();
    }

    /** The price of a limit is the slope of the bound: between those a little below and above. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {21, 22, 23, 24, 25, 26})
    void shadowPricesAreSlopesOfTheBound(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] v = random.doubles(12, 5, 100).toArray();
        double[] a = random.doubles(12, 5, 50).toArray();
        double[] b = random.doubles(12, 5, 30).toArray();
        Knapsack k = Knapsack.of(v, a, b, 120, 90);
        double step = 1e-4;
        double up = (Knapsack.of(v, a, b, 120 + step, 90).bound() - k.bound()) / step;
        double down = (k.bound() - Knapsack.of(v, a, b, 120 - step, 90).bound()) / step;
        assertThat(k.shadowPriceFirst()).isBetween(up - 1e-6, down + 1e-6);
        up = (Knapsack.of(v, a, b, 120, 90 + step).bound() - k.bound()) / step;
        down = (k.bound() - Knapsack.of(v, a, b, 120, 90 - step).bound()) / step;
        assertThat(k.shadowPriceSecond()).isBetween(up - 1e-6, down + 1e-6);
    }

    @Test
    void thirtyLotsAreProvenBest() {
        SplittableRandom random = new SplittableRandom(9);
        double[] v = random.doubles(30, 10, 1000).toArray();
        double[] a = random.doubles(30, 100, 5000).toArray();
        double[] b = random.doubles(30, 5, 100).toArray();
        Knapsack k = Knapsack.of(v, a, b, 30_000, 700);
        assertThat(k.proven()).isTrue();
        assertThat(k.value()).isBetween(0.9 * k.bound(), k.bound());
    }

    @Test
    void limitsThatDoNotBindHaveNoPriceAndWorthlessItemsStay() {
        Knapsack k = Knapsack.of(
                new double[] {5, -1, 0}, new double[] {1, 1, 1}, new double[] {1, 1, 1}, 100, Double.POSITIVE_INFINITY);
        assertThat(k.value()).isEqualTo(5);
        assertThat(k.takes(1)).isFalse();
        assertThat(k.shadowPriceFirst()).isZero();
        assertThat(Knapsack.of(new double[0], new double[0], new double[0], 1, 1)
                        .value())
                .isZero();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Knapsack.of(new double[1], new double[1], new double[1], -1, 1));
    }
}
