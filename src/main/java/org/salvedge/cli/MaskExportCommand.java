package org.salvedge.cli;

import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.Plural;
import org.salvedge.report.WholeFile;
import org.salvedge.shop.Recipe;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** The recipe book as a file for other shops. */
@picocli.CommandLine.Command(
        description = "Write the recipe book as CSV, the form of recipes.csv in a history package, for other shops.",
        footer = {"", "Example: salvedge mask export masks.csv"})
final class MaskExportCommand extends Command {
    @Parameters(paramLabel = "FILE", description = "The CSV file to write.")
    Path file = Path.of("");

    @Option(names = "--panel", paramLabel = "MODEL", description = "Only of this panel.")
    @Nullable
    String panel;

    @Override
    int run(Session session) {
        List<Recipe> recipes;
        try (Ledger ledger = session.shop().read()) {
            recipes = ledger.all(Recipe.class);
        }
        String only = panel;
        List<Recipe> chosen = recipes.stream()
                .filter(r -> only == null || r.panel().equalsIgnoreCase(only.strip()))
                .toList();
        Path to = Reports.target(session, "FILE", file, ".csv");
        Reports.write(
                to,
                () -> WholeFile.write(to, out -> {
                    Writer writer = new OutputStreamWriter(out, StandardCharsets.UTF_8);
                    RecipeCsv.write(chosen, writer);
                    writer.flush();
                }));
        session.say(Plural.of(chosen.size(), "recipe") + " written to " + to);
        return Status.DONE;
    }
}
