package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class StopRuleTest {
    private static final double[] MINUTE = {10, 20, 40, 60};
    private static final double[] SUCCESS = {.30, .45, .50, .70};
    private static final double[] BROKEN = {.00, .05, .05, .10};

    /**
     * Worked by hand: gain 100, a minute 0.80. Expected minutes to each: 10; 10 + .7 x 10 = 17; + .5 x 20 = 27; + .45 x 20 = 36. Net gain of
     * stopping there: 30 - 8 = 22; 45 - 13.60 = 31.40; 50 - 21.60 = 28.40; 70 - 28.80 = 41.20. So one goes on through the lean stretch from
     * 20 to 40; at 1.40 a minute the sums are 16, 21.20, 12.20 and 19.60, and one stops at 20.
     */
    @Test
    void workedExample() {
        StopRule rule = StopRule.of(MINUTE, SUCCESS, BROKEN);
        StopRule.Stop cheap = rule.best(100, 0.8);
        assertThat(cheap.minute()).isEqualTo(60);
        assertThat(cheap.gain()).isCloseTo(41.20, within(1e-9));
        assertThat(cheap.minutes()).isCloseTo(36, within(1e-9));
        assertThat(cheap.chance()).isCloseTo(.70, within(1e-9));
        StopRule.Stop dear = rule.best(100, 1.4);
        assertThat(dear.minute()).isEqualTo(20);
        assertThat(dear.gain()).isCloseTo(21.20, within(1e-9));
        assertThat(rule.best(100, 40).minute()).isZero();
        assertThat(rule.best(-5, 0).gain()).isZero();
    }

    /** At minute 25 with .5 left: to 60 there is (.70 - .45)/.5 = .5 to win over (.5 x 15 + .45 x 20)/.5 = 33 minutes. */
    @Test
    void workedExampleOnTheWay() {
        StopRule rule = StopRule.of(MINUTE, SUCCESS, BROKEN);
        StopRule.Stop stop = rule.after(25, 100, 0.8);
        assertThat(stop.minute()).isEqualTo(60);
        assertThat(stop.chance()).isCloseTo(0.5, within(1e-9));
        assertThat(stop.minutes()).isCloseTo(33, within(1e-9));
        assertThat(stop.gain()).isCloseTo(50 - 0.8 * 33, within(1e-9));
        assertThat(rule.after(25, 100, 1.6).minute()).isEqualTo(25);
        assertThat(rule.after(60, 100, 0).minute()).isEqualTo(60);
    }

    /** Every stopping minute tried, and the optimal policy found minute by minute from the end. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void agreesWithEnumerationAndWithBackwardInduction(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int last = 80;
        double[] minute = new double[last];
        double[] success = new double[last];
        double[] over = new double[last];
        double left = 1;
        for (int t = 0; t < last; t++) {
            minute[t] = t + 1;
            double s = random.nextInt(3) == 0 ? left * 0.12 * random.nextDouble() : 0;
            double o = left * 0.01 * random.nextDouble();
            left -= s + o;
            success[t] = (t == 0 ? 0 : success[t - 1]) + s;
            over[t] = (t == 0 ? 0 : over[t - 1]) + o;
        }
        StopRule rule = StopRule.of(minute, success, over);
        double cost = 0.3 + random.nextDouble();
        double best = 0;
        double at = 0;
        double minutes = 0;
        for (int t = 0; t < last; t++) {
            minutes += t == 0 ? 1 : 1 - success[t - 1] - over[t - 1];
            double net = 80 * success[t] - cost * minutes;
            if (net > best) {
                best = net;
                at = t + 1;
            }
        }
        assertThat(rule.best(80, cost).gain()).isCloseTo(best, within(1e-9));
        assertThat(rule.best(80, cost).minute()).isEqualTo(at);

        // Value of still being at it after minute t, per set still there.
        double value = 0;
        for (int t = last - 1; t >= 0; t--) {
            double alive = t == 0 ? 1 : 1 - success[t - 1] - over[t - 1];
            double next = 1 - success[t] - over[t];
            double won = success[t] - (t == 0 ? 0 : success[t - 1]);
            double goOn = (80 * won + next * value) / alive - cost;
            value = Math.max(0, goOn);
            assertThat(rule.after(t, 80, cost).gain()).isCloseTo(value, within(1e-9));
        }
        assertThat(value).isCloseTo(best, within(1e-9));
    }

    /** Give-ups that never would have succeeded keep costing minutes, so the rule stops no later. */
    @Test
    void giveUpsAsFailuresStopNoLaterThanAsCensored() {
        double[] minutes = {5, 8, 12, 15, 15, 20, 25, 30, 40, 50, 60, 70};
        int[] ending = {1, 1, 2, 1, 2, 1, 2, 2, 1, 2, 1, 2};
        boolean[] saved = new boolean[12];
        for (int i = 0; i < 12; i++) {
            saved[i] = ending[i] == 1;
        }
        var steps = CumulativeIncidence.of(minutes, ending, 1).steps();
        double[] at = steps.stream().mapToDouble(CumulativeIncidence.Step::time).toArray();
        double[] failures =
                steps.stream().mapToDouble(CumulativeIncidence.Step::incidence).toArray();
        double[] censored = KaplanMeier.of(minutes, saved).steps().stream()
                .mapToDouble(s -> 1 - s.survival())
                .toArray();
        double[] none = new double[at.length];
        for (double cost = 0.1; cost < 2; cost += 0.1) {
            double strict = StopRule.of(at, failures, none).best(60, cost).minute();
            assertThat(StopRule.of(at, censored, none).best(60, cost).minute()).isGreaterThanOrEqualTo(strict);
        }
    }

    @Test
    void curvesThatFallAreRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> StopRule.of(new double[] {1, 2}, new double[] {.5, .4}, new double[2]));
        assertThatIllegalArgumentException()
                .isThrownBy(() -> StopRule.of(new double[] {1, 2}, new double[] {.5, .7}, new double[] {0, .4}));
    }
}
