package org.salvedge.worth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import java.util.Currency;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.shop.Money;

class TermsTest {
    private static final Currency EUR = Currency.getInstance("EUR");

    private static Money eur(String amount) {
        return Money.parse(amount, EUR);
    }

    private static Predictive lot(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        return new Predictive(
                random.ints(999, 0, 500_000).mapToDouble(i -> i / 100.0).toArray());
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void highestBidIsTheLargestPriceThatKeepsItsPromise(long seed) {
        Predictive recovery = lot(seed);
        Terms terms = new Terms(new BigDecimal("12.5"), eur("100.00"), eur("7.50"));
        Money bid = terms.highestBid(recovery, 0.8, 0.1).orElseThrow();
        assertThat(chance(recovery, terms, bid, 0.1)).isGreaterThanOrEqualTo(0.8);
        assertThat(chance(recovery, terms, bid.plus(eur("0.01")), 0.1)).isLessThan(0.8);
    }

    private static double chance(Predictive recovery, Terms terms, Money price, double target) {
        double needed = terms.outlay(price).toDoubleForStatistics() * (1 + target);
        return 1 - recovery.below(needed - 1e-9);
    }

    @Test
    void breakEvenLeavesNothingOnAverage() {
        Predictive recovery = new Predictive(new double[] {100, 300});
        Terms terms = new Terms(BigDecimal.TEN, eur("20.00"), eur("0.00"));
        Money price = terms.breakEven(recovery).orElseThrow();
        assertThat(price).isEqualTo(eur("163.64"));
        assertThat(terms.outlay(price)).isEqualTo(eur("200.00"));
    }

    @Test
    void noPriceWhereEvenFreightIsNotEarned() {
        Predictive recovery = new Predictive(new double[] {-5, 30});
        Terms terms = new Terms(BigDecimal.ZERO, eur("40.00"), eur("0.00"));
        assertThat(terms.highestBid(recovery, 0.5, 0)).isEmpty();
        assertThat(terms.breakEven(recovery)).isEmpty();
    }

    @Test
    void aCertainPromiseIsRefused() {
        Terms terms = Terms.none(EUR);
        assertThatIllegalArgumentException().isThrownBy(() -> terms.highestBid(lot(1), 1, 0));
        assertThatIllegalArgumentException().isThrownBy(() -> terms.highestBid(lot(1), 0.8, -1));
    }
}
