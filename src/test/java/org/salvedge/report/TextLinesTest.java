package org.salvedge.report;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.List;
import org.junit.jupiter.api.Test;

class TextLinesTest {
    /** Helvetica at 10 points: "i" is 2.22 points wide, "W" 9.44; a column of ten characters has 52.5. */
    @Test
    void linesFollowTheWidthsOfLettersNotTheirNumber() {
        assertThat(TextLines.of("i".repeat(22), 10)).isEqualTo(1);
        assertThat(TextLines.of("W".repeat(22), 10)).isEqualTo(5);
        assertThat(TextLines.of("", 10)).isEqualTo(1);
    }

    /** A character of a column's width has 5.25 points; letters are taken for 2 % wider than the font's metrics. */
    @Test
    void capitalsNeedMoreRoomThanTheirNumber() {
        assertThat(TextLines.characters("WWWW")).isEqualTo(8);
        assertThat(TextLines.characters("iiii")).isEqualTo(2);
        assertThat(TextLines.of("LU40M16", TextLines.characters("LU40M16"))).isEqualTo(1);
        assertThat(TextLines.characters("LU40M16")).isEqualTo(9);
    }

    @Test
    void aLineIsBrokenBetweenWords() {
        assertThat(TextLines.of("WWWWW WWWWW WWWWW", 10)).isEqualTo(3);
        assertThat(TextLines.of("a b c d e f", 10)).isEqualTo(1);
    }

    @Test
    void aNumberStaysWithItsSignItsThousandsAndItsUnit() {
        assertThat(Unbroken.text("of 4 270.50 EUR, 64.9 % (95 %: -1.5 to 2), on 2026-11-26, 12 sets of 120 Maroq"))
                .isEqualTo(
                        "of 4\u00a0270.50\u00a0EUR, 64.9\u00a0% (95\u00a0%: \u22121.5 to 2), on 2026-11-26, 12 sets of 120 Maroq");
    }

    @Test
    void barsOfNegativeValuesGoTheOtherWayFromZero() {
        String svg = SvgChart.bars("t", List.of("a", "b"), List.of(new SvgChart.Series("s", new double[] {-100, 100})));
        List<double[]> bars = new java.util.ArrayList<>();
        var rect = java.util.regex.Pattern.compile(
                        "<rect class=\"solid\" x=\"([0-9.]+)\" y=\"[0-9.]+\" width=\"([0-9.]+)\" height=\"([0-9.]+)\"")
                .matcher(svg);
        while (rect.find()) {
            if (!rect.group(3).equals("8")) {
                bars.add(new double[] {Double.parseDouble(rect.group(1)), Double.parseDouble(rect.group(2))});
            }
        }
        assertThat(bars).hasSize(2);
        assertThat(bars.get(0)[0] + bars.get(0)[1]).isCloseTo(bars.get(1)[0], org.assertj.core.data.Offset.offset(0.2));
        assertThat(bars.get(0)[1]).isCloseTo(bars.get(1)[1], org.assertj.core.data.Offset.offset(0.2));
    }
}
