package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;

class LogRankTest {
    private static boolean[] equal(int[] values, int to) {
        boolean[] flags = new boolean[values.length];
        for (int i = 0; i < values.length; i++) {
            flags[i] = values[i] == to;
        }
        return flags;
    }

    /**
     * Freireich's two arms: chi-squared 16.79 as printed in D. G. Kleinbaum and M. Klein, "Survival Analysis", chapter 2; the rest by
     * R 4.2.2, survival 3.5-3: survdiff(Surv(weeks, relapse) ~ arm).
     */
    @Test
    void sixMpAgainstPlacebo() {
        Published both = Published.table("freireich");
        Published drug = both.where("arm", "6MP");
        Published placebo = both.where("arm", "PLACEBO");
        double[] time = new double[42];
        boolean[] event = new boolean[42];
        boolean[] first = new boolean[42];
        for (int i = 0; i < 21; i++) {
            time[i] = drug.numbers("weeks")[i];
            event[i] = drug.flags("relapse")[i];
            first[i] = true;
            time[21 + i] = placebo.numbers("weeks")[i];
            event[21 + i] = placebo.flags("relapse")[i];
        }
        LogRank test = LogRank.of(time, event, first);
        assertThat(test.chiSquared()).isCloseTo(16.79, within(5e-3)).isCloseTo(16.79294, within(5e-5));
        assertThat(test.observed()).isEqualTo(9);
        assertThat(test.observedOther()).isEqualTo(21);
        assertThat(test.expected()).isCloseTo(19.2505, within(5e-5));
        assertThat(test.expectedOther()).isCloseTo(10.7495, within(5e-5));
        assertThat(test.variance()).isCloseTo(6.25696, within(5e-5));
        assertThat(test.p()).isCloseTo(4.169e-5, within(5e-9));
    }

    /** NCCTG lung cancer by sex: R 4.2.2, survival 3.5-3, survdiff(Surv(time, dead) ~ sex). */
    @Test
    void lungCancerBySex() {
        Published lung = Published.table("lung");
        LogRank test = LogRank.of(lung.numbers("time"), lung.flags("dead"), equal(lung.integers("sex"), 1));
        assertThat(test.chiSquared()).isCloseTo(10.3267, within(5e-5));
        assertThat(test.observed()).isEqualTo(112);
        assertThat(test.observedOther()).isEqualTo(53);
        assertThat(test.expected()).isCloseTo(91.5817, within(5e-5));
        assertThat(test.expectedOther()).isCloseTo(73.4183, within(5e-5));
    }

    @Test
    void groupsWithoutEventsTellNothing() {
        LogRank test = LogRank.of(new double[] {1, 2}, new boolean[2], new boolean[] {true, false});
        assertThat(test.p()).isEqualTo(1);
    }
}
