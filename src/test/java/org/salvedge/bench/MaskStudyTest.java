package org.salvedge.bench;

import static org.assertj.core.api.Assertions.assertThat;

import org.junit.jupiter.api.Test;

class MaskStudyTest {
    @Test
    void thePlanNeedsFewerTrialsThanEitherPlainWayAndLiesWithinOnePercentOfTheOptimum() {
        for (String line : MaskStudy.markdown(.3).lines().skip(2).toList()) {
            String[] cells = line.split("\\|", -1);
            double plan = Double.parseDouble(cells[3].strip());
            assertThat(plan).as(line).isLessThanOrEqualTo(Double.parseDouble(cells[5].strip()));
            assertThat(plan).as(line).isLessThanOrEqualTo(Double.parseDouble(cells[6].strip()));
            if (!cells[4].isBlank()) {
                double best = Double.parseDouble(cells[4].strip());
                assertThat(plan).as(line).isBetween(best - .001, best * 1.01);
            }
        }
    }

    @Test
    void thePlainWaysFindTheCulpritsInAsManyTrialsAsByHand() {
        // Contacts 1 to 3, culprit 2: all, open 1, open 2 (bad), open 3; then 1, 1-2 good, open 1.
        assertThat(MaskStudy.maskAllThenUnmask(3, 0b010)).isEqualTo(4);
        assertThat(MaskStudy.oneAtATime(3, 0b010)).isEqualTo(3);
        // Culprit 3: once 1 and 2 are open, it is known.
        assertThat(MaskStudy.maskAllThenUnmask(3, 0b100)).isEqualTo(3);
    }
}
