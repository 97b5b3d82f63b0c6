package org.salvedge.cli;

import java.util.LinkedHashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.bench.MaskPlan;
import org.salvedge.bench.MaskPrior;
import org.salvedge.bench.MaskText;
import org.salvedge.bench.MaskTrial;
import org.salvedge.bench.RecipeBook;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.Column;
import org.salvedge.report.Kind;
import org.salvedge.report.Plural;
import org.salvedge.report.Table;
import org.salvedge.shop.Recipe;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Side;
import org.salvedge.shop.TvSet;
import picocli.CommandLine.Option;

/** Which contacts to mask next. */
@picocli.CommandLine.Command(
        description = "Which contacts to mask next, so that the expected number of trials is least.",
        footer = {
            "",
            "A trial masks the contacts named (counted from 1 along the ribbon) and looks: good if and only if every culprit is",
            "among them. Contacts without printed names: find each by continuity from the other side's test points, and give the",
            "names with --signals, so that recipes of the other side count too. Example:",
            "salvedge mask plan --panel P55-1234 --contacts 7 --tried \"1,2,3=good;1,2=bad\""
        })
final class MaskPlanCommand extends Command {
    @Option(names = "--panel", paramLabel = "MODEL", description = "Model number on the panel's own label.")
    @Nullable
    String panel;

    @Option(
            names = "--unit",
            paramLabel = "UNIT",
            description = "The set on the bench; its panel, and where to look from.")
    @Nullable
    String unit;

    @Option(names = "--side", paramLabel = "left|right", description = "Which ribbon, seen from the front.")
    @Nullable
    Side side;

    @Option(names = "--contacts", required = true, paramLabel = "N", description = "Row-signal contacts, 1 to 16.")
    int contacts;

    @Option(names = "--signals", paramLabel = "NAMES", description = "Their names in order, separated by spaces.")
    @Nullable
    String signals;

    @Option(
            names = "--prior",
            paramLabel = "one|run|P|P1,...",
            description = "How likely culprits are (default: the panel's recipes, else 0.3 a contact).")
    @Nullable
    String prior;

    @Option(
            names = "--tolerance",
            paramLabel = "T",
            description = "Needless contacts a mask may hold (default: 0).",
            defaultValue = "0")
    int tolerance;

    @Option(
            names = "--not-here",
            paramLabel = "Q",
            description = "Chance that no mask on this side helps (default: 0).",
            defaultValue = "0")
    double notHere;

    @Option(
            names = "--error",
            paramLabel = "E",
            description = "Chance that a verdict is wrong (default: 0).",
            defaultValue = "0")
    double error;

    @Option(
            names = "--confidence",
            paramLabel = "C",
            description = "With --error: how sure before the plan ends (default: 0.95).",
            defaultValue = "0.95")
    double confidence;

    @Option(names = "--tried", paramLabel = "TRIALS", description = "Trials so far, as in 1,2,3=good;1,2=bad.")
    String tried = "";

    @Option(names = "--format", paramLabel = "table|json", description = "table (default) or json.")
    Format format = Format.TABLE;

    /** What the plan rests on. */
    private record Basis(
            String panel,
            double[] prior,
            String words,
            @Nullable String distance,
            @Nullable Recipe known) {}

    @Override
    int run(Session session) {
        if (format == Format.CSV) {
            throw new Usage("--format: mask plan prints table or json");
        }
        if ((panel == null) == (unit == null)) {
            throw new Usage("give --panel MODEL, or --unit UNIT whose panel is on record");
        }
        if (contacts < 1 || contacts > MaskPrior.MOST_CONTACTS) {
            throw new Usage("--contacts: \"" + contacts + "\" is not from 1 to " + MaskPrior.MOST_CONTACTS
                    + ". Leave power and ground out: only row-signal contacts are masked");
        }
        List<String> names = signals == null ? List.of() : RecipeBook.names(signals);
        if (!names.isEmpty() && names.size() != contacts) {
            throw new Usage("--signals: " + names.size() + " names for " + contacts + " contacts");
        }
        Basis basis = basis(session, names);
        List<MaskTrial> trials = typed("--tried", () -> MaskText.trials(tried, contacts));
        MaskPlan.Question question = typed(
                "mask plan",
                () -> new MaskPlan.Question(contacts, basis.prior(), tolerance, notHere, error, confidence, trials));
        MaskPlan.Answer answer;
        try {
            answer = MaskPlan.of(question);
        } catch (IllegalArgumentException e) {
            throw new Refused(
                    "--tried: " + e.getMessage()
                            + ". Look again, or allow for wrong verdicts with --error 0.05 or for a fault elsewhere with --not-here");
        }
        if (format == Format.JSON) {
            session.json(json(basis, trials, answer));
        } else {
            print(session, basis, trials, answer, names);
        }
        return Status.DONE;
    }

    private interface Making<T> {
        T make();
    }

    private static <T> T typed(String option, Making<T> making) {
        try {
            return making.make();
        } catch (IllegalArgumentException e) {
            throw new Usage(option + ": " + e.getMessage());
        }
    }

