package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class LookGainTest {
    /** The unit normal linear-loss integral as tabulated by Raiffa and Schlaifer, "Applied Statistical Decision Theory" (1961). */
    @ParameterizedTest
    @CsvSource({"0,0.3989", "0.5,0.1978", "1,0.08332", "1.5,0.02931", "2,0.008491", "3,0.0003822"})
    void agreesWithThePublishedTable(double d, double loss) {
        assertThat(LookGain.unitLoss(d)).isCloseTo(loss, within(6e-4 * loss));
    }

    /** The gain is E max(0, M) - max(0, E M) of a normal mean after the look; drawn. */
    @ParameterizedTest
    @CsvSource({"0,10", "5,10", "-12,10", "30,10"})
    void isTheGainOfDecidingAfterwards(double mean, double sd) {
        SplittableRandom random = new SplittableRandom(7);
        double after = 0;
        int n = 400_000;
        for (int i = 0; i < n; i++) {
            after += Math.max(0, mean + sd * random.nextGaussian()) / n;
        }
        assertThat(LookGain.of(mean, sd)).isCloseTo(after - Math.max(0, mean), within(0.05));
    }

    @Test
    void whatCannotMoveTheMeanGainsNothing() {
        assertThat(LookGain.of(3, 0)).isZero();
    }
}
