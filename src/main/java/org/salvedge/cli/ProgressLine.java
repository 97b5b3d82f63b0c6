package org.salvedge.cli;

import java.time.Clock;
import org.salvedge.ledger.Progress;
import org.salvedge.report.Screen;
import org.salvedge.report.Shapes;
import org.salvedge.report.Visible;

/** One line on a terminal's standard error that tells how far long work has come; nothing where nobody watches. */
final class ProgressLine implements Progress, AutoCloseable {
    private static final long PATIENCE_MILLIS = 1_000;
    private static final int CELLS = 30;
    private static final int WIDEST = 78;

    private final Surroundings surroundings;
    private final Clock clock;
    private final long began;
    private boolean drawn;

    ProgressLine(Surroundings surroundings) {
        this.surroundings = surroundings;
        clock = surroundings.clock();
        began = clock.millis();
    }

    @Override
    public void step(String what, double done) {
        if (!surroundings.terminal().watches() || clock.millis() - began < PATIENCE_MILLIS) {
            return;
        }
        Screen screen = surroundings.terminal().screen();
        String bar = Shapes.bar(done, CELLS, screen);
        String line = String.format(
                java.util.Locale.ROOT,
                "%3d %% [%s%s] %s",
                Math.round(done * 100),
                bar,
                " ".repeat(CELLS - bar.length()),
                Visible.text(what, screen));
        draw(line);
        drawn = true;
    }

    /** Within the terminal's last column, where some would begin a new line. */
    private void draw(String line) {
        int width = Math.min(WIDEST, surroundings.terminal().screen().width() - 1);
        String shown = line.substring(0, Math.min(width, line.length()));
        surroundings.err().print("\r" + shown + " ".repeat(width - shown.length()) + "\r");
        surroundings.err().flush();
    }

    /** Takes the line away, so that something else can be said; the next step draws it again. */
    void clear() {
        if (drawn) {
            draw("");
            drawn = false;
        }
    }

    @Override
    public void close() {
        clear();
    }
}
