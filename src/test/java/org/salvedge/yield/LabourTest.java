package org.salvedge.yield;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Currency;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

class LabourTest {
    @ParameterizedTest
    @CsvSource(textBlock = """
            24,     EUR, 60,       2400
            24,     EUR, 0.0125,   1
            24,     EUR, 0.012499, 0
            23.45,  EUR, 0.5,      20
            1800,   JPY, 0.05,     2
            1800,   JPY, 0.016666, 0
            7.125,  KWD, 12.4,     1473
            0,      EUR, 500,      0
            1E+2,   EUR, 60,       10000
            """)
    void labourIsRoundedHalfUpToTheMinorUnit(BigDecimal rate, String currency, BigDecimal minutes, long minor) {
        Labour labour = new Labour(rate, Currency.getInstance(currency));
        assertThat(labour.minor(minutes.movePointRight(6).longValueExact())).isEqualTo(minor);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void labourIsExactForAnyRateAndTime(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int i = 0; i < 3_000; i++) {
            BigDecimal rate = BigDecimal.valueOf(random.nextLong(1L << random.nextInt(1, 50)), random.nextInt(0, 12));
            Currency currency =
                    Currency.getInstance(List.of("JPY", "EUR", "KWD").get(random.nextInt(3)));
            long micros = random.nextLong(1L << random.nextInt(1, 50));
            BigDecimal exact = rate.movePointRight(currency.getDefaultFractionDigits())
                    .multiply(BigDecimal.valueOf(micros))
                    .divide(BigDecimal.valueOf(60_000_000), 0, RoundingMode.HALF_UP);
            if (exact.unscaledValue().bitLength() < Long.SIZE) {
                assertThat(new Labour(rate, currency).minor(micros))
                        .as("%s %s for %s", rate, currency, micros)
                        .isEqualTo(exact.longValueExact());
            }
        }
    }

    @Test
    void aDayOfWorkAtAnyRateFits() {
        assertThat(new Labour(new BigDecimal("123456.789"), Currency.getInstance("EUR")).minor(1_440_000_000L))
                .isEqualTo(296_296_294L);
    }
}
