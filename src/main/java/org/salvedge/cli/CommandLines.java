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
        return help(of(command, name));
    }

    static String help(CommandLine line) {
        CommandLine.Model.UsageMessageSpec usage = line.getCommandSpec().usageMessage();
        usage.footer(Footer.of(usage.footer()));
        return line.getUsageMessage(Ansi.OFF);
    }
}
