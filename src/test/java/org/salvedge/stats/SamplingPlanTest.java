package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class SamplingPlanTest {
    /** NIST/SEMATECH e-Handbook, section 6.2.3.2: plan (52, 3); its table has three digits, two of them off by one. */
    @Test
    void operatingCharacteristicOf52With3() {
        SamplingPlan plan = new SamplingPlan(52, 3);
        double[] exact = {.9982, .9798, .9295, .8460, .7383, .6196, .5018, .3938, .3003, .2232, .1621, .1152};
        double[] printed = {.998, .980, .930, .845, .739, .620, .502, .394, .300, .223, .162, .115};
        for (int k = 0; k < 12; k++) {
            double found = plan.acceptance((k + 1) / 100.0);
            assertThat(found).isCloseTo(exact[k], within(5e-5)).isCloseTo(printed[k], within(1.5e-3));
        }
        assertThat(plan.outgoing(10_000, 0.03)).isCloseTo(.0277, within(5e-5));
        assertThat(plan.inspected(10_000, 0.03)).isCloseTo(753.0, within(.05));
    }

    /** D. C. Montgomery, 6th ed., section 3.2.1: lot of 100 with 5 nonconforming, sample of 10. */
    @Test
    void hypergeometricAcceptance() {
        double[] exactly = {.583752, .339391, .070219, .006384};
        double below = 0;
        for (int k = 0; k <= 3; k++) {
            double atMost = new SamplingPlan(10, k).acceptance(100, 5);
            assertThat(atMost - below).isCloseTo(exactly[k], within(5e-7));
            below = atMost;
        }
        assertThat(new SamplingPlan(10, 1).acceptance(100, 5)).isCloseTo(.923143, within(5e-7));
    }

    /** C. D. Broad, Mind 27 (1918) 389-404; H. Jeffreys, "Theory of Probability" (1961), section 3.2: 20 in all, 5 inspected. */
    @ParameterizedTest(name = "{0} good of 5")
    @CsvSource({"5, 0.285714, 12.857143, 0.771930", "4, 0.0714286, 10.714286, 0.449948"})
    void restOfALot(int good, double all, double mean, double atLeast12) {
        BetaBinomial rest = SamplingPlan.restOfLot(20, 5, good);
        assertThat(rest.probability(15)).isCloseTo(all, within(5e-7));
        assertThat(rest.mean()).isCloseTo(mean, within(5e-7));
        assertThat(rest.atLeast(12)).isCloseTo(atLeast12, within(5e-7));
    }

    /** MIL-STD-105E (1989), tables I and II-A: lot of 2000 at level II, AQL 0.65: letter K, n = 125, accept 2. */
    @Test
    void singlePlanOfALotOf2000() {
        SamplingPlan plan = new SamplingPlan(125, 2);
        assertThat(plan.acceptance(.0065)).isCloseTo(.951331, within(1e-6));
        assertThat(plan.acceptance(.05)).isCloseTo(.047704, within(1e-6));
    }

    /** G. J. Hahn and W. Q. Meeker, "Statistical Intervals", chapter 6. */
    @ParameterizedTest(name = "confidence {0}, reliability {1}")
    @CsvSource({"0.95, 0.95, 59", "0.95, 0.99, 299", "0.90, 0.90, 22"})
    void zeroFailureSizes(double confidence, double reliability, int n) {
        assertThat(SamplingPlan.withoutFailure(confidence, reliability)).isEqualTo(n);
        assertThat(new SamplingPlan(n, 0).acceptance(1 - reliability)).isLessThanOrEqualTo(1 - confidence);
        assertThat(new SamplingPlan(n - 1, 0).acceptance(1 - reliability)).isGreaterThan(1 - confidence);
    }

    @Test
    void moreGoodThanInspectedIsRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> SamplingPlan.restOfLot(20, 5, 6))
                .withMessage("6 good of 5 inspected of 20");
    }
}
