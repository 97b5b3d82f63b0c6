package org.salvedge.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Recipe;
import org.salvedge.shop.Side;
import org.salvedge.stats.ShrunkYield;

/**
 * What the shop has learnt of masks, by panel. Both sides of a panel carry the same signals, so that a recipe of the other side
 * counts too where the contacts of both are named.
 */
public final class RecipeBook {
    private static final double LEVEL = 0.95;

    private RecipeBook() {}

    /**
     * A recipe with its share of good pictures, each use a trial, drawn towards the panel's and that towards all panels' as far as
     * the record is thin ({@link ShrunkYield}).
     */
    public record Rated(Recipe recipe, double share, double low, double high) {}

    /** Of one ribbon: its recipes' contacts by position, each with the number of good uses. */
    public static List<Recipe> ofRibbon(List<Recipe> all, String panel, @Nullable Side side, List<String> signals) {
        List<Recipe> found = new ArrayList<>();
        for (Recipe r : all) {
            if (!same(r.panel(), panel)) {
                continue;
            }
            if (side == null || r.side() == side) {
                found.add(r);
            } else {
                String contacts = bySignals(r, signals);
                if (contacts != null) {
                    found.add(new Recipe(
                            r.panel(),
                            side,
                            contacts,
                            r.signals(),
                            r.residualClose(),
                            r.residualViewing(),
                            r.used(),
                            r.good(),
                            r.note()));
                }
            }
        }
        return found;
    }

    /** Where the contacts of a recipe lie on a ribbon whose contacts bear these names in order; null where one is missing. */
    private static @Nullable String bySignals(Recipe recipe, List<String> signals) {
        if (recipe.signals() == null || signals.isEmpty()) {
            return null;
        }
        List<String> names =
                signals.stream().map(s -> s.toLowerCase(Locale.ROOT)).toList();
        List<Integer> positions = new ArrayList<>();
        for (String name : names(recipe.signals())) {
            int at = names.indexOf(name.toLowerCase(Locale.ROOT));
            if (at < 0) {
                return null;
            }
            positions.add(at + 1);
        }
        positions.sort(null);
        return String.join(" ", positions.stream().map(String::valueOf).toList());
    }

    /** Names written one after another. */
    public static List<String> names(String text) {
        List<String> names = new ArrayList<>();
        for (String name : text.split("[ ,;]+", -1)) {
            if (!name.isBlank()) {
                names.add(name);
            }
        }
        return names;
    }

    private static boolean same(String a, String b) {
        return a.strip().equalsIgnoreCase(b.strip());
    }

    /** Good uses over all of the recipes. */
    public static int goodUses(List<Recipe> recipes) {
        return recipes.stream().mapToInt(r -> r.good() == null ? 0 : r.good()).sum();
    }

    /** The one of a ribbon's recipes that is likeliest to be good again; null where none was good. */
    public static @Nullable Recipe best(List<Recipe> recipes) {
        return rated(recipes).stream()
                .filter(r -> r.recipe().good() != null && r.recipe().good() > 0)
                .max(Comparator.comparingDouble(Rated::share)
                        .thenComparing(r -> r.recipe().contacts(), Comparator.reverseOrder()))
                .map(Rated::recipe)
                .orElse(null);
    }

    /** Recipes by panel and side, the likeliest to be good first. */
    public static List<Rated> rated(List<Recipe> recipes) {
        Map<String, Integer> panels = new LinkedHashMap<>();
        int[] parent = new int[recipes.size()];
        int uses = 0;
        for (int i = 0; i < parent.length; i++) {
            Recipe r = recipes.get(i);
            parent[i] = panels.computeIfAbsent(r.panel().strip().toLowerCase(Locale.ROOT), p -> panels.size());
            uses += r.used() == null ? 0 : r.used();
        }
        int[] cell = new int[uses];
        int[] each = new int[uses];
        int[] good = new int[uses];
        int[] ones = new int[uses];
        int row = 0;
        for (int i = 0; i < parent.length; i++) {
            Recipe r = recipes.get(i);
            for (int u = 0; u < (r.used() == null ? 0 : r.used()); u++) {
                cell[row] = i;
                each[row] = row;
                good[row] = u < (r.good() == null ? 0 : r.good()) ? 1 : 0;
                ones[row++] = 1;
            }
        }
        List<Rated> rated = new ArrayList<>();
        if (parent.length == 0) {
            return rated;
        }
        ShrunkYield fit = ShrunkYield.fit(parent.length, cell, each, good, ones, new int[][] {parent}, LEVEL);
        for (int i = 0; i < parent.length; i++) {
            rated.add(new Rated(recipes.get(i), fit.mean(i), fit.low(i), fit.high(i)));
        }
        rated.sort(Comparator.comparing((Rated r) -> r.recipe().panel())
                .thenComparing(r -> r.recipe().side())
                .thenComparing(Comparator.comparingDouble(Rated::share).reversed())
                .thenComparing(r -> r.recipe().contacts()));
        return rated;
    }
}
