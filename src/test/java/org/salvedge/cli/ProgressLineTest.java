package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.PrintWriter;
import java.io.StringWriter;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.salvedge.ledger.Progress;
import org.salvedge.report.Screen;

class ProgressLineTest {
    private final StringWriter err = new StringWriter();
    private long now;

    private ProgressLine line(boolean watched) {
        Clock clock = new Clock() {
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
                return Instant.ofEpochMilli(now);
            }
        };
        Terminal terminal = new SilentTerminal(watched, SCREEN);
        return new ProgressLine(new Surroundings(
                clock, new PrintWriter(new StringWriter()), new PrintWriter(err), Path.of(""), Map.of(), terminal));
    }

    private static final Screen SCREEN = Screen.plain();

    @Test
    void nothingIsDrawnOfWorkThatIsSoonDoneNorWhereNobodyWatches() {
        try (ProgressLine soon = line(true)) {
            now = 900;
            soon.step("reading the record", 0.5);
        }
        now = 0;
        try (ProgressLine unseen = line(false)) {
            now = 60_000;
            unseen.step("reading the record", 0.5);
        }
        assertThat(err.toString()).isEmpty();
    }

    @Test
    void theLineIsTakenAwayBeforeSomethingElseIsSaid() {
        try (ProgressLine line = line(true)) {
            now = 2_000;
            line.step("reading the record", 0.5);
            assertThat(err.toString()).contains(" 50 % [").contains("reading the record");
            line.clear();
            assertThat(err.toString()).endsWith("\r" + " ".repeat(78) + "\r");
            int said = err.toString().length();
            line.clear();
            assertThat(err.toString()).hasSize(said);
        }
    }

    @Test
    void aPieceOfTheWorkGoesFromItsShareToTheNext() {
        List<Double> done = new ArrayList<>();
        Progress whole = (what, share) -> done.add(share);
        Progress piece = whole.part(0.2, 0.6);
        piece.step("", 0);
        piece.step("", 0.5);
        piece.part(0.5, 1).step("", 1);
        assertThat(done).containsExactly(0.2, 0.4, 0.6);
    }
}
