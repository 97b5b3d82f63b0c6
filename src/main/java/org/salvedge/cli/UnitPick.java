package org.salvedge.cli;

import java.util.ArrayList;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Set;
import java.util.stream.Collectors;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.Refused;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** A set named by its label, or by enough of it to be the only one. */
final class UnitPick {
    private static final int SHOWN = 10;

    private UnitPick() {}

    /** @throws Refused listing the candidates where the text is not enough */
    static UnitId unit(Ledger ledger, String typed) {
        List<UnitId> found = ledger.unitsLike(typed, SHOWN + 1);
        if (found.size() == 1) {
            return found.get(0);
        }
        if (found.isEmpty()) {
            throw new Refused("no set has the label \"" + typed + "\", nor one that holds it");
        }
        String list = found.stream().limit(SHOWN).map(UnitId::value).collect(Collectors.joining(", "));
        throw new Refused("\"" + typed + "\" may be " + list + (found.size() > SHOWN ? " or others" : "")
                + "; write more of the label");
    }

    /** Several sets, each once, in order of their labels. */
    static List<UnitId> units(Ledger ledger, List<String> typed) {
        Set<UnitId> units = new LinkedHashSet<>();
        for (String text : typed) {
            UnitId unit = unit(ledger, text);
            if (!units.add(unit)) {
                throw new Refused("set " + unit + " is named twice");
            }
        }
        List<UnitId> sorted = new ArrayList<>(units);
        sorted.sort(null);
        return sorted;
    }

    /** The entry that stands for a set, which is on record. */
    static Entry entry(Ledger ledger, UnitId unit) {
        return ledger.unit(unit).orElseThrow(() -> new Refused("there is no set " + unit));
    }

    static TvSet set(Entry entry) {
        if (entry.fact() instanceof TvSet set) {
            return set;
        }
        throw new IllegalStateException("entry " + entry.number() + " stands for no set");
    }
}
