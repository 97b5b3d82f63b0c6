package org.salvedge.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.Plural;
import org.salvedge.shop.ModelBook;
import org.salvedge.shop.TvSet;
import picocli.CommandLine.Option;

/** Families changed. */
@picocli.CommandLine.Command(
        description =
                "Derive model families again from shop.toml; each set whose family changes gets an entry of its own.",
        footer = {
            "",
            "A model that no entry of [families] fits keeps its family.",
            "",
            "Example: salvedge regroup --dry-run"
        })
final class RegroupCommand extends Command {
    @Option(names = "--dry-run", description = "Say what would change, and change nothing.")
    boolean dryRun;

    @Override
    int run(Session session) {
        ModelBook models = new ModelBook(session.shop().settings().families());
        Map<String, Integer> changes = new LinkedHashMap<>();
        try (Ledger ledger = dryRun ? session.shop().read() : session.shop().open()) {
            List<TvSet> moved = new ArrayList<>();
            for (TvSet set : ledger.all(TvSet.class)) {
                String family = models.entered(set.model());
                if (family != null && !family.equals(set.family())) {
                    moved.add(set.toBuilder().family(family).build());
                    changes.merge(set.family() + " -> " + family, 1, Integer::sum);
                }
            }
            if (!dryRun && !moved.isEmpty()) {
                ledger.together(() -> {
                    for (TvSet set : moved) {
                        Entry old = UnitPick.entry(ledger, set.unit());
                        ledger.amend(old.number(), set, "regroup: family by shop.toml");
                    }
                    return moved;
                });
            }
        }
        int sets = changes.values().stream().mapToInt(Integer::intValue).sum();
        changes.forEach((change, n) -> session.say(change + ": " + Plural.of(n, "set")));
        session.say(Plural.of(sets, "set") + (dryRun ? " would change" : " changed") + " family");
        return Status.DONE;
    }
}
