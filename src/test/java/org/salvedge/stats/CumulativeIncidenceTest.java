package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class CumulativeIncidenceTest {
    private static final double[] TIME = {3, 5, 5, 8, 10, 10, 12, 15, 15, 18, 20, 22, 25, 30, 30, 35, 40, 45, 50, 60};
    private static final int[] CAUSE = {1, 2, 1, 1, 0, 2, 1, 1, 1, 0, 2, 1, 0, 1, 2, 2, 0, 1, 2, 0};

    /**
     * R 4.2.2, survival 3.5-3: summary(survfit(Surv(TIME, factor(CAUSE, 0:2)) ~ 1)), columns time, n.risk, pstate and std.err of both
     * causes. Twenty invented durations with ties of events, causes and censoring.
     */
    @Test
    void agreesWithMultiStateSurvfit() {
        double[][] expected = {
            {3, 20, 0.05000000, 0.048733972},
            {5, 19, 0.10000000, 0.067082039},
            {8, 17, 0.15000000, 0.079843597},
            {12, 14, 0.20357143, 0.091017391},
            {15, 13, 0.31071429, 0.105638676},
            {22, 9, 0.36964286, 0.111755004},
            {30, 7, 0.43698980, 0.118117394},
            {45, 3, 0.52678571, 0.126856857},
        };
        expect(CumulativeIncidence.of(TIME, CAUSE, 1), expected);
        double[][] other = {
            {5, 19, 0.05000000, 0.048733972},
            {10, 16, 0.10000000, 0.067082039},
            {20, 10, 0.15892857, 0.084625983},
            {30, 7, 0.22627551, 0.100728711},
            {35, 5, 0.29362245, 0.111309390},
            {50, 2, 0.38341837, 0.124787884},
        };
        expect(CumulativeIncidence.of(TIME, CAUSE, 2), other);
    }

    private static void expect(CumulativeIncidence found, double[][] expected) {
        assertThat(found.steps()).hasSize(expected.length);
        for (int i = 0; i < expected.length; i++) {
            CumulativeIncidence.Step step = found.steps().get(i);
            assertThat(step.time()).isEqualTo(expected[i][0]);
            assertThat(step.atRisk()).isEqualTo((int) expected[i][1]);
            assertThat(step.incidence()).isCloseTo(expected[i][2], within(5e-9));
            assertThat(step.se()).isCloseTo(expected[i][3], within(5e-9));
        }
    }

    /** With one cause the incidence is one less the survival of Kaplan and Meier, and the error Greenwood's. */
    @Test
    void oneCauseGivesKaplanMeier() {
        Published arm = Published.table("freireich").where("arm", "6MP");
        KaplanMeier km = KaplanMeier.of(arm.numbers("weeks"), arm.flags("relapse"));
        CumulativeIncidence all = CumulativeIncidence.of(arm.numbers("weeks"), arm.integers("relapse"), 1);
        for (int i = 0; i < km.steps().size(); i++) {
            assertThat(all.steps().get(i).incidence())
                    .isCloseTo(1 - km.steps().get(i).survival(), within(1e-12));
            assertThat(all.steps().get(i).se()).isCloseTo(km.steps().get(i).se(), within(1e-12));
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void causesAndSurvivalAddUpToOne(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] time = random.ints(60, 0, 25).asDoubleStream().toArray();
        int[] cause = random.ints(60, 0, 4).toArray();
        for (double t = 0; t < 25; t++) {
            double at = t;
            boolean[] any = new boolean[60];
            for (int i = 0; i < 60; i++) {
                any[i] = cause[i] > 0;
            }
            double sum = KaplanMeier.of(time, any).at(at).survival();
            for (int k = 1; k <= 3; k++) {
                sum += CumulativeIncidence.of(time, cause, k).at(at);
            }
            assertThat(sum).isCloseTo(1, within(1e-12));
        }
    }

    @Test
    void causesAreNumberedFromOne() {
        assertThatIllegalArgumentException().isThrownBy(() -> CumulativeIncidence.of(TIME, CAUSE, 0));
    }
}
