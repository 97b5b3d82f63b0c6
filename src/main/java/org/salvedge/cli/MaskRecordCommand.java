package org.salvedge.cli;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.Recipe;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Residual;
import org.salvedge.shop.Side;
import org.salvedge.shop.TvSet;
import picocli.CommandLine.Option;

/** A mask was used: a new recipe, or one more use of a known one. */
@picocli.CommandLine.Command(
        description = "Put a use of a mask into the recipe book: which contacts of which panel, and how it turned out.",
        footer = {
            "",
            "The same panel, side and contacts again count as one more use. Example:",
            "salvedge mask record --unit L0042-007 --side left --contacts \"2 5 6\" --good yes"
        })
final class MaskRecordCommand extends Recording {
    private static final int MOST = 999;

    @Option(names = "--panel", paramLabel = "MODEL", description = "Model number on the panel's own label.")
    @Nullable
    String panel;

    @Option(names = "--unit", paramLabel = "UNIT", description = "The set it was used on, whose panel is on record.")
    @Nullable
    String unit;

    @Option(names = "--side", required = true, paramLabel = "left|right", description = "Which ribbon, from the front.")
    @Nullable
    Side side;

    @Option(
            names = "--contacts",
            required = true,
            paramLabel = "LIST",
            description = "Masked contacts, as in \"3 4 5 9\".")
    String contacts = "";

    @Option(names = "--signals", paramLabel = "NAMES", description = "Their names in the same order.")
    @Nullable
    String signals;

    @Option(
            names = "--good",
            paramLabel = "yes|no",
            arity = "1",
            description = "Whether the picture was acceptable; left out = the recipe is kept, no use is counted.")
    @Nullable
    Boolean good;

    @Option(names = "--residual-close", paramLabel = "none|faint|visible", description = "Left to see close up.")
    @Nullable
    Residual close;

    @Option(
            names = "--residual-viewing",
            paramLabel = "none|faint|visible",
            description = "Left to see at the design viewing distance.")
    @Nullable
    Residual viewing;

    @Option(names = "--note", paramLabel = "TEXT", description = "Anything else.")
    @Nullable
    String note;

    @Override
    List<Put> record(Session session, Ledger ledger) {
        if ((panel == null) == (unit == null)) {
            throw new Usage("give --panel MODEL, or --unit UNIT whose panel is on record");
        }
        String of = panel;
        if (unit != null) {
            TvSet set = UnitPick.set(UnitPick.entry(ledger, UnitPick.unit(ledger, unit)));
            of = set.panel();
            if (of == null) {
                throw new Refused("the panel of " + set.unit() + " is not on record; give --panel MODEL");
            }
        }
        Recipe use = use(java.util.Objects.requireNonNull(of).strip());
        for (Entry entry : ledger.recipes(use.panel())) {
            if (entry.fact() instanceof Recipe known
                    && known.side() == use.side()
                    && known.contacts().equals(use.contacts())) {
                return List.of(amend(ledger, entry.number(), sum(known, use), "used again"));
            }
        }
        return put(ledger, List.of(use));
    }

    private Recipe use(String of) {
        List<Integer> positions = new ArrayList<>();
        for (String word : contacts.strip().split("[ ,]+", -1)) {
            if (!word.matches("[0-9]{1,3}") || Integer.parseInt(word) < 1 || Integer.parseInt(word) > MOST) {
                throw new Usage("--contacts: \"" + word + "\" is not a contact; they count from 1 along the ribbon");
            }
            if (!positions.contains(Integer.valueOf(word))) {
                positions.add(Integer.valueOf(word));
            }
        }
        if (signals == null) {
            positions.sort(null);
        } else {
            for (int i = 1; i < positions.size(); i++) {
                if (positions.get(i) <= positions.get(i - 1)) {
                    throw new Usage("--contacts: write them in ascending order where --signals names them");
                }
            }
        }
        return new Recipe(
                of,
                java.util.Objects.requireNonNull(side),
                Wording.list(positions),
                signals,
                close,
                viewing,
                good == null ? null : 1,
                good == null ? null : good ? 1 : 0,
                note);
    }

    private static Recipe sum(Recipe known, Recipe use) {
        return new Recipe(
                known.panel(),
                known.side(),
                known.contacts(),
                use.signals() == null ? known.signals() : use.signals(),
                use.residualClose() == null ? known.residualClose() : use.residualClose(),
                use.residualViewing() == null ? known.residualViewing() : use.residualViewing(),
                plus(known.used(), use.used()),
                plus(known.good(), use.good()),
                use.note() == null ? known.note() : use.note());
    }

    private static @Nullable Integer plus(@Nullable Integer a, @Nullable Integer b) {
        return a == null ? b : b == null ? a : Integer.valueOf(Math.addExact(a, b));
    }
}
