package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import org.assertj.core.data.Offset;
import org.junit.jupiter.api.Test;

class HolmTest {
    private static final Offset<Double> EXACT = within(1e-15);

    @Test
    void theLeastChanceIsMultipliedByAllTheNextByOneLess() {
        double[] adjusted = Holm.adjust(0.01, 0.04, 0.03, 0.005);
        assertThat(adjusted[3]).isCloseTo(0.02, EXACT);
        assertThat(adjusted[0]).isCloseTo(0.03, EXACT);
        assertThat(adjusted[2]).isCloseTo(0.06, EXACT);
        assertThat(adjusted[1]).as("never below that of a smaller chance").isCloseTo(0.06, EXACT);
    }

    @Test
    void noChanceExceedsOneAndNoTestsNeedNoRaising() {
        assertThat(Holm.adjust(0.9, 0.8)).containsExactly(1, 1);
        assertThat(Holm.adjust()).isEmpty();
        assertThat(Holm.adjust(0.2)).containsExactly(0.2);
    }
}
