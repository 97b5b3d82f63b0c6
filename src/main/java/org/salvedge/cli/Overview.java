package org.salvedge.cli;

import java.util.Locale;
import org.jspecify.annotations.Nullable;

/** The help of the program as a whole: its commands by the moments of the job. */
final class Overview {
    private static final int INDENT = 13;
    private static final int WIDTH = 100 - INDENT;

    private Overview() {}

    static String text() {
        StringBuilder out = new StringBuilder("""
                Usage: salvedge [--shop DIR] COMMAND [OPTIONS]

                The record of a shop that buys lots of broken television sets, and the decisions out of it.
                A shop is a folder: --shop DIR, else SALVEDGE_SHOP, else this folder.
                """);
        for (Commands.Moment moment : Commands.MOMENTS) {
            out.append('\n').append(moment.title()).append('\n');
            for (String name : moment.commands()) {
                String indent = String.format(Locale.ROOT, "  %-10s ", name);
                for (String line : Wrap.at(WIDTH, summary(name))) {
                    out.append(indent).append(line).append('\n');
                    indent = " ".repeat(INDENT);
                }
            }
        }
        return out.append("""

                `salvedge COMMAND --help` shows the options of a command. Beginners: salvedge demo DIR
                Exit status: 0 done; 1 done, with problems to look at; 2 wrong usage; 3 refused, nothing changed;
                4 the ledger or a report could not be read or written; 70 a defect of the program.
                """).toString();
    }

    private static String summary(String name) {
        @Nullable Command command = Commands.create(name);
        if (command == null) {
            throw new IllegalStateException(name + " is listed but cannot be made");
        }
        String[] description =
                CommandLines.of(command, name).getCommandSpec().usageMessage().description();
        return description.length == 0 ? "" : description[0];
    }
}
