package org.salvedge.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Refused;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;
import picocli.CommandLine.Unmatched;

/** A slip: changes columns of an entry. */
@picocli.CommandLine.Command(
        description = "Correct an entry by a new one that takes its place.",
        customSynopsis = "salvedge amend ENTRY --COLUMN VALUE ... --why TEXT",
        footer = {
            "",
            "COLUMN is any column of the entry as `salvedge show --entry N` names them, with - or _: --fix-minutes 50,",
            "--passed no, --landed-cost 12.50. An empty VALUE (\"\") takes the value away.",
            "",
            "Example: salvedge amend 5123 --fix-minutes 50 --why \"the watch ran on over lunch\""
        })
final class AmendCommand extends Recording {
    @Parameters(paramLabel = "ENTRY", description = "Number of the entry.")
    long entry;

    @Option(names = "--why", required = true, paramLabel = "TEXT", description = "The reason, kept with it.")
    String why = "";

    private long amendment;

    @Unmatched
    List<String> columns = new ArrayList<>();

    @Override
    List<Put> record(Session session, Ledger ledger) {
        if (why.isBlank()) {
            throw new Usage("--why: give the reason in words");
        }
        Map<String, String> changes = changes();
        Entry old = ledger.entry(entry).orElseThrow(() -> new Refused("there is no entry " + entry));
        Fact fact = old.fact();
        if (fact == null) {
            throw new Refused(
                    "entry " + entry + " took entry " + old.supersedes() + " back; there is nothing to amend");
        }
        Fact changed = ledger.changed(fact, changes);
        if (changed.equals(fact)) {
            throw new Refused("entry " + entry + " says so already; nothing was changed");
        }
        Put put = amend(ledger, entry, changed, why.strip());
        amendment = put.entry();
        return List.of(put);
    }

    @Override
    void afterwards(Session session, Ledger ledger) {
        List<Long> followers = ledger.followersOf(amendment);
        if (!followers.isEmpty()) {
            long first = followers.get(0);
            long last = followers.get(followers.size() - 1);
            session.remark((first == last ? "entry " + first : "entries " + first + " to " + last)
                    + " followed, so that the shares of the landed cost add up: " + followers.size() + " in all");
        }
    }

    /** What picocli does not know are the columns: --name value, or --name=value. */
    private Map<String, String> changes() {
        Map<String, String> changes = new LinkedHashMap<>();
        for (int i = 0; i < columns.size(); i++) {
            String word = columns.get(i);
            if (!word.startsWith("--") || word.length() == 2) {
                throw new Usage("\"" + word + "\" is one word too many; write --column value");
            }
            int equals = word.indexOf('=');
            String name = (equals < 0 ? word.substring(2) : word.substring(2, equals)).replace('-', '_');
            if (equals < 0 && i + 1 == columns.size()) {
                throw new Usage(word + ": there is no value after it; \"\" takes the value away");
            }
            String value = equals < 0 ? columns.get(++i) : word.substring(equals + 1);
            if (changes.put(name, value) != null) {
                throw new Usage("--" + name.replace('_', '-') + " is given twice");
            }
        }
        if (changes.isEmpty()) {
            throw new Usage("name what to change: --column value");
        }
        return changes;
    }
}
