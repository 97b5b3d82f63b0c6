package org.salvedge.cli;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.salvedge.bench.ReleaseChecks.Check;
import org.salvedge.shop.Refused;
import org.salvedge.shop.UnitId;

/** Release checks that are not on record: asked for at a terminal, refused elsewhere. */
record ReleaseQuestions(Terminal terminal, UnitId unit) {
    /** Asks for each; returns those that are answered with no. */
    List<Check> ask(List<Check> open) {
        if (!terminal.asks()) {
            throw refused(open);
        }
        List<Check> still = new ArrayList<>();
        for (Check check : open) {
            if (!yes(question(check), open)) {
                still.add(check);
            }
        }
        return still;
    }

    /** Asks for one; no answer is a no. */
    boolean done(Check check) {
        @Nullable String answer = terminal.answer(question(check) + " [y/n] ");
        return answer != null && answer.strip().toLowerCase(Locale.ROOT).startsWith("y");
    }

    /** Asks why it is sold all the same; an empty answer ends the sale. */
    String reason(List<Check> still) {
        @Nullable String reason = terminal.answer("Sell it all the same? Give the reason, or nothing to leave it: ");
        if (reason == null || reason.isBlank()) {
            throw new Refused(unit + " was not sold: " + names(still) + " unmet. Nothing was recorded");
        }
        return reason.strip();
    }

    private boolean yes(String question, List<Check> open) {
        while (true) {
            @Nullable String answer = terminal.answer(question + " [y/n] ");
            if (answer == null) {
                throw refused(open);
            }
            switch (answer.strip().toLowerCase(Locale.ROOT)) {
                case "y", "yes" -> {
                    return true;
                }
                case "n", "no" -> {
                    return false;
                }
                default -> {
                    // asked again
                }
            }
        }
    }

    private String question(Check check) {
        return switch (check) {
            case SAFETY_TESTED -> unit + ": was it tested for electrical safety, by someone entitled to do so?";
            case OWNER_DATA_RESET -> unit + ": are the former owner's accounts and data gone?";
            case DISCLOSED -> unit + ": its picture rests on a contact mask. Was the buyer told?";
        };
    }

    private Refused refused(List<Check> open) {
        String options =
                open.stream().map(c -> "--" + c.column().replace('_', '-')).collect(Collectors.joining(" "));
        return new Refused("release checks of " + unit + " not on record: " + names(open) + ". Where it is done, say "
                + options + "; to sell all the same, give the reason: --unmet \"...\"");
    }

    private static String names(List<Check> checks) {
        return checks.stream().map(Check::column).collect(Collectors.joining(", "));
    }
}
