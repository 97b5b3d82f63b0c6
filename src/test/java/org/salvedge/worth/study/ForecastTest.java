package org.salvedge.worth.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;

class ForecastTest {
    /**
     * Gneiting and Raftery (2007), JASA 102, 359-378, eq. 20: the score of a normal forecast of mean 0, sd 1 is z(2 Phi(z) - 1) +
     * 2 phi(z) - 1/sqrt(pi); at z = 0 that is 0.2337, at z = 1 0.6024.
     */
    @Test
    void scoreOfANormalForecastMatchesTheClosedForm() {
        assertThat(Forecast.normal(0, 1).crps(0)).isCloseTo(0.2337, within(5e-4));
        assertThat(Forecast.normal(0, 1).crps(1)).isCloseTo(0.6024, within(5e-4));
        assertThat(Forecast.normal(50, 10).crps(60)).isCloseTo(6.024, within(5e-3));
    }

    @Test
    void quantilesAndChancesAgree() {
        Forecast f = Forecast.ofDraws(
                IntStream.rangeClosed(1, 1000).mapToDouble(i -> 1001 - i).toArray());
        assertThat(f.quantile(0.1)).isCloseTo(100.5, within(1e-9));
        assertThat(f.quantile(0.9)).isCloseTo(900.5, within(1e-9));
        assertThat(f.below(100.5)).isEqualTo(0.1);
        assertThat(f.below(100)).isEqualTo(0.099);
        assertThat(f.mean()).isEqualTo(500.5);
    }
}
