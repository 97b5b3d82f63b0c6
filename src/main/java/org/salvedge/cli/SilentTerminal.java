package org.salvedge.cli;

import org.jspecify.annotations.Nullable;
import org.salvedge.report.Screen;

/**
 * A terminal with nobody at the keyboard.
 *
 * @param watches whether somebody looks on
 */
record SilentTerminal(boolean watches, Screen screen) implements Terminal {
    @Override
    public boolean asks() {
        return false;
    }

    @Override
    public @Nullable String answer(String question) {
        return null;
    }

    @Override
    public @Nullable String line(String question) {
        return null;
    }
}
