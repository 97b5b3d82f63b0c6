package org.salvedge.cli;

import java.util.ArrayList;
import java.util.List;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Refused;

/** A command that puts something on record. What it prints is on disk. */
abstract class Recording extends Command {
    /** What was put on record, in words. */
    record Put(long entry, String words) {
        Put(long entry, Fact fact) {
            this(entry, EntryText.of(fact));
        }
    }

    @Override
    final int run(Session session) {
        List<Put> put;
        try (Ledger ledger = session.shop().open()) {
            prepare(session, ledger);
            put = ledger.act(() -> {
                try {
                    return record(session, ledger);
                } catch (IllegalArgumentException e) {
                    // A record that cannot be: the domain says why.
                    throw new Refused(String.valueOf(e.getMessage()));
                }
            });
            afterwards(session, ledger);
        }
        for (Put line : put) {
            session.say("entry " + line.entry() + ": " + line.words());
        }
        return Status.DONE;
    }

    /** Questions to a person come here: nobody else is kept waiting while they are answered. */
    void prepare(Session session, Ledger ledger) {}

    /** What is to be said of it once it is on disk. */
    void afterwards(Session session, Ledger ledger) {}

    /** Works out the facts and puts them on record; runs within one transaction. */
    abstract List<Put> record(Session session, Ledger ledger);

    static List<Put> put(Ledger ledger, List<? extends Fact> facts) {
        List<Long> numbers = ledger.record(facts);
        List<Put> lines = new ArrayList<>();
        for (int i = 0; i < facts.size(); i++) {
            lines.add(new Put(numbers.get(i), facts.get(i)));
        }
        return lines;
    }

    static Put amend(Ledger ledger, long entry, Fact changed, String why) {
        return new Put(ledger.amend(entry, changed, why), changed);
    }
}
