package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class ShrunkMeansTest {
    /**
     * Thirteen trials of a vaccine: G. A. Colditz et al., JAMA 271 (1994) 698-702, table 1: cases and others among the vaccinated,
     * cases and others in the control group. Log relative risks; variance between by Paule and Mandel 0.318 (W. Viechtbauer, Journal
     * of Statistical Software 36(3) (2010), the package's documented result, from memory; solved again by R 4.2.2, uniroot).
     */
    private static final int[][] TRIALS = {
        {4, 119, 11, 128},
        {6, 300, 29, 274},
        {3, 228, 11, 209},
        {62, 13536, 248, 12619},
        {33, 5036, 47, 5761},
        {180, 1361, 372, 1079},
        {8, 2537, 10, 619},
        {505, 87886, 499, 87892},
        {29, 7470, 45, 7232},
        {17, 1699, 65, 1600},
        {186, 50448, 141, 27197},
        {5, 2493, 3, 2338},
        {27, 16886, 29, 17825},
    };

    private static ShrunkMeans vaccine() {
        double[] mean = new double[13];
        double[] variance = new double[13];
        for (int i = 0; i < 13; i++) {
            double a = TRIALS[i][0];
            double all = a + TRIALS[i][1];
            double c = TRIALS[i][2];
            double others = c + TRIALS[i][3];
            mean[i] = Math.log(a / all / (c / others));
            variance[i] = 1 / a - 1 / all + 1 / c - 1 / others;
        }
        return ShrunkMeans.of(mean, variance);
    }

    @Test
    void varianceBetweenThirteenTrials() {
        assertThat(vaccine().between()).isCloseTo(0.3181, within(5e-5));
        assertThat(vaccine().commonMean()).isCloseTo(-0.7150, within(5e-5));
        assertThat(vaccine().commonSe()).isCloseTo(0.1809, within(5e-5));
    }

    @Test
    void eachMeanLiesBetweenItsOwnAndTheCommonOne() {
        double[] own = {1, 5, 9};
        double[] error = {0.5, 8, 0.5};
        ShrunkMeans fit = ShrunkMeans.of(own, error);
        for (int i = 0; i < 3; i++) {
            assertThat(fit.mean(i)).isBetween(Math.min(own[i], fit.commonMean()), Math.max(own[i], fit.commonMean()));
            assertThat(fit.interval(i, 0.95).contains(fit.mean(i))).isTrue();
        }
        assertThat(fit.sd(1)).isLessThan(Math.sqrt(8)).isGreaterThan(fit.sd(0));
    }

    @Test
    void alikeMeansShareOneEstimate() {
        ShrunkMeans fit = ShrunkMeans.of(new double[] {3, 3.1, 2.9}, new double[] {1, 1, 1});
        assertThat(fit.between()).isZero();
        assertThat(fit.mean(0)).isEqualTo(fit.mean(2)).isCloseTo(3, within(1e-12));
        assertThat(fit.sd(0)).isCloseTo(fit.commonSe(), within(1e-12));
    }

    /** 200 families of 40 means: 95 % intervals hold the truth; standard error of the share under 0.005. */
    @Test
    void intervalsHoldTheTruthAsOftenAsTheySay() {
        SplittableRandom random = new SplittableRandom(3);
        int held = 0;
        for (int r = 0; r < 200; r++) {
            double[] truth = new double[40];
            double[] own = new double[40];
            double[] error = new double[40];
            for (int i = 0; i < 40; i++) {
                truth[i] = 2 + 0.5 * Normals.quantile(random.nextDouble());
                error[i] = 0.05 + random.nextDouble();
                own[i] = truth[i] + Math.sqrt(error[i]) * Normals.quantile(random.nextDouble());
            }
            ShrunkMeans fit = ShrunkMeans.of(own, error);
            for (int i = 0; i < 40; i++) {
                held += fit.interval(i, 0.95).contains(truth[i]) ? 1 : 0;
            }
        }
        assertThat(held / 8000.0).isBetween(0.92, 0.97);
    }

    @Test
    void errorsWithoutVarianceAreRefused() {
        assertThatIllegalArgumentException().isThrownBy(() -> ShrunkMeans.of(new double[] {1}, new double[] {0}));
    }
}
