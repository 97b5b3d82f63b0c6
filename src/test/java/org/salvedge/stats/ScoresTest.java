package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.apache.commons.statistics.distribution.PoissonDistribution;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class ScoresTest {
    /**
     * Closed form of T. Gneiting et al., Monthly Weather Review 133 (2005) 1098-1118, equation 5; values asserted in the tests of the
     * package scoringRules (A. Jordan, F. Krueger, S. Lerch, Journal of Statistical Software 90(12), 2019).
     */
    @Test
    void crpsOfANormalForecast() {
        assertThat(Crps.normal(0, 1, -3)).isCloseTo(2.43657473, within(5e-9));
        assertThat(Crps.normal(0, 1, 0)).isCloseTo((Math.sqrt(2) - 1) / Math.sqrt(Math.PI), within(5e-9));
        assertThat(Crps.normal(0, 1, 0)).isCloseTo(0.23369498, within(5e-9));
        assertThat(Crps.normal(0, 0.9, -2.7)).isCloseTo(0.9 * 2.43657473, within(5e-9));
        assertThat(Crps.normal(4, 0, 1)).isEqualTo(3);
    }

    /** Gneiting and Raftery (2007), equation 21, and Ferro (2014), by hand. */
    @Test
    void crpsOfAnEnsemble() {
        assertThat(Crps.ensemble(new double[] {0, -1, 1}, 0)).isCloseTo(0.2222222, within(5e-8));
        assertThat(Crps.fair(new double[] {1, -1, 0}, 0)).isCloseTo(0, within(1e-12));
        assertThat(Crps.ensemble(new double[] {5, 1, 4, 2, 3}, 2)).isCloseTo(0.6, within(5e-8));
        assertThat(Crps.fair(new double[] {1, 2, 3, 4, 5}, 2)).isCloseTo(0.4, within(5e-8));
        assertThat(Crps.ensemble(new double[] {1, 2, 3, 4}, 0)).isCloseTo(1.875, within(5e-8));
        assertThat(Crps.ensemble(new double[] {2}, 3.5)).isEqualTo(1.5);
        assertThatIllegalArgumentException().isThrownBy(() -> Crps.fair(new double[] {2}, 3.5));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void sortingGivesTheDoubleSumAlsoFarFromZero(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double far = 1e6 * random.nextInt(3);
        double[] x = random.doubles(1 + random.nextInt(50), far, far + 10).toArray();
        double y = far + 10 * random.nextDouble();
        double error = 0;
        double pairs = 0;
        for (double a : x) {
            error += Math.abs(a - y);
            for (double b : x) {
                pairs += Math.abs(a - b);
            }
        }
        double expected = error / x.length - pairs / (2.0 * x.length * x.length);
        assertThat(Crps.ensemble(x, y)).isCloseTo(expected, within(1e-8));
    }

    /** Normal quantiles as an ensemble approach the closed form. */
    @Test
    void manyDrawsApproachTheClosedForm() {
        double[] x = new double[20_000];
        Arrays.setAll(x, i -> 5 + 2 * Normals.quantile((i + 0.5) / x.length));
        assertThat(Crps.ofSorted(x, 6.3)).isCloseTo(Crps.normal(5, 2, 6.3), within(1e-4));
    }

    /** R. J. Hyndman and G. Athanasopoulos, "Forecasting: Principles and Practice", 3rd ed., section 5.9. */
    @Test
    void quantileAndIntervalScores() {
        assertThat(Scores.pinball(744.54, 0.1, 741.84)).isCloseTo(4.86, within(1e-9));
        Interval forecast = new Interval(744.54, 773.22);
        assertThat(Scores.interval(forecast, 0.8, 741.84)).isCloseTo(55.68, within(1e-9));
        assertThat(Scores.interval(forecast, 0.8, 750)).isCloseTo(28.68, within(1e-9));
        assertThat(Scores.interval(forecast, 0.8, 774.22)).isCloseTo(38.68, within(1e-9));
    }

    /** D. S. Wilks (1995), section 7.4: three classes of precipitation. */
    @Test
    void rankedProbabilityScore() {
        double[] a = {.2, .5, .3};
        assertThat(Scores.rankedProbability(a, 0)).isCloseTo(0.73, within(1e-9));
        assertThat(Scores.rankedProbability(new double[] {.2, .3, .5}, 0)).isCloseTo(0.89, within(1e-9));
        assertThat(Scores.rankedProbability(a, 2)).isCloseTo(0.53, within(1e-9));
    }

    /** A. H. Murphy (1973) on D. S. Wilks (1995), table 7.3; base rate printed .162, the rest by R 4.2.2. */
    @Test
    void brierInThreeParts() {
        Published t = Published.table("wilks73");
        double[] forecast = t.numbers("forecast");
        double[] frequency = t.numbers("obsFreq");
        double[] weight = t.numbers("weight");
        assertThat(Arrays.stream(weight).sum()).isCloseTo(1, within(5e-7));
        double base = 0;
        double direct = 0;
        for (int i = 0; i < weight.length; i++) {
            base += weight[i] * frequency[i];
            direct += weight[i]
                    * (frequency[i] * Math.pow(1 - forecast[i], 2) + (1 - frequency[i]) * Math.pow(forecast[i], 2));
        }
        assertThat(base).isCloseTo(0.161503, within(5e-7));
        Brier brier = Brier.ofTable(forecast, frequency, weight);
        assertThat(brier.reliability()).isCloseTo(0.000828, within(5e-7));
        assertThat(brier.resolution()).isCloseTo(0.062787, within(5e-7));
        assertThat(brier.uncertainty()).isCloseTo(0.135420, within(5e-7));
        assertThat(brier.score()).isCloseTo(0.073461, within(5e-7)).isCloseTo(direct, within(1e-12));
    }

    /** The misprint of a package's help page (0.245 for 0.0245) is caught. */
    @Test
    void weightsThatDoNotAddUpAreRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> Brier.ofTable(new double[] {0, 1}, new double[] {0, 1}, new double[] {1, 0.4032}))
                .withMessageContaining("1.4032");
    }

    /** scikit-learn user documentation, example of brier_score_loss. */
    @Test
    void brierOfFourForecasts() {
        boolean[] came = {false, true, true, false};
        assertThat(Brier.score(new double[] {.1, .9, .8, .3}, came)).isCloseTo(0.0375, within(1e-12));
        assertThat(Brier.of(new double[] {.1, .9, .8, .3}, came).score()).isCloseTo(0.0375, within(1e-12));
    }

    /** C. Czado, T. Gneiting and L. Held, Biometrics 65 (2009) 1254-1261, equation 2: Poisson(2), count 1, u = 0.3. */
    @Test
    void pitOfACount() {
        PoissonDistribution d = PoissonDistribution.of(2);
        double below = d.cumulativeProbability(0);
        double atMost = d.cumulativeProbability(1);
        assertThat(Pit.nonRandomised(below, atMost, 0.3)).isCloseTo(0.608358, within(5e-7));
        assertThat(Pit.nonRandomised(below, atMost, 0.1)).isZero();
        assertThat(Pit.nonRandomised(below, atMost, 0.5)).isEqualTo(1);
        assertThat(Pit.randomised(below, atMost, 0.5)).isCloseTo((below + atMost) / 2, within(1e-12));
    }

    /** Draws and outcome from one distribution, with ties: the PIT is uniform; 4000 cases, bounds at four standard errors. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void pitOfDrawsIsUniformWhereTheForecastIsRight(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] pit = new double[4000];
        for (int i = 0; i < pit.length; i++) {
            double[] draws = random.ints(19, 0, 7).asDoubleStream().sorted().toArray();
            pit[i] = Pit.ofDraws(draws, random.nextInt(7), random.nextDouble());
        }
        assertThat(Moments.of(pit).mean()).isCloseTo(0.5, within(0.019));
        assertThat(Pit.coverage(pit, 0.8)).isCloseTo(0.8, within(0.026));
        assertThat(Pit.coverage(pit, 0.5)).isCloseTo(0.5, within(0.032));
    }

    @Test
    void outcomesBeyondAllDrawsStandAtTheEnds() {
        double[] draws = {1, 2, 3, 4};
        assertThat(Pit.ofDraws(draws, 0, 0.5)).isCloseTo(0.1, within(1e-12));
        assertThat(Pit.ofDraws(draws, 9, 0.5)).isCloseTo(0.9, within(1e-12));
    }
}
