package org.salvedge.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.salvedge.bench.BenchQueue.Place;
import org.salvedge.bench.PartsAtHand;
import org.salvedge.bench.RecipeBook;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Part;
import org.salvedge.shop.PartKind;
import org.salvedge.shop.Recipe;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;
import org.salvedge.worth.turn.OpenBench;

/** What stands beside a set in the queue: what to do first, parts, place, the reason. */
final class QueueNotes {
    private final BenchPlan plan;
    private final AsOfView view;
    private final List<RecipeBook.Rated> recipes;
    private final PartsAtHand parts;
    private final DonorView donors;
    private final Map<String, TvSet> sets = new HashMap<>();

    QueueNotes(Session session, Ledger ledger, BenchPlan plan, @Nullable LocalDate asOf) {
        this.plan = plan;
        view = new AsOfView(ledger, asOf, session.shop().settings().zone());
        recipes = RecipeBook.rated(ledger.all(Recipe.class));
        List<Part> all = ledger.all(Part.class);
        parts = PartsAtHand.of(all, this::family);
        donors = new DonorView(plan, all, this::family);
    }

    /**
     * @param part the part in stock, or that it is to be got; null where the fix needs none
     */
    record Note(
            String model,
            String set,
            String doFirst,
            @Nullable String part,
            @Nullable String place,
            String why,
            String briefly) {}

    private @Nullable TvSet set(String unit) {
        return sets.computeIfAbsent(
                unit, u -> AsOfView.setIn(view.entriesOf(new UnitId(u))).orElse(null));
    }

    private @Nullable String family(String unit) {
        TvSet set = set(unit);
        return set == null ? null : set.family();
    }

    /** Which part goes into which set. */
    DonorView donors() {
        return donors;
    }

    Note of(List<Place> order, int i) {
        Place place = order.get(i);
        OpenBench open =
                java.util.Objects.requireNonNull(plan.open(place.candidate().unit()));
        TvSet set = set(place.candidate().unit());
        Fix fix = plan.fix(open);
        String first = fix == null ? "diagnose" : fix.equals(Fix.NONE) ? look(open) : fix.code();
        String part = part(fix, open.what().family());
        Optional<RecipeBook.Rated> recipe = recipe(set, fix);
        if (open.retest()) {
            first = "retest";
        } else if (recipe.isPresent()) {
            first = "mask " + recipe.get().recipe().contacts()
                    + tally(recipe.get().recipe());
        }
        List<String> why = why(order, i, open, recipe.isPresent(), part);
        return new Note(
                set == null ? open.what().family() : set.model(),
                name(set, open),
                first,
                part,
                set == null ? null : set.place(),
                String.join("; ", why),
                why.get(0));
    }

    private String look(OpenBench open) {
        boolean glass = plan.prospect(open.what()).likely().equals(Fault.PANEL_BROKEN.code());
        return glass ? "look at the glass" : "test";
    }

    private static String name(@Nullable TvSet set, OpenBench open) {
        return set == null
                ? open.what().family()
                : set.maker() + " " + set.model() + (set.inches() == null ? "" : " " + set.inches() + "\"");
    }

    private static String tally(Recipe r) {
        return r.used() == null ? "" : " (" + (r.good() == null ? 0 : r.good()) + "/" + r.used() + ")";
    }

    private @Nullable String part(@Nullable Fix fix, String family) {
        PartKind needed = fix == null ? null : PartKind.neededBy(fix);
        if (needed == null) {
            return null;
        }
        List<Part> fitting = parts.fitting(needed, family);
        return fitting.isEmpty() ? "to get" : "part " + fitting.get(0).part();
    }

    /** The recipe of the set's panel that is likeliest to be good. */
    private Optional<RecipeBook.Rated> recipe(@Nullable TvSet set, @Nullable Fix fix) {
        if (set == null || set.panel() == null || !Fix.CONTACT_MASK.equals(fix)) {
            return Optional.empty();
        }
        String panel = set.panel();
        return recipes.stream()
                .filter(r -> r.recipe().panel().equalsIgnoreCase(panel)
                        && r.recipe().good() != null
                        && r.recipe().good() > 0)
                .max(java.util.Comparator.comparingDouble(RecipeBook.Rated::share));
    }

    private static boolean alike(Place a, Place b) {
        return a.candidate().family().equals(b.candidate().family())
                && a.candidate()
                        .prospect()
                        .likely()
                        .equals(b.candidate().prospect().likely());
    }

    /** The first of the run of like sets that a place belongs to: it says in full why. */
    private static int first(List<Place> order, int i) {
        int first = i;
        while (first > 0 && order.get(first).sameSetUp() && alike(order.get(first), order.get(first - 1))) {
            first--;
        }
        return first;
    }

    private static List<String> why(List<Place> order, int i, OpenBench open, boolean recipe, @Nullable String part) {
        Place place = order.get(i);
        List<String> why = new ArrayList<>();
        int first = first(order, i);
        if (first < i) {
            why.add("as #" + (first + 1));
        }
        if (recipe) {
            why.add("recipe known");
        }
        if (part != null && part.startsWith("part ")) {
            why.add("part here");
        } else if (part != null) {
            why.add("part to get");
        }
        if (open.what().again()) {
            why.add(open.lastFix() == null ? "came back" : open.lastFix() + " failed");
        } else if (open.what().found() != null) {
            why.add("fault found");
        }
        int days = place.candidate().days();
        boolean oldest = days > 0 && order.stream().noneMatch(p -> p.candidate().days() > days);
        if (oldest) {
            why.add("oldest, " + days + " d");
        }
        var p = place.candidate().prospect();
        why.add(String.format(
                Locale.ROOT, "%.2f a min, saved %.2f", p.gain() / Math.max(1, place.minutes()), p.saved()));
        return why;
    }
}
