package org.salvedge.cli;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.bench.RecipeBook;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.Column;
import org.salvedge.report.Estimate;
import org.salvedge.report.Kind;
import org.salvedge.report.Table;
import org.salvedge.shop.Recipe;
import picocli.CommandLine.Option;

/** The recipe book. */
@picocli.CommandLine.Command(
        description = "Show the recipe book: masks by panel and side, with how often each was good.",
        footer = {
            "",
            "good: share of uses with an acceptable picture, drawn towards the panel's other recipes as far as uses are few.",
            "Example: salvedge mask recipes --panel P55-1234"
        })
final class MaskRecipesCommand extends Command {
    @Option(names = "--panel", paramLabel = "MODEL", description = "Only of this panel.")
    @Nullable
    String panel;

    @Option(names = "--format", paramLabel = "table|csv|json", description = "table (default), csv or json.")
    Format format = Format.TABLE;

    @Override
    int run(Session session) {
        List<Recipe> recipes;
        try (Ledger ledger = session.shop().read()) {
            recipes = ledger.all(Recipe.class);
        }
        Table.Builder table = Table.of(
                Column.of("panel", "panel", Kind.KEY),
                Column.of("side", "side", Kind.TEXT),
                Column.of("contacts", "contacts", Kind.KEY),
                Column.of("signals", "signals", Kind.TEXT).asDroppable(),
                Column.of("used", "used", Kind.COUNT),
                Column.of("good", "good", Kind.COUNT),
                Column.of("share", "good share", Kind.INTERVAL),
                Column.of("residual_close", "close up", Kind.TEXT).asDroppable(),
                Column.of("residual_viewing", "at distance", Kind.TEXT).asDroppable(),
                Column.of("note", "note", Kind.TEXT).asDroppable(2));
        String only = panel;
        for (RecipeBook.Rated rated : RecipeBook.rated(recipes)) {
            Recipe r = rated.recipe();
            if (only == null || r.panel().equalsIgnoreCase(only.strip())) {
                table.row(
                        r.panel(),
                        r.side(),
                        r.contacts(),
                        r.signals(),
                        r.used() == null ? 0 : r.used(),
                        r.good() == null ? 0 : r.good(),
                        new Estimate(rated.share(), rated.low(), rated.high()),
                        r.residualClose(),
                        r.residualViewing(),
                        r.note());
            }
        }
        Table made = table.build();
        if (made.rows().isEmpty() && format == Format.TABLE) {
            session.say("No recipe yet" + (only == null ? "" : " for " + only) + ": `salvedge mask record` adds one.");
            return Status.DONE;
        }
        session.print(made, format);
        return Status.DONE;
    }
}
