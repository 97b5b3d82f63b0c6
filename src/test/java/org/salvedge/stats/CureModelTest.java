package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class CureModelTest {
    private static final CureModel.Prior LITTLE = new CureModel.Prior(.5, .01, new LogNormal(3, 1), .01);

    /** Six in ten would succeed, in a median of 40 minutes; each is given up at a minute of its own, whatever would come of it. */
    @Test
    void theTruthIsFoundAgainOutOfManyJobs() {
        SplittableRandom r = new SplittableRandom(11);
        int n = 20_000;
        double[] minute = new double[n];
        double[] passed = new double[n];
        double[] givenUp = new double[n];
        for (int i = 0; i < n; i++) {
            double needs = r.nextDouble() < .6 ? Math.exp(Math.log(40) + .5 * r.nextGaussian()) : 1e9;
            double patience = 10 + 140 * r.nextDouble();
            minute[i] = Math.min(needs, patience);
            passed[i] = needs <= patience ? 1 : 0;
            givenUp[i] = 1 - passed[i];
        }
        CureModel fit = CureModel.fit(minute, passed, givenUp, LITTLE);
        assertThat(fit.share()).isCloseTo(.6, within(.02));
        assertThat(fit.minutes().median()).isCloseTo(40, within(1.0));
        assertThat(fit.minutes().sigma()).isCloseTo(.5, within(.02));
    }

    /** Where every job ran its course the share and the moments of the log are those counted. */
    @Test
    void withoutGiveUpsItIsThePlainLogNormalFit() {
        double[] minute = {10, 20, 40};
        CureModel fit = CureModel.fit(minute, new double[] {1, 1, 1}, new double[3], LITTLE);
        assertThat(fit.share()).isCloseTo(1, within(.01));
        assertThat(fit.minutes().median()).isCloseTo(20, within(.1));
        assertThat(fit.minutes().sigma()).isCloseTo(Math.log(2) * Math.sqrt(2 / 3.0), within(.01));
    }

    /** Given up after long, hardly any of them would have succeeded. */
    @Test
    void whatWasGivenUpLateWasHopeless() {
        double[] minute = {10, 20, 30, 5000};
        double[] passed = {10, 10, 10, 0};
        CureModel fit = CureModel.fit(minute, passed, new double[] {0, 0, 0, 30}, LITTLE);
        assertThat(fit.share()).isCloseTo(.5, within(.01));
    }
}
