package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class DecompositionTest {
    private static double[] scaled(String column, double factor) {
        return Arrays.stream(Published.table("dasgupta51").numbers(column))
                .map(x -> x * factor)
                .toArray();
    }

    /** P. Das Gupta (1993), example 5.1: household headship 1970 and 1985 by age, rates in percent. */
    @Test
    void headshipByAge() {
        double[] was = scaled("pct1970", 0.01);
        double[] is = scaled("pct1985", 0.01);
        Kitagawa k = Kitagawa.of(was, scaled("rate1970", 1), is, scaled("rate1985", 1));
        assertThat(k.before()).isCloseTo(44.7268, within(5e-5));
        assertThat(k.after()).isCloseTo(47.6940, within(5e-5));
        assertThat(k.change()).isCloseTo(2.9672, within(5e-5));
        assertThat(k.mix()).isCloseTo(1.2269, within(5e-5));
        assertThat(k.rate()).isCloseTo(1.7403, within(5e-5));
        assertThat(100 * k.mix() / k.change()).isCloseTo(41.35, within(5e-3));
        assertThat(100 * k.rate() / k.change()).isCloseTo(58.65, within(5e-3));
        double[] meanRates = new double[was.length];
        Arrays.setAll(meanRates, i -> (scaled("rate1970", 1)[i] + scaled("rate1985", 1)[i]) / 2);
        assertThat(Kitagawa.of(was, meanRates, is, meanRates).before()).isCloseTo(45.5876, within(5e-5));
        assertThat(Kitagawa.of(was, meanRates, is, meanRates).after()).isCloseTo(46.8145, within(5e-5));
    }

    /** The same table in three parts, by the published formula (R 4.2.2). */
    @Test
    void headshipInThreeParts() {
        Kitagawa.ThreeParts parts = Kitagawa.ThreeParts.of(
                scaled("pct1970", 0.01), scaled("rate1970", 1), scaled("pct1985", 0.01), scaled("rate1985", 1));
        assertThat(parts.mix()).isCloseTo(1.2082, within(5e-5));
        assertThat(parts.rate()).isCloseTo(1.7216, within(5e-5));
        assertThat(parts.interaction()).isCloseTo(0.0374, within(5e-5));
    }

    /** P. Das Gupta (1993), example 2.1: earnings of earners times proportion earning. */
    @Test
    void twoFactors() {
        double[] before = {10930, .717892};
        double[] after = {16591, .825974};
        assertThat(Factors.product(before)).isCloseTo(7846.56, within(5.1e-3));
        assertThat(Factors.product(after)).isCloseTo(13703.73, within(5.1e-3));
        double[] effects = Factors.effects(before, after, Factors::product);
        assertThat(effects).containsExactly(new double[] {4369.913, 1487.262}, within(5.1e-3));
        double change = Factors.product(after) - Factors.product(before);
        assertThat(100 * effects[0] / change).isCloseTo(74.61, within(5e-3));
        // Standardised levels: one factor at its value, the other at the mean of both.
        double proportion = (before[1] + after[1]) / 2;
        assertThat(before[0] * proportion).isCloseTo(8437.228, within(5.1e-3));
        assertThat(after[0] * proportion - before[0] * proportion).isCloseTo(effects[0], within(1e-9));
        assertThat(after[0] * proportion).isCloseTo(12807.14, within(5.1e-3));
        double earnings = (before[0] + after[0]) / 2;
        assertThat(before[1] * earnings).isCloseTo(9878.553, within(5.1e-3));
        assertThat(after[1] * earnings).isCloseTo(11365.82, within(5.1e-3));
    }

    /** P. Das Gupta (1993), example 2.3. */
    @Test
    void fourFactors() {
        double[] effects = Factors.effects(
                new double[] {25.3, .214, .279, .949}, new double[] {32.7, .290, .473, .986}, Factors::product);
        assertThat(effects).containsExactly(new double[] {0.6889411, 0.8125381, 1.3829055, 0.1047547}, within(5.1e-8));
        assertThat(Arrays.stream(effects).sum()).isCloseTo(2.9891394, within(5.1e-8));
    }

    /**
     * J. L. Fleiss (1981), p. 249: Down syndrome by birth order, standardised for mother's age; interval of M. P. Fay and E. J. Feuer,
     * Statistics in Medicine 16 (1997) 791-801, table I. Per 100,000.
     */
    @Test
    void downSyndromeByBirthOrder() {
        Published births = Published.table("fleiss_down");
        double[] standard = new double[6];
        for (int order = 1; order <= 5; order++) {
            double[] n = births.where("birthOrder", "" + order).numbers("births");
            Arrays.setAll(standard, i -> standard[i] + n[i] / 5);
        }
        double[] crude = {56.3, 67.6, 83.3, 115.5, 167.1};
        double[] standardised = {92.3, 91.2, 85.1, 92.7, 75.5};
        for (int order = 1; order <= 5; order++) {
            Published stratum = births.where("birthOrder", "" + order);
            DirectStandardisation d =
                    DirectStandardisation.of(stratum.numbers("cases"), stratum.numbers("births"), standard);
            assertThat(1e5 * d.crude()).isCloseTo(crude[order - 1], within(0.05));
            assertThat(1e5 * d.rate()).isCloseTo(standardised[order - 1], within(0.05));
            if (order == 1) {
                assertThat(1e5 * d.interval(0.95).low()).isCloseTo(80.4, within(0.05));
                assertThat(1e5 * d.interval(0.95).high()).isCloseTo(105.8, within(0.05));
            }
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void mixAndRateAddUpExactlyAndCellsNearly(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int r = 0; r < 200; r++) {
            int k = 1 + random.nextInt(40);
            long[][] cells = new long[4][k];
            for (int i = 0; i < k; i++) {
                for (int side = 0; side < 2; side++) {
                    long n = random.nextInt(5) == 0 ? 0 : random.nextInt(200);
                    cells[2 * side + 1][i] = n;
                    cells[2 * side][i] = n == 0 ? 0 : random.nextLong(n + 1);
                }
            }
            cells[1][0] += 1;
            cells[3][0] += 1;
            Kitagawa split = Kitagawa.ofCounts(cells[0], cells[1], cells[2], cells[3]);
            assertThat(split.mix() + split.rate()).isEqualTo(split.change());
            double mix = split.cells().stream().mapToDouble(Kitagawa.Cell::mix).sum();
            double rate =
                    split.cells().stream().mapToDouble(Kitagawa.Cell::rate).sum();
            assertThat(mix).isCloseTo(split.mix(), within(1e-13));
            assertThat(rate).isCloseTo(split.rate(), within(1e-13));
        }
    }

    @Test
    void aCellThatIsEmptyInOneMonthIsAllMix() {
        Kitagawa k = Kitagawa.ofCounts(new long[] {5, 0}, new long[] {10, 0}, new long[] {5, 9}, new long[] {10, 10});
        assertThat(k.rate()).isZero();
        assertThat(k.mix()).isCloseTo(0.2, within(1e-15));
        assertThat(k.cells().get(1).rate()).isZero();
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Kitagawa.ofCounts(new long[1], new long[1], new long[1], new long[] {3}));
    }

    @Test
    void effectsOfAnyQuantityAddUpAndDoNotDependOnTheOrder() {
        double[] before = {1, 2, 3};
        double[] after = {2, 5, 1};
        double[] effects = Factors.effects(before, after, x -> x[0] * x[0] + x[1] / x[2]);
        assertThat(Arrays.stream(effects).sum()).isCloseTo((4 + 5.0) - (1 + 2.0 / 3), within(1e-12));
        assertThat(effects[0]).isCloseTo(3, within(1e-12));
        double[] turned =
                Factors.effects(new double[] {3, 2, 1}, new double[] {1, 5, 2}, x -> x[2] * x[2] + x[1] / x[0]);
        assertThat(turned[0]).isCloseTo(effects[2], within(1e-12));
    }
}
