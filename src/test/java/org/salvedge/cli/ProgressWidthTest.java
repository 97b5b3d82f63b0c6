package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.Map;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.salvedge.report.Screen;

/** A line that is drawn over itself: one that wrapped would leave its pieces behind. */
class ProgressWidthTest {
    @ParameterizedTest
    @CsvSource({"40, 39", "60, 59", "100, 78"})
    void itFitsTheTerminalAndHoldsNothingThatOneObeys(int columns, int most) {
        StringWriter drawn = new StringWriter();
        try (ProgressLine line = new ProgressLine(new Surroundings(
                new Hours(),
                new PrintWriter(new StringWriter()),
                new PrintWriter(drawn),
                Path.of(""),
                Map.of(),
                new SilentTerminal(true, new Screen(columns, true, false))))) {
            line.step("reading \u001b[2J\u202ex.xlsx, " + "which is of a name that is long ".repeat(4), 0.5);
        }
        assertThat(drawn.toString().split("\r", -1))
                .allSatisfy(l -> assertThat(l).hasSizeLessThanOrEqualTo(most));
        assertThat(drawn.toString())
                .contains("50 % [")
                .doesNotContain("\u001b", "\u202e")
                .endsWith(" ".repeat(most) + "\r");
    }

    /** Each look at it is an hour later. */
    private static final class Hours extends Clock {
        private int looks;

        @Override
        public ZoneId getZone() {
            return ZoneOffset.UTC;
        }

        @Override
        public Clock withZone(ZoneId zone) {
            return this;
        }

        @Override
        public Instant instant() {
            return Instant.EPOCH.plusSeconds(3600L * looks++);
        }
    }
}
