package org.salvedge.yield;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.shop.Refused;

class KeyTest {
    @Test
    void keysKeepTheOrderTheyWereGivenIn() {
        assertThat(Key.parse("fix, family,month")).containsExactly(Key.FIX, Key.FAMILY, Key.MONTH);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "family,", "colour", "Family", "family,family"})
    void whatIsNoKeyIsRefusedWithTheKeysThereAre(String text) {
        assertThatThrownBy(() -> Key.parse(text)).isInstanceOf(Refused.class).hasMessageContaining("--by");
    }

    @Test
    void everyKeyIsListedOnce() {
        assertThat(Key.all()).containsExactlyInAnyOrder(Key.values());
        assertThatThrownBy(() -> Key.parse("x"))
                .hasMessage(
                        "--by: \"x\" is not a key. Give one or more of family, maker, model, inches, supplier, lot, claimed,"
                                + " grade, month, fault, fix, technician, with commas between");
    }
}
