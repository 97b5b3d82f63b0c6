package org.salvedge.cli;

import java.util.ArrayList;
import java.util.List;

/**
 * The text below a command's options. Lines in the source run on as one paragraph, so that each is broken once, by the width of
 * the help; a line that begins with two spaces stands as it is, and an example stands on a line of its own, to be copied.
 */
final class Footer {
    private static final String EXAMPLE = "Example:";

    private final List<String> done = new ArrayList<>();
    private String open = "";

    private Footer() {}

    static String[] of(String... source) {
        Footer footer = new Footer();
        for (String line : source) {
            footer.line(line);
        }
        footer.end();
        return footer.done.toArray(String[]::new);
    }

    private void line(String line) {
        if (line.isEmpty() || line.startsWith("  ")) {
            end();
            done.add(line);
            return;
        }
        int at = line.indexOf(EXAMPLE);
        if (at > 0) {
            join(line.substring(0, at).stripTrailing());
            end();
        } else if (at == 0) {
            end();
        }
        join(at < 0 ? line : line.substring(at));
        if (open.startsWith(EXAMPLE) && open.length() > EXAMPLE.length()) {
            int sentence = open.indexOf(". ");
            String more = sentence < 0 ? "" : open.substring(sentence + 2);
            open = sentence < 0 ? open : open.substring(0, sentence);
            end();
            open = more;
        }
    }

    private void join(String text) {
        open = open.isEmpty() ? text : open + " " + text;
    }

    private void end() {
        if (!open.isEmpty()) {
            done.add(open);
            open = "";
        }
    }
}
