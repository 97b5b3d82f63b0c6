package org.salvedge.cli;

import java.util.List;

/** Small pieces of sentences. */
final class Wording {
    private static final int MARGIN = 2;

    private Wording() {}

    /** Columns of a paragraph. */
    static int width(Session session) {
        return session.terminal().screen().width() - MARGIN;
    }

    /** A paragraph, wrapped. */
    static void say(Session session, String text) {
        Wrap.at(width(session), text).forEach(session::say);
    }

    static String list(List<?> items) {
        return String.join(" ", items.stream().map(String::valueOf).toList());
    }

    /** A name as it can be typed after a command: in quotes where a shell would part or read it. */
    static String typed(String name) {
        return name.matches("[A-Za-z0-9._/:@%+=,-]+") ? name : "'" + name.replace("'", "'\\''") + "'";
    }
}
