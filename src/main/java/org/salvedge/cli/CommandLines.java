package org.salvedge.cli;

import picocli.CommandLine;
import picocli.CommandLine.Help.Ansi;

/** How picocli reads a command and shows its help. */
final class CommandLines {
    private static final int WIDTH = 100;

    private CommandLines() {}

    static CommandLine of(Command command, String name) {
        CommandLine line = new CommandLine(command);
        command.within().forEach(line::addSubcommand);
        line.setCommandName("salvedge " + name);
        line.setExpandAtFiles(false);
        line.setInterpolateVariables(false);
        line.setUsageHelpWidth(WIDTH);
        TextConverter.register(line);
        return line;
    }

    static String help(Command command, String name) {
        return of(command, name).getUsageMessage(Ansi.OFF);
    }
}
