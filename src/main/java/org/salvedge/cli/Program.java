package org.salvedge.cli;

import java.nio.file.InvalidPathException;
import java.nio.file.Path;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Nearest;
import picocli.CommandLine;
import picocli.CommandLine.ParameterException;

/** One run: finds the command, lets picocli read its options, runs it, and turns any failure into a message and a status. */
final class Program {
    private final Surroundings surroundings;

    Program(Surroundings surroundings) {
        this.surroundings = surroundings;
    }

    /** @return the exit status */
    int run(String... args) {
        boolean debug = Arrays.asList(args).contains("--debug");
        int status;
        try {
            status = dispatch(args);
        } catch (ParameterException e) {
            status = failures(debug).usage(e);
        } catch (Exception | StackOverflowError | OutOfMemoryError e) {
            status = failures(debug).report(e);
        }
        surroundings.out().flush();
        surroundings.err().flush();
        return status == Status.DONE && surroundings.out().checkError() ? Status.UNREADABLE : status;
    }

    private Failures failures(boolean debug) {
        return new Failures(surroundings, debug);
    }

    private int dispatch(String[] args) {
        String shop = surroundings.environment().getOrDefault("SALVEDGE_SHOP", "");
        int at = 0;
        for (; at < args.length && args[at].startsWith("-"); at++) {
            String arg = args[at];
            if (arg.equals("--shop") && at + 1 < args.length) {
                shop = args[++at];
            } else if (arg.startsWith("--shop=")) {
                shop = arg.substring("--shop=".length());
            } else if (arg.equals("--version")) {
                return say(Version.text());
            } else if (arg.equals("--help") || arg.equals("-h")) {
                return say(Overview.text());
            } else if (!arg.equals("--debug")) {
                throw new Usage("\"" + arg
                        + "\" stands before the command, where only --shop DIR, --debug, --help and --version may");
            }
        }
        if (at == args.length) {
            say(Overview.text());
            return Status.USAGE;
        }
        String name = args[at];
        List<String> rest = Arrays.asList(args).subList(at + 1, args.length);
        if (name.equals("help")) {
            return rest.isEmpty() ? say(Overview.text()) : say(CommandLines.help(command(rest.get(0)), rest.get(0)));
        }
        return run(command(name), name, shop, rest);
    }

    private int run(Command command, String name, String shop, List<String> args) {
        CommandLine line = CommandLines.of(command, name);
        line.parseArgs(args.toArray(String[]::new));
        Path folder = path(shop);
        Command chosen = command;
        for (CommandLine at = line; at != null; at = inner(at)) {
            if (at.isUsageHelpRequested()) {
                return say(CommandLines.help(at));
            }
            chosen = at.getCommand();
            folder = chosen.shop == null ? folder : chosen.shop;
        }
        return chosen.run(
                new Session(surroundings, surroundings.folder().resolve(folder).normalize()));
    }

    private static @Nullable CommandLine inner(CommandLine line) {
        CommandLine.ParseResult parsed = line.getParseResult();
        return parsed.hasSubcommand() ? parsed.subcommand().commandSpec().commandLine() : null;
    }

    private static Path path(String shop) {
        try {
            return Path.of(shop);
        } catch (InvalidPathException e) {
            throw new Usage("--shop: \"" + shop + "\" is not a folder's name");
        }
    }

    private static Command command(String name) {
        @Nullable Command command = Commands.create(name);
        if (command == null) {
            throw new Usage("\"" + name + "\" is not a command"
                    + Nearest.to(name, Commands.names())
                            .map(n -> ". Did you mean " + n + "? ")
                            .orElse(". ")
                    + "`salvedge --help` lists them");
        }
        return command;
    }

    private int say(String text) {
        surroundings.out().print(text);
        return Status.DONE;
    }
}
