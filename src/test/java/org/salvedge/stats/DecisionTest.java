package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class DecisionTest {
    /** H. Raiffa, "Decision Analysis" (1968), chapter 2: the oil wildcatter; likelihoods also in SAS/OR, PROC DTREE, table 7.2. */
    @Test
    void oilWildcatter() {
        FiniteDecision d = FiniteDecision.of(new double[] {.5, .3, .2}, new double[][] {{-70, 50, 200}, {0, 0, 0}});
        double[][] seismic = {{.6, .3, .1}, {.3, .4, .3}, {.1, .4, .5}};
        assertThat(d.best()).isZero();
        assertThat(d.value()).isCloseTo(20, within(1e-9));
        assertThat(d.evpi()).isCloseTo(35, within(1e-9));
        double[] chance = {.41, .35, .24};
        double[] drill = {-30.4878, 32.8571, 87.5};
        for (int k = 0; k < 3; k++) {
            assertThat(d.chance(seismic, k)).isCloseTo(chance[k], within(1e-9));
            assertThat(d.after(seismic, k).expected(0)).isCloseTo(drill[k], within(5e-5));
        }
        assertThat(d.value() + d.evsi(seismic)).isCloseTo(32.5, within(1e-9));
        assertThat(d.evsi(seismic)).isCloseTo(12.5, within(1e-9));
        assertThat(d.evsi(seismic) - 10).isCloseTo(2.5, within(1e-9));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void aLookIsWorthAtLeastNothingAndAtMostCertainty(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int states = 2 + random.nextInt(4);
        double[][] payoff = new double[3][];
        Arrays.setAll(payoff, a -> random.doubles(states, -10, 10).toArray());
        double[][] likelihood = new double[states][];
        Arrays.setAll(likelihood, s -> chances(random, 3));
        FiniteDecision d = FiniteDecision.of(chances(random, states), payoff);
        assertThat(d.evsi(likelihood)).isBetween(0.0, d.evpi() + 1e-12);
        double[][] certain = new double[states][states];
        double[][] nothing = new double[states][1];
        for (int s = 0; s < states; s++) {
            certain[s][s] = 1;
            nothing[s][0] = 1;
        }
        assertThat(d.evsi(certain)).isCloseTo(d.evpi(), within(1e-12));
        assertThat(d.evsi(nothing)).isCloseTo(0, within(1e-12));
    }

    private static double[] chances(SplittableRandom random, int n) {
        double[] p = random.doubles(n).toArray();
        double sum = Arrays.stream(p).sum();
        return Arrays.stream(p).map(x -> x / sum).toArray();
    }

    @Test
    void chancesThatDoNotAddUpAreRefused() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> FiniteDecision.of(new double[] {.5, .4}, new double[][] {{1, 2}}))
                .withMessageContaining("0.9");
    }

    /** G. Cachon and C. Terwiesch, "Matching Supply with Demand", chapter 12: a seasonal wetsuit, with exact normal quantiles. */
    @Test
    void newsvendorWithNormalDemand() {
        Newsvendor n = new Newsvendor(190, 110, 90, 3192, 1181);
        assertThat(n.criticalRatio()).isCloseTo(0.8, within(1e-12));
        assertThat(n.bestQuantity()).isCloseTo(4185.95, within(5.1e-3));
        assertThat(n.lostSales(3500)).isCloseTo(333.08, within(5.1e-3));
        assertThat(n.sales(3500)).isCloseTo(2858.92, within(5.1e-3));
        assertThat(n.leftover(3500)).isCloseTo(641.08, within(5.1e-3));
        assertThat(n.profit(3500)).isCloseTo(215891.68, within(5.1e-3));
        // At the optimum the profit is (price - cost) x mean - (price - salvage) x sd x density(z).
        assertThat(n.profit(n.bestQuantity())).isCloseTo(80 * 3192 - 100 * 1181 * 0.2799619, within(.05));
        assertThat(n.profit(n.bestQuantity())).isGreaterThan(n.profit(4100)).isGreaterThan(n.profit(4300));
    }

    /** M. L. Weitzman, Econometrica 47 (1979) 641-654, section 1: alpha (15 for 100 or 55), omega (20 for 240 or nothing). */
    @Test
    void pandorasBoxes() {
        double[] alpha = {55, 100};
        double[] omega = {240, 0};
        double alphaValue = ReservationValue.of(alpha, new double[] {.5, .5}, 15);
        double omegaValue = ReservationValue.of(omega, new double[] {.2, .8}, 20);
        assertThat(alphaValue).isCloseTo(70, within(1e-6));
        assertThat(omegaValue).isCloseTo(140, within(1e-6));
        // Both orders by enumeration: the second box is opened where its reservation value beats the prize in hand.
        double openAlpha = -15 + .5 * 100 + .5 * 55;
        double openOmega = -20 + .2 * 240;
        assertThat(new double[] {openAlpha, openOmega}).containsExactly(new double[] {62.5, 28}, within(1e-9));
        double omegaFirst = -20 + .2 * Math.max(240, openAlpha) + .8 * Math.max(0, openAlpha);
        double alphaFirst =
                -15 + .5 * Math.max(100, -20 + .2 * 240 + .8 * 100) + .5 * Math.max(55, -20 + .2 * 240 + .8 * 55);
        assertThat(omegaFirst).isCloseTo(78, within(1e-9));
        assertThat(alphaFirst).isCloseTo(75, within(1e-9));
        assertThat(omegaValue > alphaValue).isEqualTo(omegaFirst > alphaFirst);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4})
    void atItsReservationValueABoxIsWorthItsCost(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        double[] draws = random.doubles(30, -50, 200).toArray();
        double cost = 60 * random.nextDouble();
        double z = ReservationValue.ofDraws(draws, cost);
        assertThat(Arrays.stream(draws).map(x -> Math.max(0, x - z)).average().getAsDouble())
                .isCloseTo(cost, within(1e-9));
    }

    /** L. Moser, Scripta Mathematica 22 (1956) 289-292: uniform offers without recall. */
    @Test
    void sellingWithinTenOffers() {
        double[] values = OfferStopping.values(10, z -> (1 + Math.pow(Math.max(0, z), 2)) / 2, 0);
        assertThat(values)
                .containsExactly(
                        new double[] {
                            .5, .625, .6953125, .7417297, .7750815, .8003757, .8203006, .8364465, .8498214, .8610982
                        },
                        within(5e-8));
    }

    /** J. P. Gilbert and F. Mosteller, JASA 61 (1966) 35-73, table 2. */
    @ParameterizedTest(name = "best of {0}")
    @CsvSource({
        "3, 2, 0.5",
        "4, 2, 0.458333333",
        "5, 3, 0.433333333",
        "10, 4, 0.3986905",
        "20, 8, 0.3842089",
        "100, 38, 0.3710428"
    })
    void bestChoice(int n, int first, double chance) {
        BestChoice rule = BestChoice.of(n);
        assertThat(rule.first()).isEqualTo(first);
        assertThat(rule.chance()).isCloseTo(chance, within(5e-8));
    }

    /**
     * W. F. Samuelson and M. H. Bazerman (1985): value uniform on 0 to 100, accepted if the bid reaches it, worth half as much again to
     * the buyer. On a grid of 100,000 middles the mean is exact at whole bids.
     */
    @Test
    void acquiringACompany() {
        double[] value = new double[100_000];
        Arrays.setAll(value, i -> (i + 0.5) / 1000);
        double[] worth = Arrays.stream(value).map(v -> 1.5 * v).toArray();
        double[] more = Arrays.stream(value).map(v -> 2.5 * v).toArray();
        assertThat(SealedBid.expectedProfit(20, worth, value)).isCloseTo(-1, within(1e-9));
        assertThat(SealedBid.expectedProfit(60, worth, value)).isCloseTo(-9, within(1e-9));
        assertThat(SealedBid.expectedProfit(100, worth, value)).isCloseTo(-25, within(1e-9));
        assertThat(SealedBid.expectedProfit(0, worth, value)).isZero();
        assertThat(SealedBid.expectedProfit(60, more, value)).isCloseTo(9, within(1e-9));
    }

    /**
     * W. Vickrey, Journal of Finance 16 (1961) 8-37: with n bidders of uniform values each bids (n-1)/n of it. Against rivals who do, no
     * bid on a fine grid brings more than that one.
     */
    @ParameterizedTest(name = "{0} bidders")
    @ValueSource(ints = {2, 3, 5})
    void firstPriceBidIsABestReply(int n) {
        double[] rivals = new double[20_000];
        // The highest of n - 1 uniform values by its quantiles, shaded.
        Arrays.setAll(rivals, i -> (n - 1.0) / n * Math.pow((i + 0.5) / rivals.length, 1.0 / (n - 1)));
        double[] worth = new double[rivals.length];
        Arrays.fill(worth, 0.8);
        double equilibrium = (n - 1.0) / n * 0.8;
        double best = SealedBid.expectedProfit(equilibrium, worth, rivals);
        for (double bid = 0.01; bid < 0.8; bid += 0.01) {
            assertThat(SealedBid.expectedProfit(bid, worth, rivals)).isLessThan(best + 5e-5);
        }
    }
}
