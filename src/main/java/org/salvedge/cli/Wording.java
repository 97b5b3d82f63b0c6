package org.salvedge.cli;

import java.util.List;

/** Small pieces of sentences. */
final class Wording {
    /** Columns of a paragraph. */
    static final int WIDTH = 98;

    private Wording() {}

    /** A paragraph, wrapped. */
    static void say(Session session, String text) {
        Wrap.at(WIDTH, text).forEach(session::say);
    }

    static String list(List<?> items) {
        return String.join(" ", items.stream().map(String::valueOf).toList());
    }

    /** A name as it can be typed after a command: in quotes where a shell would part or read it. */
    static String typed(String name) {
        return name.matches("[A-Za-z0-9._/:@%+=,-]+") ? name : "'" + name.replace("'", "'\\''") + "'";
    }
}
