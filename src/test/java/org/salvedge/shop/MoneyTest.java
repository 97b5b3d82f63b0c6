package org.salvedge.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatExceptionOfType;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.Currency;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class MoneyTest {
    private static final Currency EUR = Currency.getInstance("EUR");

    /** ISO 4217:2015, list one: minor units. */
    @ParameterizedTest(name = "{0}")
    @CsvSource({
        "USD, 2, 12.50",
        "EUR, 2, 12.50",
        "GBP, 2, 12.50",
        "CHF, 2, 12.50",
        "JPY, 0, 12",
        "KRW, 0, 12",
        "KWD, 3, 12.500"
    })
    void eachCurrencyHasItsDigits(String code, int digits, String twelve) {
        Currency currency = Currency.getInstance(code);
        assertThat(currency.getDefaultFractionDigits()).isEqualTo(digits);
        BigDecimal amount = new BigDecimal(digits == 0 ? "12" : "12.5");
        assertThat(Money.of(amount, currency)).hasToString(twelve);
        assertThat(Money.of(amount, currency).minor())
                .isEqualTo(amount.movePointRight(digits).longValueExact());
        BigDecimal tooFine = BigDecimal.ONE.movePointLeft(digits + 1);
        assertThatExceptionOfType(ArithmeticException.class).isThrownBy(() -> Money.of(tooFine, currency));
    }

    /** ISO 4217:2015: gold has no minor unit. */
    @Test
    void goldIsNotACurrencyToKeepBooksIn() {
        Currency gold = Currency.getInstance("XAU");
        assertThat(gold.getDefaultFractionDigits()).isEqualTo(-1);
        assertThatIllegalArgumentException().isThrownBy(() -> Money.zero(gold));
    }

    @Test
    void currenciesDoNotMix() {
        Money yen = new Money(5, Currency.getInstance("JPY"));
        assertThatIllegalArgumentException().isThrownBy(() -> Money.zero(EUR).plus(yen));
        assertThatIllegalArgumentException().isThrownBy(() -> Money.zero(EUR).compareTo(yen));
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5})
    void sharesAddUpAndTextReadsBack(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        Money total = new Money(random.nextLong(-1_000_000, 1_000_000), EUR);
        BigInteger[] weights = random.longs(1 + random.nextInt(20), 0, 100)
                .mapToObj(BigInteger::valueOf)
                .toArray(BigInteger[]::new);
        List<Money> shares = total.allocate(weights);
        assertThat(shares.stream().reduce(Money.zero(EUR), Money::plus)).isEqualTo(total);
        assertThat(Money.parse(total.toString(), EUR)).isEqualTo(total);
        assertThat(total.minus(total)).isEqualTo(Money.zero(EUR));
        assertThat(total.negated().negated()).isEqualTo(total);
    }

    @Test
    void roundingHappensOnlyWhereItIsAsked() {
        Money five = Money.parse("0.05", EUR);
        assertThat(five.times(new BigDecimal("0.5"), RoundingMode.HALF_EVEN)).hasToString("0.02");
        assertThat(five.times(new BigDecimal("0.5"), RoundingMode.HALF_UP)).hasToString("0.03");
    }

    @Test
    void overflowIsRefused() {
        Money most = new Money(Long.MAX_VALUE, EUR);
        assertThatExceptionOfType(ArithmeticException.class).isThrownBy(() -> most.plus(new Money(1, EUR)));
    }
}
