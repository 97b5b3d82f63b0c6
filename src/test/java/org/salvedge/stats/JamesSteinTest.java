package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import org.junit.jupiter.api.Test;

class JamesSteinTest {
    private static final double[] PRINTED = {
        .294, .289, .285, .280, .275, .275, .270, .266, .261, .261, .256, .256, .256, .256, .256, .252, .247, .242
    };

    /** B. Efron and C. Morris, "Stein's paradox in statistics", Scientific American 236(5) (1977) 119-127: .265, .212. */
    @Test
    void eighteenBattingAverages() {
        Published players = Published.table("baseball18");
        double[] early =
                Arrays.stream(players.numbers("hits45")).map(h -> h / 45).toArray();
        double[] season = players.numbers("seasonAvg");
        double mean = Moments.of(early).mean();
        JamesStein fit = JamesStein.of(early, mean * (1 - mean) / 45);
        assertThat(fit.mean()).isCloseTo(0.2654, within(5e-5));
        assertThat(fit.kept()).isCloseTo(0.2117, within(5e-5)).isCloseTo(0.212, within(5e-4));
        double raw = 0;
        double shrunk = 0;
        for (int i = 0; i < 18; i++) {
            assertThat(fit.shrink(early[i])).isCloseTo(PRINTED[i], within(6e-4));
            raw += Math.pow(early[i] - season[i], 2);
            shrunk += Math.pow(fit.shrink(early[i]) - season[i], 2);
        }
        // Against the season's average (the papers score against the rest of the season): R 4.2.2.
        assertThat(raw).isCloseTo(0.0753, within(5e-5));
        assertThat(shrunk).isCloseTo(0.0213, within(5e-5));
    }

    /** B. Efron and C. Morris, JASA 70 (1975) 311-319: the same on the arcsine scale, variance 1; shrinkage .791. */
    @Test
    void eighteenBattingAveragesOnTheArcsineScale() {
        double[] x = Arrays.stream(Published.table("baseball18").numbers("hits45"))
                .map(h -> Math.sqrt(45) * Math.asin(2 * h / 45 - 1))
                .toArray();
        JamesStein fit = JamesStein.of(x, 1);
        assertThat(fit.mean()).isCloseTo(-3.3166, within(5e-5));
        assertThat(Moments.of(x).squares()).isCloseTo(18.96, within(5e-3));
        assertThat(fit.kept()).isCloseTo(0.209, within(5e-4));
    }

    @Test
    void noShareIsNegativeAndThreeAreTooFew() {
        assertThat(JamesStein.of(new double[] {1, 1.1, 0.9, 1}, 5).kept()).isZero();
        assertThatIllegalArgumentException().isThrownBy(() -> JamesStein.of(new double[3], 1));
    }
}
