package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.junit.jupiter.api.Test;

class BetaBinomialTest {
    /**
     * A. Geissler's families (1889), worked in Wikipedia, "Beta-binomial distribution": moments 34.1350, 31.6085, log-likelihood
     * -12492.9, AIC 24989.74 against 25070.34. The article's ML alpha and beta stopped short on a flat ridge, so mean, correlation
     * and likelihood are compared (R 4.2.2, Newton).
     */
    @Test
    void boysInSaxonFamiliesOfTwelve() {
        Published families = Published.table("geissler12");
        double[] times = families.numbers("families");
        Beta moments = BetaBinomialFit.moments(times);
        assertThat(moments.alpha()).isCloseTo(34.1350, within(5e-5));
        assertThat(moments.beta()).isCloseTo(31.6085, within(5e-5));
        assertThat(moments.mean()).isCloseTo(0.5192, within(5e-5));

        int[] boys = families.integers("males");
        int[] children = new int[13];
        Arrays.fill(children, 12);
        BetaBinomialFit fit = BetaBinomialFit.of(boys, children, times);
        assertThat(fit.interior()).isTrue();
        assertThat(fit.mean()).isCloseTo(0.519219, within(5e-7));
        assertThat(fit.correlation()).isCloseTo(0.014997, within(5e-7));
        assertThat(fit.logLikelihood()).isCloseTo(-12492.87, within(5e-3));
        assertThat(fit.chance().alpha()).isCloseTo(34.103, within(1e-3));
        assertThat(fit.chance().beta()).isCloseTo(31.578, within(1e-3));
        assertThat(fit.aic()).isCloseTo(24989.74, within(5e-3));

        double binomial = 0;
        for (int k = 0; k <= 12; k++) {
            binomial += times[k] * BinomialDistribution.of(12, moments.mean()).logProbability(k);
        }
        assertThat(2 - 2 * binomial).isCloseTo(25070.34, within(5e-3));

        double mean = 12 * moments.mean();
        double variance = 0;
        for (int k = 0; k <= 12; k++) {
            variance += times[k] * (k - mean) * (k - mean) / (6115 - 1);
        }
        assertThat(mean).isCloseTo(6.2306, within(5e-5));
        assertThat(variance).isCloseTo(3.490, within(6e-4));
        assertThat(new BetaBinomial(12, moments).variance()).isCloseTo(3.490, within(1e-3));
    }

    /** J. G. Skellam, JRSS B 10 (1948) 257-261: chromosome associations, 0 to 3 of 3. */
    @Test
    void skellamsChromosomes() {
        double[] times = {32, 103, 122, 80};
        BetaBinomialFit fit = BetaBinomialFit.of(new int[] {0, 1, 2, 3}, new int[] {3, 3, 3, 3}, times);
        assertThat(fit.chance().alpha()).isCloseTo(6.1198, within(5e-5));
        assertThat(fit.chance().beta()).isCloseTo(4.4186, within(5e-5));
        assertThat(fit.mean()).isCloseTo(0.580712, within(5e-7));
        assertThat(fit.correlation()).isCloseTo(0.086668, within(5e-7));
        assertThat(fit.logLikelihood()).isCloseTo(-436.8130, within(5e-5));
        BetaBinomial fitted = new BetaBinomial(3, fit.chance());
        double[] expected = {33.97, 97.16, 127.67, 78.20};
        for (int k = 0; k <= 3; k++) {
            assertThat(337 * fitted.probability(k)).isCloseTo(expected[k], within(5e-3));
        }
        assertThat(fitted.correlation()).isCloseTo(0.086668, within(5e-7));
    }

