package org.salvedge.cli;

import org.jspecify.annotations.Nullable;
import org.salvedge.report.Screen;

/** The person at the keyboard, if there is one. */
interface Terminal {
    /** Whether questions can be asked: both ends are a terminal. */
    boolean asks();

    /** Whether a progress line may be drawn on standard error. */
    boolean watches();

    /** Prints a question and waits for a line; null at the end of input. */
    @Nullable
    String answer(String question);

    /** The next line of input, asked for where somebody can be asked; else of standard input. Null at its end. */
    @Nullable
    String line(String question);

    /** As {@link #answer}, without showing what is typed. */
    default @Nullable String secret(String question) {
        return answer(question);
    }

    /** What standard output can show. */
    Screen screen();
}
