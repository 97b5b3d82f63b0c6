package org.salvedge.cli;

import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Refused;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** A slip: takes an entry back. */
@picocli.CommandLine.Command(
        description =
                "Take an entry back by a new one; nothing is deleted, and `show --entry N` tells what became of it.",
        footer = {"", "Example: salvedge undo 5123 --why \"scanned the wrong set\""})
final class UndoCommand extends Command {
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
            long number = entry == null
                    ? ledger.latest().map(Entry::number).orElseThrow(() -> new Refused("there is no entry to undo"))
                    : entry;
            Optional<Entry> undone = ledger.entry(number);
            long by = ledger.undo(number, why.strip());
            @Nullable Fact fact = undone.map(Entry::fact).orElse(null);
            session.say("entry " + by + ": undoes entry " + number + (fact == null ? "" : ", " + EntryText.of(fact)));
        }
        return Status.DONE;
    }
}
