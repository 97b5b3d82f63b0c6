package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.salvedge.stats.RunRule.BEYOND_3;
import static org.salvedge.stats.RunRule.EIGHT_ON_ONE_SIDE;
import static org.salvedge.stats.RunRule.FOUR_OF_FIVE_BEYOND_1;
import static org.salvedge.stats.RunRule.TWO_OF_THREE_BEYOND_2;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.EnumSet;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.IntStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class RunRuleTest {
    /**
     * D. C. Montgomery, "Introduction to Statistical Quality Control", tables 6.3 and 6E.8: 25 samples of piston rings set the limits,
     * 15 follow; indices of signals by R 4.2.2 on the rules' definition.
     */
    @Test
    void pistonRings() {
        double[] diameter = Published.table("pistonrings").numbers("diameter");
        double[] mean = new double[40];
        double[] range = new double[40];
        for (int i = 0; i < 40; i++) {
            double[] sample = Arrays.copyOfRange(diameter, 5 * i, 5 * i + 5);
            mean[i] = Moments.of(sample).mean();
            range[i] = Arrays.stream(sample).max().getAsDouble()
                    - Arrays.stream(sample).min().getAsDouble();
        }
        double centre = Moments.of(Arrays.copyOf(mean, 25)).mean();
        double meanRange = Moments.of(Arrays.copyOf(range, 25)).mean();
        double sigma = 0.577 * meanRange / 3;
        assertThat(centre).isCloseTo(74.001176, within(5e-6));
        assertThat(meanRange).isCloseTo(0.02276, within(5e-6));
        assertThat(centre - 3 * sigma).isCloseTo(73.98804, within(5e-6));
        assertThat(centre + 3 * sigma).isCloseTo(74.01431, within(5e-6));
        double[] z = Arrays.stream(mean).map(x -> (x - centre) / sigma).toArray();
        assertThat(numbers(BEYOND_3.signals(z))).containsExactly(37, 38, 39);
        assertThat(numbers(TWO_OF_THREE_BEYOND_2.signals(z))).containsExactly(35, 37, 38, 39, 40);
        assertThat(numbers(FOUR_OF_FIVE_BEYOND_1.signals(z))).containsExactly(35, 38, 39, 40);
        assertThat(EIGHT_ON_ONE_SIDE.signals(z)).isEmpty();
    }

    private static int[] numbers(int[] indices) {
        return Arrays.stream(indices).map(i -> i + 1).toArray();
    }

    @Test
    void aRuleFiresOnlyOnOneSideAndOnlyAtAPointInItsZone() {
        assertThat(TWO_OF_THREE_BEYOND_2.signals(2.5, -2.5, 0, 2.5)).isEmpty();
        assertThat(TWO_OF_THREE_BEYOND_2.signals(2.5, 0, 2.5, 0)).containsExactly(2);
        assertThat(EIGHT_ON_ONE_SIDE.signals(1, 1, 1, 1, 1, 1, 1, 1, 1)).containsExactly(7, 8);
        assertThat(EIGHT_ON_ONE_SIDE.signals(1, 1, 1, 1, 1, 1, 1, 0, 1)).isEmpty();
        assertThat(FOUR_OF_FIVE_BEYOND_1.signals(-1.5, -1.5, 0, -1.5, -1.5)).containsExactly(4);
    }

    /**
     * C. W. Champ and W. H. Woodall, Technometrics 29 (1987) 393-399: mean number of points to the first signal when nothing has
     * changed, exact; NIST/SEMATECH e-Handbook, section 6.3.2: 91.75 for all four.
     */
    @ParameterizedTest(name = "rules {0}")
    @CsvSource({"1, 370.40", "12, 225.44", "13, 166.05", "14, 152.73", "123, 132.89", "1234, 91.75"})
    void runLengthInControl(String rules, double expected) {
        Set<RunRule> set = EnumSet.noneOf(RunRule.class);
        rules.chars().forEach(c -> set.add(RunRule.values()[c - '1']));
        assertThat(runLength(set)).isCloseTo(expected, within(5e-3));
    }

    /**
     * Expected length by the Markov chain of the last eight zones: the middle of a zone stands for it, and a state keeps of older
     * points only what a rule can still see.
     */
    private static double runLength(Set<RunRule> rules) {
        double[] zones = {0.5, 1.5, 2.5, 3.5, -0.5, -1.5, -2.5, -3.5};
        double[] chance = new double[8];
        for (int k = 0; k < 4; k++) {
            chance[k] = Normals.above(k) - (k == 3 ? 0 : Normals.above(k + 1));
            chance[k + 4] = chance[k];
        }
        Map<List<Double>, Integer> number = new HashMap<>();
        List<List<Double>> states = new ArrayList<>();
        states.add(List.of());
        number.put(List.of(), 0);
        List<int[]> next = new ArrayList<>();
        for (int s = 0; s < states.size(); s++) {
            int[] to = new int[8];
            for (int k = 0; k < 8; k++) {
                List<Double> seen = new ArrayList<>(states.get(s));
                seen.add(zones[k]);
                double[] z = seen.stream().mapToDouble(x -> x).toArray();
                if (rules.stream().anyMatch(rule -> rule.fires(z, z.length - 1))) {
                    to[k] = -1;
                    continue;
                }
                List<Double> kept = kept(seen, rules);
                Integer known = number.get(kept);
                if (known == null) {
                    known = states.size();
                    number.put(kept, known);
                    states.add(kept);
                }
                to[k] = known;
            }
            next.add(to);
        }
        // Expected length = sum over n of the chance that no signal came by point n.
        double[] at = new double[states.size()];
        at[0] = 1;
        double length = 0;
        for (double alive = 1; alive > 1e-10; alive = Arrays.stream(at).sum()) {
            length += alive;
            double[] moved = new double[at.length];
            for (int s = 0; s < at.length; s++) {
                for (int k = 0; at[s] > 0 && k < 8; k++) {
                    if (next.get(s)[k] >= 0) {
                        moved[next.get(s)[k]] += at[s] * chance[k];
                    }
                }
            }
            at = moved;
        }
        return length;
    }

    private static List<Double> kept(List<Double> seen, Set<RunRule> rules) {
        int zoneWindow = rules.contains(FOUR_OF_FIVE_BEYOND_1) ? 4 : rules.contains(TWO_OF_THREE_BEYOND_2) ? 2 : 0;
        int n = seen.size();
        double side = Math.signum(seen.get(n - 1));
        int run = (int) IntStream.iterate(n - 1, i -> i >= 0 && seen.get(i) * side > 0, i -> i - 1)
                .count();
        int runKept = rules.contains(EIGHT_ON_ONE_SIDE) ? run : 0;
        int keep = Math.min(n, Math.max(zoneWindow, runKept));
        List<Double> kept = new ArrayList<>(seen.subList(n - keep, n));
        for (int i = 0; i < keep; i++) {
            if (i < keep - zoneWindow) {
                kept.set(i, side * 0.5);
            } else if (Math.abs(kept.get(i)) > 3) {
                kept.set(i, Math.signum(kept.get(i)) * 2.5);
            } else if (!rules.contains(EIGHT_ON_ONE_SIDE) && Math.abs(kept.get(i)) < 1) {
                kept.set(i, 0.5);
            }
        }
        return List.copyOf(kept);
    }
}
