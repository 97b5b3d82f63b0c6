package org.salvedge.cli;

import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.Fact;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A slip: takes an entry back. */
@picocli.CommandLine.Command(
        description =
                "Take an entry back by a new one; nothing is deleted, and `show --entry N` tells what became of it.",
        footer = {
            "",
            "What one act recorded goes whole: a turn with the part it used, a sale of several sets, a lot with its sets (name the",
            "lot's entry; a set of it that is named goes alone). Refused where later entries rest on it.",
            "Example: salvedge undo 5123 --why \"scanned the wrong set\""
        })
final class UndoCommand extends Command {
    private static final int SHOWN = 5;

    /** At the bench, wet hands and a wrong scan: nobody should have to write a letter about it. */
    private static final String A_SLIP = "a slip";

    @Parameters(arity = "0..1", paramLabel = "ENTRY", description = "Number of the entry (default: the latest).")
    @Nullable
    Long entry;

    @Option(names = "--why", paramLabel = "TEXT", description = "The reason, kept with it (default: a slip).")
    String why = A_SLIP;

    @Override
    int run(Session session) {
        if (why.isBlank()) {
            throw new Usage("--why: give the reason in words");
        }
        try (Ledger ledger = session.shop().open()) {
            Map<Long, Long> undone = ledger.undoAct(entry, why.strip());
            int said = 0;
            for (Map.Entry<Long, Long> of : undone.entrySet()) {
                said++;
                if (said <= SHOWN || said == undone.size()) {
                    Fact fact = ledger.entry(of.getKey()).map(Entry::fact).orElse(null);
                    session.say("entry " + of.getValue() + ": undoes entry " + of.getKey()
                            + (fact == null ? "" : ", " + EntryText.of(fact)));
                } else if (said == SHOWN + 1) {
                    session.say("... " + (undone.size() - SHOWN - 1) + " more, recorded in the same act");
                }
            }
        }
        return Status.DONE;
    }
}
