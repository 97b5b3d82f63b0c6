package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class HolmTest {
    private static final Offset<Double> EXACT = within(1e-15);

    @Test
    void theLeastChanceIsMultipliedByAllTheNextByOneLess() {
        double[] adjusted = Holm.adjust(0.01, 0.04, 0.03, 0.005);
        assertThat(adjusted[3]).isCloseTo(0.02, EXACT);
        assertThat(adjusted[0]).isCloseTo(0.03, EXACT);
        assertThat(adjusted[2]).isCloseTo(0.06, EXACT);
        assertThat(adjusted[1]).as("never below that of a smaller chance").isCloseTo(0.06, EXACT);
    }

    @Test
    void noChanceExceedsOneAndNoTestsNeedNoRaising() {
        assertThat(Holm.adjust(0.9, 0.8)).containsExactly(1, 1);
        assertThat(Holm.adjust()).isEmpty();
        assertThat(Holm.adjust(0.2)).containsExactly(0.2);
    }

    /** Worked by hand: 0.02 of weight 2 comes before 0.011 of weight 1. */
    @Test
    void aTestOfMoreWeightIsRaisedLessAndComesBeforeALesserChance() {
        double[] adjusted = Holm.adjust(new double[] {0.011, 0.02, 0.3}, new double[] {1, 2, 1}, 0);
        assertThat(adjusted[1]).as("4 over 2").isCloseTo(0.04, EXACT);
        assertThat(adjusted[0]).as("2 would give 0.022").isCloseTo(0.04, EXACT);
        assertThat(adjusted[2]).as("1 over 1").isCloseTo(0.3, EXACT);
    }

    @Test
    void weightKeptForTestsMadeElsewhereIsNeverTakenOut() {
        double[] adjusted = Holm.adjust(new double[] {0.01, 0.02}, new double[] {1, 1}, 2);
        assertThat(adjusted[0]).isCloseTo(0.04, EXACT);
        assertThat(adjusted[1]).isCloseTo(0.06, EXACT);
    }

    /** Weighted Bonferroni's bound, that Holm's procedure rests on. */
    @Test
    void underTheNullAFalseAlarmIsNoMoreLikelyThanTheLevelWhateverTheWeights() {
        java.util.SplittableRandom random = new java.util.SplittableRandom(7);
        double[] weights = {1, .5, .5, .1, .1, .1, .1, .1, .1, .1, .1, .1, .1};
        int alarms = 0;
        int times = 20_000;
        for (int i = 0; i < times; i++) {
            double[] p = random.doubles(weights.length).toArray();
            alarms += java.util.Arrays.stream(Holm.adjust(p, weights, 0)).anyMatch(a -> a <= 0.05) ? 1 : 0;
        }
        assertThat(alarms / (double) times).isBetween(0.043, 0.055);
    }
}
