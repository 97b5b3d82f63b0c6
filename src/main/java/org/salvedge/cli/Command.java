package org.salvedge.cli;

import java.nio.file.Path;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import picocli.CommandLine.Option;

/** One command: picocli fills its fields, {@link #run} calls one service and prints. Its status is 0, or 1 with problems found. */
abstract class Command {
    @Option(
            names = "--shop",
            paramLabel = "DIR",
            order = 900,
            description = "The shop's folder (default: SALVEDGE_SHOP, else this folder).")
    @Nullable
    Path shop;

    @Option(names = "--debug", order = 901, description = "Show where in the program a failure came up.")
    boolean debug;

    @Option(
            names = {"-h", "--help"},
            usageHelp = true,
            order = 902,
            description = "Show this help.")
    boolean help;

    /** Commands within this one, by name, in the order of the help; where there are some, this one only names them. */
    Map<String, Command> within() {
        return Map.of();
    }

    /** @return {@link Status#DONE} or {@link Status#PROBLEMS} */
    abstract int run(Session session);
}
