package org.salvedge.worth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class PredictiveTest {
    /** By hand: mean |x - y| - half the mean |x - x'| over 1, 2, 4 with y = 3: 4/3 - (12/9)/2. */
    @Test
    void crpsOfThreeDrawsByHand() {
        assertThat(new Predictive(new double[] {4, 1, 2}).crps(3)).isCloseTo(4 / 3.0 - 12 / 18.0, within(1e-12));
    }

    /** Hyndman and Fan (1996), type 7: the 0.9 quantile of 1..10 is 9.1. */
    @Test
    void quantilesAreOfTypeSeven() {
        Predictive p = new Predictive(new double[] {10, 9, 8, 7, 6, 5, 4, 3, 2, 1});
        assertThat(p.quantile(0.9)).isCloseTo(9.1, within(1e-12));
        assertThat(p.quantile(0)).isEqualTo(1);
        assertThat(p.quantile(1)).isEqualTo(10);
    }

    @Test
    void reachedWithCountsDrawsNotInterpolation() {
        Predictive p = new Predictive(new double[] {1, 2, 3, 4, 5});
        assertThat(p.reachedWith(0.8)).isEqualTo(2);
        assertThat(p.reachedWith(0.81)).isEqualTo(1);
    }

    @Test
    void tiesShareTheirChance() {
        assertThat(new Predictive(new double[] {1, 2, 2, 3}).pit(2)).isEqualTo(0.5);
    }
}
