package org.salvedge.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;

class ScreenGeometryTest {
    /** Rec. ITU-R BT.1845 and BT.2022: design viewing distance in picture heights, rounded and by the formula. */
    @ParameterizedTest(name = "{0} rows")
    @CsvSource({"720, 4.8, 4.775", "1080, 3.2, 3.183", "2160, 1.6, 1.592", "4320, 0.8, 0.796"})
    void designViewingDistance(int rows, double rounded, double formula) {
        assertThat(ScreenGeometry.viewingHeights(rows)).isCloseTo(rounded, within(0.051));
        assertThat(ScreenGeometry.viewingHeights(rows)).isCloseTo(formula, within(1e-3));
    }

    /** P. Laven, Asia-Pacific Broadcasting, April 2015, p. 6: 46 inches, height about 57 cm; the rest is geometry. */
    @Test
    void heightOfWideScreens() {
        assertThat(ScreenGeometry.wide(1).heightCm() / 2.54).isCloseTo(0.4903, within(5e-5));
        assertThat(ScreenGeometry.wide(1).widthCm() / 2.54).isCloseTo(0.8716, within(5e-5));
        assertThat(ScreenGeometry.wide(55).heightCm()).isCloseTo(68.489, within(5e-4));
        assertThat(ScreenGeometry.wide(46).heightCm()).isCloseTo(57.282, within(5e-4));
        assertThat(300 / ScreenGeometry.wide(46).heightCm()).isCloseTo(5.24, within(5e-3));
    }

    @Test
    void otherSizesAspectsAndRows() {
        assertThat(ScreenGeometry.wide(43).heightCm()).isCloseTo(53.546, within(5e-4));
        assertThat(new ScreenGeometry(1, 64, 27).heightCm() / 2.54).isCloseTo(.38870, within(5e-6));
        assertThat(new ScreenGeometry(1, 4, 3).heightCm() / 2.54).isCloseTo(.6, within(5e-6));
        assertThat(ScreenGeometry.viewingHeights(576)).isCloseTo(5.97, within(5e-3));
        assertThat(ScreenGeometry.viewingHeights(480)).isCloseTo(7.16, within(5e-3));
    }

    @Test
    void distanceAndAreaFollowFromHeight() {
        ScreenGeometry screen = ScreenGeometry.wide(55);
        assertThat(screen.viewingDistanceCm(2160)).isCloseTo(68.489 * 1.592, within(0.05));
        assertThat(screen.areaSquareCm()).isCloseTo(screen.heightCm() * screen.heightCm() * 16 / 9, within(1e-9));
        assertThatIllegalArgumentException().isThrownBy(() -> ScreenGeometry.wide(0));
        assertThatIllegalArgumentException().isThrownBy(() -> ScreenGeometry.viewingHeights(0));
    }
}
