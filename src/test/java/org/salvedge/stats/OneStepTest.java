package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class OneStepTest {
    private static final double[] NO_ERRORS = new double[13];

    @Test
    void aStraightLineIsForetold() {
        double[] line = new double[13];
        for (int i = 0; i < line.length; i++) {
            line[i] = 3 - 0.02 * i;
        }
        OneStep step = OneStep.last(line, NO_ERRORS);
        assertThat(step.error()).isCloseTo(0, within(0.02));
        assertThat(step.freedom()).isEqualTo(9);
    }

    @Test
    void aStepInTheLastValueStandsOutOfANoisyLine() {
        SplittableRandom random = new SplittableRandom(5);
        double[] values = new double[13];
        for (int i = 0; i < values.length; i++) {
            values[i] = -0.01 * i + 0.01 * random.nextGaussian();
        }
        assertThat(Math.abs(OneStep.last(values, NO_ERRORS).t())).isLessThan(3);
        values[12] -= 0.15;
        assertThat(OneStep.last(values, NO_ERRORS).t()).isLessThan(-6);
    }

    @Test
    void theSpreadIsNeverLessThanTheErrorOfTheValues() {
        double[] errors = new double[13];
        java.util.Arrays.fill(errors, 0.5);
        assertThat(OneStep.last(new double[13], errors).sd()).isGreaterThan(0.5);
        assertThatThrownBy(() -> OneStep.last(new double[3], new double[3]))
                .isInstanceOf(IllegalArgumentException.class);
    }

    /** Tables of Student's distribution: 2.228 is exceeded on either side with chance 0.05 at 10 degrees of freedom. */
    @Test
    void studentsTails() {
        assertThat(StudentT.twoSided(2.228, 10)).isCloseTo(0.05, within(5e-5));
        assertThat(StudentT.twoSided(-2.228, 10)).isEqualTo(StudentT.twoSided(2.228, 10));
        assertThat(StudentT.twoSided(0, 3)).isEqualTo(1);
        assertThat(StudentT.halfWidth(0.95, 10)).isCloseTo(2.228, within(5e-4));
    }
}
