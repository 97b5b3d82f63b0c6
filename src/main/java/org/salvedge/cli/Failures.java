package org.salvedge.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;
import java.nio.file.NoSuchFileException;
import java.util.ArrayList;
import java.util.List;
import java.util.stream.Collectors;
import org.salvedge.ledger.LedgerFailure;
import org.salvedge.report.Screen;
import org.salvedge.report.Visible;
import org.salvedge.shop.Nearest;
import org.salvedge.shop.Problem;
import org.salvedge.shop.Refused;
import picocli.CommandLine;
import picocli.CommandLine.Model.ArgSpec;
import picocli.CommandLine.Model.OptionSpec;
import picocli.CommandLine.ParameterException;
import picocli.CommandLine.UnmatchedArgumentException;

/** The one place where a failure becomes a message on standard error and an exit status. */
final class Failures {
    private static final String INDENT = "  ";
    private static final int MOST_PROBLEMS = 1_000;

    private final Surroundings surroundings;
    private final boolean debug;

    Failures(Surroundings surroundings, boolean debug) {
        this.surroundings = surroundings;
        this.debug = debug;
    }

    int usage(ParameterException e) {
        String name = e.getCommandLine().getCommandSpec().qualifiedName();
        return tell(e, Status.USAGE, words(e), "See: " + name + " --help");
    }

    int report(Throwable e) {
        if (e instanceof Usage) {
            return tell(e, Status.USAGE, message(e));
        }
        if (e instanceof Refused refused) {
            tell(e, Status.REFUSED, message(e));
            problems(refused.problems());
            return Status.REFUSED;
        }
        if (e instanceof LedgerFailure) {
            return tell(e, Status.UNREADABLE, message(e));
        }
        if (e instanceof UncheckedIOException io) {
            boolean told = io.getMessage() != null
                    && io.getCause() != null
                    && !io.getMessage().equals(io.getCause().toString());
            return tell(e, Status.UNREADABLE, told ? message(io) : words(io.getCause()), "Nothing was changed.");
        }
        if (e instanceof OutOfMemoryError) {
            return tell(e, Status.DEFECT, "out of memory", "Allow more for one run: SALVEDGE_HEAP=4g salvedge ...");
        }
        return tell(
                e,
                Status.DEFECT,
                "this is a defect of the program: " + e,
                "Please report it with what you did; --debug shows where it came up.");
    }

    private int tell(Throwable e, int status, String... lines) {
        String start = "salvedge: ";
        for (String line : lines) {
            print(start, line);
            start = INDENT;
        }
        if (debug) {
            e.printStackTrace(surroundings.err());
        }
        return status;
    }

    /** Details of a refusal, one paragraph each. */
    private void problems(List<Problem> problems) {
        paragraphs(problems.stream().map(Problem::toString).toList());
    }

    /** What a person must look at. */
    void paragraphs(List<String> paragraphs) {
        for (String paragraph : paragraphs.subList(0, Math.min(MOST_PROBLEMS, paragraphs.size()))) {
            print(INDENT, paragraph);
        }
        if (paragraphs.size() > MOST_PROBLEMS) {
            print(INDENT, "... and " + (paragraphs.size() - MOST_PROBLEMS) + " more");
        }
    }

    private void print(String start, String text) {
        Screen screen = surroundings.terminal().screen();
        String indent = start;
        for (String line : text.split("\n", -1)) {
            String rest = Visible.text(line, screen);
            do {
                String part = Wrap.at(room(screen, indent), rest).get(0);
                surroundings.err().println(indent + part);
                rest = rest.substring(part.length()).stripLeading();
                indent = INDENT.repeat(start.isBlank() ? 2 : 1);
            } while (!rest.isEmpty());
        }
    }

    /** On a terminal nothing runs over; elsewhere lines may be read anywhere and only the text's own length counts. */
    private static int room(Screen screen, String indent) {
        return screen.width() < Screen.WIDEST ? screen.width() - indent.length() : Screen.WIDEST - 2 * INDENT.length();
    }

    private static String message(Throwable e) {
        return String.valueOf(e.getMessage());
    }

    private static String words(@org.jspecify.annotations.Nullable IOException e) {
        if (e instanceof NoSuchFileException missing) {
            return missing.getFile() + ": there is no such file or folder";
        }
        if (e instanceof AccessDeniedException denied) {
            return denied.getFile() + ": not permitted to read or write it";
        }
        if (e instanceof FileSystemException at && at.getReason() != null) {
            return at.getFile() + ": " + at.getReason();
        }
        return e == null ? "a file could not be read or written" : message(e);
    }

    private static String words(ParameterException e) {
        // A misspelt option is also one that is missing: the misspelling is what to say. Some commands take any option.
        boolean takesAny =
                !e.getCommandLine().getCommandSpec().unmatchedArgsBindings().isEmpty();
        List<String> unmatched = e instanceof UnmatchedArgumentException u
                ? u.getUnmatched()
                : takesAny ? List.of() : e.getCommandLine().getUnmatchedArguments();
        if (!unmatched.isEmpty()) {
            return unmatched(e.getCommandLine(), unmatched.get(0));
        }
        ArgSpec arg = e.getArgSpec();
        if (e.getCause() instanceof CommandLine.TypeConversionException bad && arg != null && e.getValue() != null) {
            return name(arg) + ": \"" + e.getValue() + "\" " + bad.getMessage();
        }
        if (e instanceof CommandLine.MissingParameterException missing
                && !missing.getMissing().isEmpty()) {
            return "missing: "
                    + missing.getMissing().stream().map(Failures::full).collect(Collectors.joining(", "));
        }
        if (arg != null && e.getValue() != null) {
            return name(arg) + ": \"" + e.getValue() + "\" is not " + arg.paramLabel();
        }
        if (e instanceof CommandLine.OverwrittenOptionException && arg != null) {
            return name(arg) + " is given twice";
        }
        return message(e);
    }

    private static String unmatched(CommandLine line, String first) {
        if (!first.startsWith("-")) {
            return "\"" + first + "\" is one word too many";
        }
        // No method reference: it would keep picocli's class out of the class archive.
        List<String> options = new ArrayList<>();
        for (OptionSpec option : line.getCommandSpec().options()) {
            options.add(option.longestName());
        }
        int equals = first.indexOf('=');
        String typed = equals < 0 ? first : first.substring(0, equals);
        return "\"" + typed + "\" is not an option"
                + Nearest.to(typed, options)
                        .map(n -> ". Did you mean " + n + "?")
                        .orElse("");
    }

    private static String name(ArgSpec arg) {
        return arg instanceof OptionSpec option ? option.longestName() : arg.paramLabel();
    }

    private static String full(ArgSpec arg) {
        return arg instanceof OptionSpec option ? option.longestName() + " " + arg.paramLabel() : arg.paramLabel();
    }
}
