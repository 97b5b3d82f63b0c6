package org.salvedge.shop;

import java.util.List;

/** Input that cannot be taken; nothing was changed. Exit status 3. */
@SuppressWarnings("serial") // never serialised
public final class Refused extends RuntimeException {
    private final List<Problem> problems;

    /** @param message says where, what is wrong and what to do, in the user's words */
    public Refused(String message) {
        this(message, List.of());
    }

    public Refused(String message, List<Problem> problems) {
        super(message);
        this.problems = List.copyOf(problems);
    }

    /** The details, where there are several; may be empty. */
    public List<Problem> problems() {
        return problems;
    }
}
