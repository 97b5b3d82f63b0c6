package org.salvedge.bench;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class MaskPlanTest {
    private static MaskPlan.Question ask(int n, double[] prior, int tolerance, double notHere, List<MaskTrial> tried) {
        return new MaskPlan.Question(n, prior, tolerance, notHere, 0, .95, tried);
    }

    /** Bellman's recursion over every mask, no bound: the optimum itself. */
    private static double optimum(long state, double[] w, int n, int tolerance, Map<Long, Double> memo) {
        int union = 0;
        int fewest = 99;
        double mass = 0;
        for (int s = 0; s < 1 << n; s++) {
            if ((state >> s & 1) == 1) {
                mass += w[s];
                union |= s;
                fewest = s == 0 ? fewest : Math.min(fewest, Integer.bitCount(s));
            }
        }
        boolean notHere = (state & 1) == 1;
        if (state == 1 || !notHere && Integer.bitCount(union) - fewest <= tolerance) {
            return 0;
        }
        Double known = memo.get(state);
        if (known != null) {
            return known;
        }
        double best = Double.POSITIVE_INFINITY;
        for (int m = 1; m < 1 << n; m++) {
            long good = 0;
            for (int s = 1; s < 1 << n; s++) {
                good |= (s & ~m) == 0 ? state & 1L << s : 0;
            }
            if (good != 0 && good != state) {
                best = Math.min(
                        best,
                        mass + optimum(good, w, n, tolerance, memo) + optimum(state & ~good, w, n, tolerance, memo));
            }
        }
        memo.put(state, best);
        return best;
    }

    @ParameterizedTest(name = "{0} contacts, chance {1}, tolerance {2}, not here {3}")
    @CsvSource({"1,.3,0,0", "2,.3,0,0", "3,.3,0,0", "4,.3,0,0", "4,.5,0,.2", "4,.15,1,0", "4,.3,2,.1", "3,.7,0,.3"})
    void expectedTrialsAreTheOptimumWithinHalfAPercent(int n, double p, int tolerance, double notHere) {
        double[] prior = MaskPrior.independent(n, p);
        double[] w = new double[1 << n];
        long state = notHere > 0 ? 1 : 0;
        for (int s = 1; s < 1 << n; s++) {
            w[s] = prior[s] * (1 - notHere);
            state |= 1L << s;
        }
        w[0] = notHere;
        double best = optimum(state, w, n, tolerance, new HashMap<>());
        double ours = MaskPlan.of(ask(n, prior, tolerance, notHere, List.of())).expectedTrials();
        assertThat(ours).isBetween(best * (1 - 1e-9), best * 1.005);
    }

    @Test
    void followingThePlanFindsEveryCulpritSetAndTakesTheExpectedNumberOfTrials() {
        for (int n : new int[] {3, 5, 6, 7, 8}) {
            double[] prior = MaskPrior.independent(n, .3);
            double expected = MaskPlan.of(ask(n, prior, 0, 0, List.of())).expectedTrials();
            double mean = 0;
            for (int culprits = 1; culprits < 1 << n; culprits++) {
                List<MaskTrial> tried = new ArrayList<>();
                MaskPlan.Answer a = MaskPlan.of(ask(n, prior, 0, 0, tried));
                while (!a.done()) {
                    int next = java.util.Objects.requireNonNull(a.next());
                    tried.add(new MaskTrial(next, (culprits & ~next) == 0));
                    a = MaskPlan.of(ask(n, prior, 0, 0, tried));
                }
                assertThat(a.mask()).isEqualTo(culprits);
                mean += prior[culprits] * tried.size();
            }
            assertThat(mean).isCloseTo(expected, within(.02 * expected));
        }
    }

    @Test
    void sixteenContactsArePlannedCloseToWhatTheirUncertaintyAllows() {
        double bits = 0;
        for (double w : MaskPrior.independent(16, .3)) {
            bits += w > 0 ? -w * Math.log(w) / Math.log(2) : 0;
        }
        MaskPlan.Answer a = MaskPlan.of(ask(16, MaskPrior.independent(16, .3), 0, 0, List.of()));
        assertThat(a.expectedTrials()).isBetween(bits, bits * 1.03);
    }

    @Test
    void trialsThatContradictEachOtherAreRefused() {
        List<MaskTrial> tried = List.of(new MaskTrial(0b111, false));
        org.assertj.core.api.Assertions.assertThatThrownBy(
                        () -> MaskPlan.of(ask(3, MaskPrior.independent(3, .3), 0, 0, tried)))
                .hasMessageContaining("contradict");
        assertThat(MaskPlan.of(ask(3, MaskPrior.independent(3, .3), 0, .2, tried))
                        .notHereSure())
                .isTrue();
    }
}
