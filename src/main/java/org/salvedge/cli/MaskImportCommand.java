package org.salvedge.cli;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.Plural;
import org.salvedge.shop.Recipe;
import org.salvedge.shop.Refused;
import picocli.CommandLine.Parameters;

/** Another shop's recipe book. */
@picocli.CommandLine.Command(
        description = "Take another shop's recipes from a CSV file into the recipe book.",
        footer = {
            "",
            "Panels, sides and contacts that are in the book already are left as they are and listed (status 1); the rest is",
            "taken, whole or not at all. Example: salvedge mask import masks.csv"
        })
final class MaskImportCommand extends Command {
    @Parameters(paramLabel = "FILE", description = "The CSV file, as `mask export` writes it.")
    Path file = Path.of("");

    @Override
    int run(Session session) {
        List<Recipe> kept = new ArrayList<>();
        List<Recipe> added = new ArrayList<>();
        try (Ledger ledger = session.shop().open()) {
            List<Recipe> read = RecipeCsv.read(session.file(file), ledger);
            ledger.record(() -> {
                Map<List<Object>, Recipe> known = new TreeMap<>(java.util.Comparator.comparing(String::valueOf));
                ledger.all(Recipe.class).forEach(r -> known.put(key(r), r));
                for (Recipe r : read) {
                    Recipe same = known.putIfAbsent(key(r), r);
                    if (same == null) {
                        added.add(r);
                    } else if (added.contains(same)) {
                        throw new Refused(file.getFileName() + ": two rows are the same recipe: " + EntryText.of(r));
                    } else if (!same.equals(r)) {
                        kept.add(same);
                    }
                }
                return added;
            });
        }
        session.say(Plural.of(added.size(), "recipe") + " added.");
        kept.forEach(r -> session.remark("left as it is: " + EntryText.of(r)));
        return kept.isEmpty() ? Status.DONE : Status.PROBLEMS;
    }

    private static List<Object> key(Recipe r) {
        return List.of(r.panel(), r.side().code(), r.contacts());
    }
}
