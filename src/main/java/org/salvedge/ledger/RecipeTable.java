package org.salvedge.ledger;

import java.time.LocalDate;
import org.salvedge.shop.Recipe;
import org.salvedge.shop.Residual;
import org.salvedge.shop.Side;

/** Mask recipes: one row a panel and side. */
final class RecipeTable extends Table<Recipe> {
    final Column<Recipe, String> panel = key("panel", Types.WORD, "Panel model", Recipe::panel);
    final Column<Recipe, Side> side = key("side", Types.oneOf(Side.class), "Side, seen from the front", Recipe::side);
    final Column<Recipe, String> contacts =
            key("contacts", Types.TEXT, "Masked contacts by position on the ribbon", Recipe::contacts);
    final Column<Recipe, String> signals =
            optional("signals", Types.TEXT, "Their names, in the same order", Recipe::signals);
    final Column<Recipe, Residual> residualClose = optional(
            "residual_close", Types.oneOf(Residual.class), "What is left to see close up", Recipe::residualClose);
    final Column<Recipe, Residual> residualViewing = optional(
            "residual_viewing",
            Types.oneOf(Residual.class),
            "What is left to see at the design viewing distance",
            Recipe::residualViewing);
    final Column<Recipe, Integer> used = optional("used", Types.WHOLE, "Times used", Recipe::used);
    final Column<Recipe, Integer> good =
            optional("good", Types.WHOLE, "Times the picture was acceptable", Recipe::good);
    final Column<Recipe, String> note = optional("note", Types.TEXT, "Anything else", Recipe::note);

    RecipeTable() {
        super("recipe", 'R', Recipe.class);
    }

    @Override
    Recipe fact(Values<Recipe> v) {
        return new Recipe(
                v.need(panel),
                v.need(side),
                v.need(contacts),
                v.get(signals),
                v.get(residualClose),
                v.get(residualViewing),
                v.get(used),
                v.get(good),
                v.get(note));
    }

    @Override
    LocalDate day(Recipe f) {
        return LocalDate.EPOCH;
    }

    @Override
    String describe(Recipe f) {
        return "recipe for " + f.panel() + ", " + f.side().code();
    }
}
