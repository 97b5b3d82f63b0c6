package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class LogNormalTest {
    /**
     * J. Lieblein and M. Zelen, J. Res. NBS 57 (1956) 273-316; fit in J. F. Lawless, "Statistical Models and Methods for Lifetime
     * Data", section 5.2 (4.15, 0.522); more digits by R 4.2.2.
     */
    @Test
    void ballBearings() {
        double[] life = Published.table("bearings").numbers("mrev");
        LogNormal d = LogNormalFit.complete(life).distribution();
        assertThat(d.mu()).isCloseTo(4.1507, within(5e-5));
        assertThat(d.sigma()).isCloseTo(0.5215, within(5e-5));
        assertThat(Moments.of(Arrays.stream(life).map(Math::log).toArray()).sd())
                .isCloseTo(0.5332, within(5e-5));
        assertThat(d.quantile(0.1)).isCloseTo(32.538, within(5.1e-4));
        assertThat(d.median()).isCloseTo(63.481, within(5.1e-4));
        assertThat(d.quantile(0.9)).isCloseTo(123.850, within(5.1e-4));
        assertThat(d.mean()).isCloseTo(72.728, within(5.1e-4));
        assertThat(Moments.of(life).mean()).isCloseTo(72.238, within(5.1e-4));
    }

    /**
     * W. Nelson and J. Schmee, Technometrics 21 (1979) 43-54: log10 fit 2.2223, 0.3064; the rest by R 4.2.2, survival 3.5-3:
     * survreg(Surv(kmiles, failed) ~ 1, dist = "lognormal").
     */
    @Test
    void locomotiveControlsCensoredAt135() {
        Published controls = Published.table("locomotive");
        LogNormalFit fit = LogNormalFit.censored(controls.numbers("kmiles"), controls.flags("failed"));
        LogNormal d = fit.distribution();
        assertThat(d.mu() / Math.log(10)).isCloseTo(2.2223, within(5e-5));
        assertThat(d.sigma() / Math.log(10)).isCloseTo(0.3064, within(5e-5));
        assertThat(d.mu()).isCloseTo(5.1169, within(5e-5));
        assertThat(d.sigma()).isCloseTo(0.7055, within(5e-5));
        assertThat(d.below(80)).isCloseTo(0.1488, within(5e-5));
        assertThat(Math.sqrt(fit.varianceMu())).isCloseTo(0.10416, within(5e-6));
        assertThat(fit.logLikelihood()).isCloseTo(-237.1, within(0.05));
    }

    /**
     * ReliaWiki, "Lognormal MLE Solution with Right Censored Data", after W. Q. Meeker and L. A. Escobar, "Statistical Methods for
     * Reliability Data" (1998), p. 199. The page prints sigma 0.543, a transposition: its covariance agrees with 0.534.
     */
    @Test
    void fiveFailuresFifteenSuspensions() {
        double[] time = new double[20];
        boolean[] failed = new boolean[20];
        Arrays.fill(time, 500);
        double[] failures = {252, 315, 369, 403, 474};
        System.arraycopy(failures, 0, time, 0, 5);
        Arrays.fill(failed, 0, 5, true);
        LogNormalFit fit = LogNormalFit.censored(time, failed);
        double mu = fit.distribution().mu();
        assertThat(mu).isCloseTo(6.5643, within(5e-5));
        assertThat(fit.distribution().sigma()).isCloseTo(0.5340, within(5e-5));
        assertThat(fit.varianceMu()).isCloseTo(0.0581, within(5e-5));
        assertThat(fit.covariance()).isCloseTo(0.0374, within(5e-5));
        assertThat(fit.varianceSigma()).isCloseTo(0.0406, within(1e-4));
        double half = 1.96 * Math.sqrt(fit.varianceMu());
        assertThat(new double[] {mu - half, mu + half}).containsExactly(new double[] {6.0918, 7.0367}, within(1e-4));
    }

    /** U. Olsson, Journal of Statistics Education 13(1) (2005): n = 40, mean 5.127, variance 1.010 of the logarithms. */
    @Test
    void intervalOfTheMeanByCox() {
        LogNormalMean mean = new LogNormalMean(40, 5.127, 1.010);
        assertThat(mean.point()).isCloseTo(279.22, within(5e-3));
        assertThat(mean.cox(0.95).low()).isCloseTo(190.24, within(5e-3));
        assertThat(mean.cox(0.95).high()).isCloseTo(409.82, within(5e-3));
        assertThat(mean.modifiedCox(0.95).low()).isCloseTo(187.92, within(5e-3));
        assertThat(mean.modifiedCox(0.95).high()).isCloseTo(414.88, within(5e-3));
    }

    /** D. Kececioglu, "Reliability Engineering Handbook", vol. 1, p. 406, as quoted in ReliaWiki. */
    @Test
    void nineUnits() {
        double[] logs = Arrays.stream(new double[] {30.4, 36.7, 53.3, 58.5, 74.0, 99.3, 114.3, 140.1, 257.9})
                .map(Math::log)
                .toArray();
        assertThat(Moments.of(logs).mean()).isCloseTo(4.3553, within(5e-5));
        assertThat(Moments.of(logs).sd()).isCloseTo(0.67677, within(5e-6));
    }

    /** Johnson, Kotz and Balakrishnan, "Continuous Univariate Distributions", chapter 14: the formulas at mu = 1, sigma = 0.5. */
    @Test
    void identities() {
        LogNormal d = new LogNormal(1, 0.5);
        assertThat(d.median()).isCloseTo(2.718282, within(1e-6));
        assertThat(d.mean()).isCloseTo(3.080217, within(1e-6));
        assertThat(d.mode()).isCloseTo(2.117000, within(1e-6));
        assertThat(d.quantile(0.9)).isCloseTo(5.159170, within(1e-6));
        assertThat(d.variation()).isCloseTo(0.532940, within(1e-6));
        assertThat(d.mode()).isLessThan(d.median());
        assertThat(d.median()).isLessThan(d.mean());
        assertThat(d.below(d.quantile(0.3))).isCloseTo(0.3, within(1e-12));
    }

    /** ReliaWiki, "Lognormal Distribution Examples", complete data: 2.83, 1.10; more digits by R. */
    @Test
    void eightCompleteTimes() {
        LogNormal d = LogNormalFit.complete(2, 5, 11, 23, 29, 37, 43, 59).distribution();
        assertThat(d.mu()).isCloseTo(2.831616, within(1e-6));
        assertThat(d.sigma()).isCloseTo(1.098746, within(1e-6));
    }

    /** Mean of min(X, limit) against the mean of a fine grid of quantiles. */
    @Test
    void limitedMeanIsTheMeanOfWhatIsSpent() {
        LogNormal d = new LogNormal(3.2, 0.6);
        for (double limit : new double[] {5, 20, 60, 400}) {
            double sum = 0;
            for (int i = 0; i < 20_000; i++) {
                sum += Math.min(limit, d.quantile((i + 0.5) / 20_000));
            }
            assertThat(d.limitedMean(limit)).isCloseTo(sum / 20_000, within(2e-3));
        }
        assertThat(d.limitedMean(0)).isZero();
        assertThat(d.limitedMean(1e9)).isCloseTo(d.mean(), within(1e-9));
        assertThat(new LogNormal(0, 0).limitedMean(0.5)).isEqualTo(0.5);
        assertThat(new LogNormal(0, 0).limitedMean(2)).isEqualTo(1);
    }

    /** 4000 draws, 60 % censored: the estimates are within four of their own standard errors for any but one seed in 10,000. */
    @Test
    void heavyCensoringDoesNotBias() {
        SplittableRandom random = new SplittableRandom(11);
        LogNormal truth = new LogNormal(3.5, 0.8);
        double limit = truth.quantile(0.4);
        double[] time = new double[4000];
        boolean[] ended = new boolean[4000];
        for (int i = 0; i < time.length; i++) {
            double t = truth.quantile(random.nextDouble());
            time[i] = Math.min(t, limit);
            ended[i] = t < limit;
        }
        LogNormalFit fit = LogNormalFit.censored(time, ended);
        assertThat(fit.distribution().mu()).isCloseTo(3.5, within(4 * Math.sqrt(fit.varianceMu())));
        assertThat(fit.distribution().sigma()).isCloseTo(0.8, within(4 * Math.sqrt(fit.varianceSigma())));
        assertThat(Math.sqrt(fit.varianceMu())).isLessThan(0.05);
    }

    @Test
    void dataWithoutSpreadOrEventsAreRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> LogNormalFit.complete(5, 5, 5));
        assertThatIllegalArgumentException().isThrownBy(() -> LogNormalFit.complete(0, 5, 7));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> LogNormalFit.censored(new double[] {5, 6, 7}, new boolean[] {true, false, false}))
                .withMessageStartingWith("1 events among 3 times");
    }
}
