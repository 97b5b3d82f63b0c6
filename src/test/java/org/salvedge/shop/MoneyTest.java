package org.salvedge.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.salvedge.shop.Facts.EUR;
import static org.salvedge.shop.Facts.eur;

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
    /** ISO 4217:2015, table A.1: minor units. */
    @ParameterizedTest
    @CsvSource({"JPY,1234,1234", "EUR,12.34,1234", "KWD,1.234,1234", "EUR,12.5,1250", "EUR,-0.05,-5"})
    void keepsTheMinorDigitsOfItsCurrency(String currency, String text, long minor) {
        assertThat(Money.parse(text, Currency.getInstance(currency)).minor()).isEqualTo(minor);
    }

    @ParameterizedTest
    @CsvSource({"JPY,0.5", "EUR,0.005", "KWD,0.0001"})
    void refusesAFractionOfAMinorUnit(String currency, String text) {
        assertThatThrownBy(() -> Money.parse(text, Currency.getInstance(currency)))
                .isInstanceOf(ArithmeticException.class);
    }

    @Test
    void isWrittenWithAllItsDigits() {
        assertThat(eur("12.5")).hasToString("12.50");
        assertThat(new Money(5, EUR)).hasToString("0.05");
        assertThat(new Money(-5, EUR)).hasToString("-0.05");
        assertThat(new Money(7, Currency.getInstance("JPY"))).hasToString("7");
        assertThat(new Money(7, Currency.getInstance("KWD"))).hasToString("0.007");
    }

    @Test
    void doesNotMixCurrencies() {
        Money yen = new Money(1, Currency.getInstance("JPY"));

        assertThatThrownBy(() -> eur("1.00").plus(yen)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> eur("1.00").compareTo(yen)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new Money(1, Currency.getInstance("XAU")))
                .isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void overflowIsNoAmount() {
        Money largest = new Money(Long.MAX_VALUE, EUR);

        assertThatThrownBy(() -> largest.plus(new Money(1, EUR))).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> new Money(Long.MIN_VALUE, EUR).negated()).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> new Money(Long.MIN_VALUE, EUR).minus(new Money(1, EUR)))
                .isInstanceOf(ArithmeticException.class);
    }

    @Test
    void roundsOnlyWhereARoundingModeIsGiven() {
        assertThat(eur("10.00").times(new BigDecimal("0.3333"), RoundingMode.HALF_UP))
                .isEqualTo(eur("3.33"));
        assertThat(eur("0.05").times(new BigDecimal("0.5"), RoundingMode.HALF_UP))
                .isEqualTo(eur("0.03"));
        assertThatThrownBy(() -> eur("0.05").times(new BigDecimal("0.5"), RoundingMode.UNNECESSARY))
                .isInstanceOf(ArithmeticException.class);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8})
    void noCentIsLostInSharesAndNoneIsOffByMoreThanOne(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int round = 0; round < 50; round++) {
            BigInteger[] weights = new BigInteger[random.nextInt(1, 20)];
            BigInteger sum = BigInteger.ZERO;
            for (int i = 0; i < weights.length; i++) {
                weights[i] = BigInteger.valueOf(random.nextLong(1, 1_000_000));
                sum = sum.add(weights[i]);
            }
            Money total = new Money(random.nextLong(1_000_000), EUR);
            List<Money> shares = total.allocate(weights);
            Money added = Money.zero(EUR);
            for (int i = 0; i < weights.length; i++) {
                added = added.plus(shares.get(i));
                BigInteger[] exact =
                        BigInteger.valueOf(total.minor()).multiply(weights[i]).divideAndRemainder(sum);
                assertThat(shares.get(i).minor() - exact[0].longValueExact()).isBetween(0L, 1L);
            }
            assertThat(added).isEqualTo(total);
        }
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void textAndBackIsTheSame(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (String code : List.of("JPY", "EUR", "KWD")) {
            Currency currency = Currency.getInstance(code);
            for (int i = 0; i < 200; i++) {
                Money money = new Money(random.nextLong(-1_000_000_000_000L, 1_000_000_000_000L), currency);
                assertThat(Money.parse(money.toString(), currency)).isEqualTo(money);
            }
        }
    }
}
