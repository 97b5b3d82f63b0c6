package org.salvedge.shop;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;

/**
 * A lot as it came in: what was listed, what of that was missing, what was there beside. Gives every set its label and family.
 * Labels count through the list as it stands, missing sets too, so that a label can be found in the list; extras come last.
 */
public final class Intake {
    private static final int DIGITS = 3;

    private final Lot lot;
    private final ModelBook models;
    private final List<Line> lines = new ArrayList<>();

    /** A set before it has a label. */
    private record Line(TvSet set, boolean listed) {}

    public Intake(Lot lot, ModelBook models) {
        this.lot = lot;
        this.models = models;
    }

    /** Adds one set of the manifest; null = the manifest does not say. */
    public void listed(
            String sheet,
            int line,
            @Nullable String maker,
            @Nullable String model,
            @Nullable Quantity inches,
            @Nullable String serial,
            Claim claimed,
            @Nullable String claimedText,
            @Nullable BigDecimal asking) {
        String name = model == null || model.isBlank() ? TvSet.UNKNOWN : model;
        TvSet.Builder set = blank().sheet(sheet.isEmpty() ? null : sheet)
                .line(line)
                .maker(maker == null || maker.isBlank() ? models.maker(name) : models.makerAsKnown(maker))
                .model(name)
                .family(models.family(name))
                .inches(inches)
                .serial(serial)
                .claimed(claimed)
                .claimedText(claimedText);
        if (asking != null && asking.signum() >= 0) {
            set.asking(Money.of(asking, lot.currency(), RoundingMode.HALF_UP));
        }
        lines.add(new Line(set.build(), true));
    }

    /** Adds a set that was on the pallet but not on the manifest. */
    public void extra(String model) {
        if (model.isBlank()) {
            throw new Refused("--extra: a set needs a model number, or \"" + TvSet.UNKNOWN + "\"");
        }
        lines.add(new Line(
                blank().maker(models.maker(model))
                        .model(model)
                        .family(models.family(model))
                        .inches(models.inches(model))
                        .claimed(Claim.OTHER)
                        .build(),
                false));
    }

    private TvSet.Builder blank() {
        return TvSet.builder(new UnitId(lot.lot() + "-0"), lot.lot());
    }

    /**
     * Marks sets of a line as not arrived, the last ones of the line first.
     *
     * @throws Refused if the manifest has no such line, it stands on several sheets, or it holds fewer sets
     */
    public void missing(Missing gone) {
        List<Integer> at = new ArrayList<>();
        TreeSet<String> sheets = new TreeSet<>(Text.CODE_POINTS);
        for (int i = 0; i < lines.size(); i++) {
            TvSet set = lines.get(i).set();
            if (lines.get(i).listed()
                    && Integer.valueOf(gone.line()).equals(set.line())
                    && (gone.sheet() == null || gone.sheet().equals(set.sheet()))) {
                at.add(i);
                sheets.add(set.sheet() == null ? "" : set.sheet());
            }
        }
        if (at.isEmpty()) {
            throw new Refused(
                    "--missing " + gone + ": the manifest has no set on that line. `salvedge preview` lists the lines");
        }
        if (sheets.size() > 1) {
            throw new Refused("--missing " + gone + ": line " + gone.line() + " stands on the sheets "
                    + String.join(", ", sheets) + ". Write the sheet before it: " + sheets.first() + "!" + gone.line());
        }
        at.removeIf(i -> !lines.get(i).set().arrived());
        if (gone.sets() == null && at.size() > 1) {
            throw new Refused("--missing " + gone + ": that line holds " + at.size()
                    + " sets. Say how many are missing: " + gone + "x1 to " + gone + "x" + at.size());
        }
        int sets = gone.sets() == null ? 1 : gone.sets();
        if (sets > at.size()) {
            throw new Refused("--missing " + gone + ": " + (at.isEmpty() ? "none" : "only " + at.size())
                    + " of that line " + (at.size() == 1 ? "is" : "are") + " left to be missing");
        }
        for (int i : at.subList(at.size() - sets, at.size())) {
            lines.set(i, new Line(lines.get(i).set().toBuilder().arrived(false).build(), true));
        }
    }

    /** The sets with their labels, in order of the list. */
    public List<TvSet> sets() {
        int digits = Math.max(DIGITS, Integer.toString(lines.size()).length());
        List<TvSet> sets = new ArrayList<>(lines.size());
        for (Line line : lines) {
            UnitId unit =
                    new UnitId(lot.lot() + "-" + String.format(Locale.ROOT, "%0" + digits + "d", sets.size() + 1));
            sets.add(line.set().labelled(unit));
        }
        return sets;
    }
}
