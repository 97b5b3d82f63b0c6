package org.salvedge.cli;

import org.jspecify.annotations.Nullable;
import org.salvedge.report.Screen;
import org.salvedge.report.Visible;

/** Another terminal, asked only in text that it cannot obey: a question may hold a seller's words or a label. */
record CleanTerminal(Terminal behind) implements Terminal {
    @Override
    public boolean asks() {
        return behind.asks();
    }

    @Override
    public boolean watches() {
        return behind.watches();
    }

    @Override
    public @Nullable String answer(String question) {
        return behind.answer(visible(question));
    }

    @Override
    public @Nullable String line(String question) {
        return behind.line(visible(question));
    }

    @Override
    public @Nullable String secret(String question) {
        return behind.secret(visible(question));
    }

    @Override
    public Screen screen() {
        return behind.screen();
    }

    private String visible(String question) {
        return Visible.text(question, behind.screen());
    }
}