    /** M. J. Crowder, Applied Statistics 27 (1978) 34-37, table 3, 21 plates pooled; R 4.2.2 on the formulas cited in the classes. */
    @Test
    void seedsOnPlates() {
        Published plates = Published.table("seeds");
        IntraclassCorrelation icc = IntraclassCorrelation.of(plates.integers("germinated"), plates.integers("n"));
        assertThat(icc.between()).isCloseTo(1.172232, within(5e-7));
        assertThat(icc.within()).isCloseTo(0.227430, within(5e-7));
        assertThat(icc.size()).isCloseTo(38.835740, within(5e-7));
        assertThat(icc.anova()).isCloseTo(0.096633, within(1e-6));
        assertThat(icc.fleissCuzick()).isCloseTo(0.089899, within(1e-6));
        BetaBinomialFit fit = BetaBinomialFit.of(plates.integers("germinated"), plates.integers("n"));
        assertThat(fit.mean()).isCloseTo(0.493572, within(5e-7));
        assertThat(fit.correlation()).isCloseTo(0.081572, within(5e-7));
        assertThat(fit.logLikelihood()).isCloseTo(-64.5163, within(5e-5));
    }

    /** The pooled moment equation of shrunk yields on the same plates; the standard error of each estimate is about 0.03. */
    @Test
    void pooledMomentsOnSeedsAreNearTheOtherEstimates() {
        Published plates = Published.table("seeds");
        Spread.Builder spread = new Spread.Builder(1);
        for (int i = 0; i < 21; i++) {
            double n = plates.integers("n")[i];
            spread.add(0, n, plates.integers("germinated")[i] / n);
        }
        Spread all = spread.build();
        assertThat(all.moments(all.binomialVariances(0.05))).isCloseTo(0.0899, within(0.015));
    }

    /** Conjugacy: A. Gelman et al., "Bayesian Data Analysis", section 2.4, with Skellam's fit as prior and 7 of 10. */
    @Test
    void posteriorMean() {
        Beta after = new Beta(6.1198, 4.4186).after(7, 3);
        assertThat(after.mean()).isCloseTo(0.638793, within(1e-6));
        assertThat(after.interval(0.9).contains(after.mean())).isTrue();
    }

    @Test
    void samplesThatDifferByLessThanChanceStandAtTheBound() {
        BetaBinomialFit fit = BetaBinomialFit.of(new int[] {5, 5, 5, 5}, new int[] {10, 10, 10, 10});
        assertThat(fit.interior()).isFalse();
        assertThat(fit.mean()).isCloseTo(0.5, within(1e-9));
        assertThat(fit.correlation()).isLessThan(1e-7);
        assertThatIllegalArgumentException().isThrownBy(() -> BetaBinomialFit.moments(0, 0, 100, 0, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> BetaBinomialFit.of(new int[] {0, 0}, new int[] {3, 4}));
    }

    @Test
    void probabilitiesAddUpAndTailsAgree() {
        BetaBinomial d = new BetaBinomial(17, new Beta(0.3, 2.5));
        double sum = 0;
        double mean = 0;
        for (int k = 0; k <= 17; k++) {
            sum += d.probability(k);
            mean += k * d.probability(k);
        }
        assertThat(sum).isCloseTo(1, within(1e-12));
        assertThat(mean).isCloseTo(d.mean(), within(1e-12));
        assertThat(d.atLeast(1)).isCloseTo(1 - d.probability(0), within(1e-12));
        assertThat(d.probability(18)).isZero();
    }

    /** Against the library's distribution function and its own, slower, quantiles. */
    @Test
    void betaQuantilesAgreeWithTheLibrary() {
        double[] shapes = {0.02, 0.3, 0.5, 1, 1.5, 4, 60, 3000};
        double[] probabilities = {1e-6, 0.025, 0.1, 0.5, 0.9, 0.975, 1 - 1e-6};
        for (double a : shapes) {
            for (double b : shapes) {
                BetaDistribution library = BetaDistribution.of(a, b);
                for (double p : probabilities) {
                    double x = BetaQuantile.of(p, a, b);
                    if (x > 1e-14 && x < 1 - 1e-6) {
                        assertThat(library.cumulativeProbability(x)).isCloseTo(p, within(1e-9 * Math.max(p, 1e-3)));
                    } else {
                        assertThat(x).isCloseTo(library.inverseCumulativeProbability(p), within(1e-9));
                    }
                }
            }
        }
    }
}
