package org.salvedge.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;

import java.nio.charset.StandardCharsets;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class TextTest {
    /** U+FF5E stands before U+1F4FA by code point, after it by UTF-16 unit. */
    @Test
    void sortsByCodePointNotByUtf16Unit() {
        String wave = "\uFF5E";
        String television = "\uD83D\uDCFA";

        assertThat(Text.CODE_POINTS.compare(wave, television)).isNegative();
        assertThat(wave.compareTo(television)).isPositive();
    }

    /** The order of UTF-8 bytes is that of code points (RFC 3629, section 1). */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3})
    void agreesWithTheOrderOfUtf8Bytes(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        int[] points = {'A', 'a', '-', 0xe9, 0x20ac, 0xd7ff, 0xe000, 0xff5e, 0xffff, 0x10000, 0x1f4fa, 0x10ffff};
        List<String> texts = new ArrayList<>();
        for (int i = 0; i < 300; i++) {
            StringBuilder text = new StringBuilder();
            for (int n = random.nextInt(4); n >= 0; n--) {
                text.appendCodePoint(points[random.nextInt(points.length)]);
            }
            texts.add(text.toString());
        }
        List<String> byBytes = new ArrayList<>(texts);
        byBytes.sort((a, b) ->
                Arrays.compareUnsigned(a.getBytes(StandardCharsets.UTF_8), b.getBytes(StandardCharsets.UTF_8)));
        texts.sort(Text.CODE_POINTS);

        assertThat(texts).isEqualTo(byBytes);
    }

    @ParameterizedTest
    @ValueSource(strings = {"", " L1", "L1 ", "L\u0000", "L\n1", "L\u001b[1m", "L\u0085"})
    void aLabelHasNoSpacesAtItsEndsAndNoControlCharacters(String label) {
        assertThatThrownBy(() -> new UnitId(label)).isInstanceOf(IllegalArgumentException.class);
        assertThatThrownBy(() -> new LotId(label)).isInstanceOf(IllegalArgumentException.class);
    }

    @Test
    void aLabelMayHoldAnythingElseUpToAHundredCharacters() {
        assertThat(new UnitId("Löt 7 – \uD83D\uDCFA")).hasToString("Löt 7 – \uD83D\uDCFA");
        assertThat(new UnitId("x".repeat(100)).value()).hasSize(100);
        assertThatThrownBy(() -> new UnitId("x".repeat(101))).isInstanceOf(IllegalArgumentException.class);
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "a\u001b",
                "\u009b",
                "\u202e",
                "x\u2066y",
                "\u200f",
                "\u2028",
                "\ud83d",
                "\ude00",
                "a\udb40\udc41",
                "\ufeffa"
            })
    void whatATerminalMayObeyIsFoundWhereverItStands(String text) {
        assertThat(Text.holdsCommand(text)).isTrue();
        assertThat(Text.holdsCommand("L0042 \ud83d\udcfa " + text)).isTrue();
    }

    @ParameterizedTest
    @ValueSource(strings = {"", "L0042-007", "Löt 7 – \ud83d\udcfa", "\u0e01\u200d", "so\u00adft"})
    void lettersOfAnyScriptAreNoCommand(String text) {
        assertThat(Text.holdsCommand(text)).isFalse();
    }
}