    private Basis basis(Session session, List<String> names) {
        String of = panel;
        String distance = null;
        List<Recipe> recipes = List.of();
        if (unit != null || prior == null && session.shop().exists()) {
            try (Ledger ledger = session.shop().read()) {
                if (unit != null) {
                    TvSet set = UnitPick.set(UnitPick.entry(ledger, UnitPick.unit(ledger, unit)));
                    distance = Distance.words(set);
                    of = set.panel();
                }
                recipes = ledger.all(Recipe.class);
            }
        }
        if (of == null) {
            throw new Refused("the panel of " + unit + " is not on record; read its own label and give --panel MODEL");
        }
        if (prior != null) {
            String typed = prior;
            return new Basis(of, typed("--prior", () -> MaskText.prior(typed, contacts)), "as given", distance, null);
        }
        double[] usual = MaskPrior.independent(contacts, MaskPrior.USUAL);
        List<Recipe> known = RecipeBook.ofRibbon(recipes, of, side, names);
        int good = RecipeBook.goodUses(known);
        return good == 0
                ? new Basis(
                        of, usual, "0.3 a contact (assumed: no recipe of this panel with a good use)", distance, null)
                : new Basis(
                        of,
                        MaskPrior.fromRecipes(usual, known),
                        Plural.of(known.size(), "recipe") + " of this panel, " + Plural.of(good, "good use")
                                + ", beside 0.3 a contact",
                        distance,
                        RecipeBook.best(known));
    }

    private Map<String, @Nullable Object> json(Basis basis, List<MaskTrial> trials, MaskPlan.Answer answer) {
        Map<String, @Nullable Object> json = new LinkedHashMap<>();
        json.put("panel", basis.panel());
        json.put("contacts", contacts);
        json.put("tried", trials.size());
        json.put("done", answer.done());
        json.put("next", answer.next() == null ? null : MaskText.positions(answer.next()));
        json.put("mask", answer.mask() == null ? null : MaskText.positions(answer.mask()));
        json.put("not_here_sure", answer.notHereSure());
        json.put("expected_trials", answer.expectedTrials());
        json.put("posterior", answer.posterior());
        json.put("not_here", answer.notHere());
        return json;
    }

    private void print(
            Session session, Basis basis, List<MaskTrial> trials, MaskPlan.Answer answer, List<String> names) {
        Integer next = answer.next();
        Integer mask = answer.mask();
        if (mask != null) {
            session.say("Done: keep " + contacts(mask, names) + " masked, the rest open.");
            session.say("Keep it for the next set: salvedge mask record --panel " + basis.panel() + " --side "
                    + (side == null ? "left|right" : side.code()) + " --contacts \""
                    + Wording.list(MaskText.positions(mask)) + "\" --good yes");
        } else if (next != null) {
            int rest = (1 << contacts) - 1 & ~next;
            session.say("Mask " + contacts(next, names)
                    + (rest == 0 ? "." : ", leave " + contacts(rest, names) + " open."));
            Recipe known = basis.known();
            if (known != null && trials.isEmpty()) {
                Wording.say(
                        session,
                        "Or first the recipe: mask " + known.contacts() + " (good "
                                + (known.good() == null ? 0 : known.good()) + " of " + known.used()
                                + "). If its picture is acceptable, it may stay: further trials only free contacts that"
                                + " are masked needlessly.");
            }
            session.say(String.format(
                    Locale.ROOT, "About %.1f trials to come, this one included.", answer.expectedTrials()));
            String before = tried.isBlank() ? "" : tried.strip() + ";";
            session.say("Then: --tried \"" + before
                    + Wording.list(MaskText.positions(next)).replace(' ', ',') + "=good\", or =bad");
        } else {
            session.say("No mask on this side helps: look at the other side, the timing board, the glass.");
        }
        if (basis.distance() != null) {
            session.say(basis.distance());
        }
        session.say("Prior: " + basis.words() + "; " + Plural.of(trials.size(), "trial") + " so far"
                + (answer.notHere() > 0
                        ? String.format(Locale.ROOT, "; no mask here helps: %.2f", answer.notHere())
                        : "")
                + ".");
        Table.Builder table = Table.of(
                Column.of("contact", "contact", Kind.COUNT),
                Column.of("signal", "signal", Kind.TEXT),
                Column.of("culprit", "culprit", Kind.RATIO),
                Column.screen("", Kind.BAR));
        for (int i = 0; i < contacts; i++) {
            double p = answer.posterior()[i];
            table.row(i + 1, names.isEmpty() ? "" : names.get(i), p, p);
        }
        session.print(table.build(), Format.TABLE);
    }

    private static String contacts(int set, List<String> names) {
        List<Integer> positions = MaskText.positions(set);
        if (positions.isEmpty()) {
            return "nothing";
        }
        String list = (positions.size() == 1 ? "contact " : "contacts ") + Wording.list(positions);
        return names.isEmpty()
                ? list
                : list + " ("
                        + Wording.list(
                                positions.stream().map(i -> names.get(i - 1)).toList())
                        + ")";
    }
}
