package org.salvedge.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class QuantityTest {
    @ParameterizedTest
    @CsvSource({"12.50,12.5", "55,55", "55.000,55", "0.000001,0.000001", "0,0", "-1.20,-1.2", "1e1,10"})
    void isWrittenWithoutTrailingZeros(String text, String written) {
        assertThat(Quantity.parse(text)).hasToString(written);
    }

    @Test
    void keepsSixDecimalsAndRefusesMore() {
        assertThat(Quantity.parse("24.123456").millionths()).isEqualTo(24_123_456);
        assertThatThrownBy(() -> Quantity.parse("0.0000001")).isInstanceOf(ArithmeticException.class);
        assertThatThrownBy(() -> Quantity.of(Long.MAX_VALUE)).isInstanceOf(ArithmeticException.class);
    }

    @Test
    void textAndBackIsTheSame() {
        SplittableRandom random = new SplittableRandom(1);
        for (int i = 0; i < 1000; i++) {
            Quantity quantity = new Quantity(random.nextLong(1_000_000_000_000L));
            assertThat(Quantity.parse(quantity.toString())).isEqualTo(quantity);
        }
    }
}
