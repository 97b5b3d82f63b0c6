package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class KaplanMeierTest {
    private static KaplanMeier arm(String name) {
        Published arm = Published.table("freireich").where("arm", name);
        return KaplanMeier.of(arm.numbers("weeks"), arm.flags("relapse"));
    }

    private static double[] column(KaplanMeier km, ToDoubleFunction<KaplanMeier.Step> of) {
        return km.steps().stream().mapToDouble(of).toArray();
    }

    /**
     * E. J. Freireich et al., Blood 21 (1963) 699-716; the table as in Klein and Moeschberger, "Survival Analysis", section 4.2.
     */
    @Test
    void sixMpArmOfFreireich() {
        KaplanMeier km = arm("6MP");
        assertThat(column(km, KaplanMeier.Step::time)).containsExactly(6, 7, 10, 13, 16, 22, 23);
        assertThat(column(km, KaplanMeier.Step::atRisk)).containsExactly(21, 17, 15, 12, 11, 7, 6);
        assertThat(column(km, KaplanMeier.Step::events)).containsExactly(3, 1, 1, 1, 1, 1, 1);
        assertThat(column(km, KaplanMeier.Step::survival))
                .containsExactly(new double[] {.8571, .8067, .7529, .6902, .6275, .5378, .4482}, within(5e-5));
        assertThat(column(km, KaplanMeier.Step::se))
                .containsExactly(new double[] {.0764, .0869, .0963, .1068, .1141, .1282, .1346}, within(5e-5));
        assertThat(km.median()).isEqualTo(23);
        assertThat(km.atRisk(0)).isEqualTo(21);
        assertThat(km.atRisk(10)).isEqualTo(15);
    }

    /** The same study's placebo arm, which nobody left early. */
    @Test
    void placeboArmOfFreireich() {
        KaplanMeier km = arm("PLACEBO");
        assertThat(column(km, KaplanMeier.Step::time)).containsExactly(1, 2, 3, 4, 5, 8, 11, 12, 15, 17, 22, 23);
        assertThat(column(km, KaplanMeier.Step::survival))
                .containsExactly(
                        new double[] {.9048, .8095, .7619, .6667, .5714, .3810, .2857, .1905, .1429, .0952, .0476, 0},
                        within(5e-5));
        assertThat(Arrays.copyOf(column(km, KaplanMeier.Step::se), 11))
                .containsExactly(
                        new double[] {.0641, .0857, .0929, .1029, .1080, .1060, .0986, .0857, .0764, .0641, .0465},
                        within(5e-5));
        assertThat(km.at(23).se()).isNaN();
        assertThat(km.median()).isEqualTo(8);
    }

    /** C. L. Loprinzi et al., J. Clin. Oncol. 12 (1994) 601-607; R 4.2.2, survival 3.5-3: survfit(Surv(time, dead) ~ 1). */
    @Test
    void lungCancerMedianWithLimitsOnTheLogarithm() {
        Published lung = Published.table("lung");
        KaplanMeier km = KaplanMeier.of(lung.numbers("time"), lung.flags("dead"));
        assertThat(km.steps().stream().mapToInt(KaplanMeier.Step::events).sum()).isEqualTo(165);
        assertThat(km.median()).isEqualTo(310);
        assertThat(km.medianInterval(0.95)).isEqualTo(new Interval(285, 363));
        assertThat(km.at(180).survival()).isCloseTo(.7217, within(5e-5));
        assertThat(km.at(180).se()).isCloseTo(.0298, within(5e-5));
        assertThat(km.at(365).survival()).isCloseTo(.4092, within(5e-5));
        assertThat(km.at(365).se()).isCloseTo(.0358, within(5e-5));
        assertThat(km.at(365).interval(0.95).low()).isCloseTo(.3447, within(5e-5));
        assertThat(km.at(365).interval(0.95).high()).isCloseTo(.4858, within(5e-5));
    }

    /** The documented output of survfit(Surv(time, dead) ~ sex) on the same data. */
    @Test
    void lungCancerMediansBySex() {
        Published men = Published.table("lung").where("sex", "1");
        KaplanMeier km = KaplanMeier.of(men.numbers("time"), men.flags("dead"));
        assertThat(km.median()).isEqualTo(270);
        assertThat(km.medianInterval(0.95)).isEqualTo(new Interval(212, 310));
        Published women = Published.table("lung").where("sex", "2");
        km = KaplanMeier.of(women.numbers("time"), women.flags("dead"));
        assertThat(km.median()).isEqualTo(426);
        assertThat(km.medianInterval(0.95)).isEqualTo(new Interval(348, 550));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void withoutCensoringItIsTheShareStillThere(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] time = random.ints(50, 1, 30).asDoubleStream().toArray();
        boolean[] event = new boolean[50];
        Arrays.fill(event, true);
        KaplanMeier km = KaplanMeier.of(time, event);
        for (double t = 0; t <= 30; t++) {
            double at = t;
            double share = Arrays.stream(time).filter(x -> x > at).count() / 50.0;
            assertThat(km.at(t).survival()).isCloseTo(share, within(1e-12));
            if (share > 0) {
                assertThat(km.at(t).se()).isCloseTo(Math.sqrt(share * (1 - share) / 50), within(1e-12));
            }
        }
    }

    @Test
    void aMedianNotReachedIsInfinite() {
        KaplanMeier km = KaplanMeier.of(new double[] {1, 2, 3}, new boolean[] {true, false, false});
        assertThat(km.median()).isInfinite();
        assertThat(km.medianInterval(0.95).high()).isInfinite();
        assertThat(KaplanMeier.of(new double[0], new boolean[0]).median()).isInfinite();
    }

    @Test
    void negativeDurationsAreRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> KaplanMeier.of(new double[] {-1}, new boolean[] {true}))
                .withMessage("duration -1.0");
    }
}
