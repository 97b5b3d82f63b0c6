package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class RobustRegressionTest {
    private static final int ROWS = 300;
    private static final double INTERCEPT = 2;
    private static final double SLOPE = 0.5;
    private static final double SD = 0.1;

    private static MixedPrior prior() {
        MixedPrior prior = new MixedPrior().groups(0.001, 4).noise(0.05, 4);
        prior.coefficient(prior.fixed(100.0), 0);
        prior.coefficient(prior.fixed(100.0), 0);
        return prior;
    }

    /** @param spoiled share of measurements that lie far below, those with a high covariate foremost */
    private static MixedData data(double spoiled, long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        MixedData.Builder data = new MixedData.Builder(1);
        for (int i = 0; i < ROWS; i++) {
            double x = random.nextDouble() * 2 - 1;
            double y = INTERCEPT + SLOPE * x + SD * random.nextGaussian();
            if (x > 0 && random.nextDouble() < 2 * spoiled) {
                y -= 1.5;
            }
            data.row(-1, y, 1).term(0, 1).term(1, x);
        }
        return data.build();
    }

    private static double error(MixedModel model) {
        return Math.abs(model.coefficient(0) - INTERCEPT) + Math.abs(model.coefficient(1) - SLOPE);
    }

    @Test
    void farOutliersMoveTheRobustFitLittle() {
        for (long seed = 1; seed <= 20; seed++) {
            MixedData data = data(0.05, seed);
            double robust = error(MixedModel.robust(data, prior(), 4));
            assertThat(robust).as("seed %s", seed).isLessThan(0.07);
            assertThat(error(MixedModel.linear(data, prior())))
                    .as("seed %s", seed)
                    .isGreaterThan(2 * robust);
        }
    }

    @Test
    void itClaimsTheErrorThatItHas() {
        double squares = 0;
        double claimed = 0;
        int runs = 200;
        for (long seed = 1; seed <= runs; seed++) {
            SplittableRandom random = new SplittableRandom(1000 + seed);
            MixedData.Builder data = new MixedData.Builder(1);
            for (int i = 0; i < 100; i++) {
                double chi = 2 * Gammas.draw(2, random); // chi-squared with 4 degrees of freedom
                data.row(-1, SD * random.nextGaussian() / Math.sqrt(chi / 4), 1).term(0, 1);
            }
            MixedPrior prior = new MixedPrior().groups(0.001, 4).noise(SD * SD, 4);
            prior.coefficient(prior.fixed(100.0), 0);
            MixedModel model = MixedModel.robust(data.build(), prior, 4);
            squares += Math.pow(model.coefficient(0), 2) / runs;
            claimed += Math.pow(model.coefficientSd(0), 2) / runs;
        }
        assertThat(Math.sqrt(squares / claimed)).isCloseTo(1, within(0.15));
    }

    /** Mean and mean square of a log-normal: exp(s / 2) and exp(2 s), s the variance of the logarithm. */
    @Test
    void smearingFindsTheMeanOfALogNormal() {
        SplittableRandom random = new SplittableRandom(7);
        double variance = 0.16;
        MixedData.Builder data = new MixedData.Builder(1);
        for (int i = 0; i < 20_000; i++) {
            data.row(-1, 3 + Math.sqrt(variance) * random.nextGaussian(), 1).term(0, 1);
        }
        MixedPrior prior = new MixedPrior().groups(0.001, 4).noise(variance, 4);
        prior.coefficient(prior.fixed(100.0), 0);
        MixedData rows = data.build();
        double[] smear = MixedModel.linear(rows, prior).smear(rows, 1, 0);
        assertThat(smear[0]).isCloseTo(Math.exp(variance / 2), within(0.01));
        assertThat(smear[1]).isCloseTo(Math.exp(2 * variance), within(0.03));
    }
}
