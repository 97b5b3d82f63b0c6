package org.salvedge.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.cli.Recording.Put;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Exit;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Money;
import org.salvedge.shop.Part;
import org.salvedge.shop.Refused;
import org.salvedge.shop.UnitId;

/** A part out of stock goes into a set: its value is parts cost of the turn and takings of its donor. */
final class PartUse {
    private PartUse() {}

    /** The entry of a part that is in stock. */
    static Entry inStock(Ledger ledger, String label) {
        Entry entry = ledger.part(label)
                .orElseThrow(() ->
                        new Refused("there is no part \"" + label + "\"; `salvedge harvest` lists those in stock"));
        Part p = part(entry);
        if (p.attempt() != null) {
            throw new Refused("part " + p.part() + " was used in attempt " + p.attempt());
        }
        if (p.goneOn() != null) {
            throw new Refused("part " + p.part() + " has gone, on " + p.goneOn());
        }
        return entry;
    }

    static Part part(Entry entry) {
        if (entry.fact() instanceof Part p) {
            return p;
        }
        throw new IllegalStateException("entry " + entry.number() + " stands for no part");
    }

    /** What the parts cost, with what else was used; null where neither is said. */
    static @Nullable Money cost(Ledger ledger, List<String> labels, @Nullable Money other) {
        Money sum = other;
        for (String label : labels) {
            Money value = part(inStock(ledger, label)).value();
            sum = sum == null ? value : sum.plus(value);
        }
        return sum;
    }

    /** The parts are in; the attempt is on record, with their cost. */
    static List<Put> use(Ledger ledger, List<String> labels, Attempt in) {
        List<Put> put = new ArrayList<>();
        LocalDate day = in.startedAt().toLocalDate();
        for (String label : labels) {
            Entry entry = inStock(ledger, label);
            Part p = part(entry);
            if (in.unit().equals(p.fromUnit())) {
                throw new Refused("part " + p.part() + " came out of " + in.unit() + " itself; `undo` its entry "
                        + entry.number() + " instead");
            }
            Part used = new Part(
                    p.part(), p.fromUnit(), p.kind(), p.number(), p.on(), p.value(), p.tested(), in.number(), null);
            put.add(Recording.amend(ledger, entry.number(), used, "used in " + in.unit()));
            UnitId donor = p.fromUnit();
            if (donor != null) {
                put.addAll(Recording.put(ledger, List.of(takings(ledger, donor, day, p.value()))));
            }
        }
        return put;
    }

    /** Takings for a part of a set; the set itself stays as it is. */
    static Exit takings(Ledger ledger, UnitId donor, LocalDate day, Money gross) {
        return new Exit(
                donor,
                day,
                ExitCommand.nextSeq(ledger, donor, day),
                ExitKind.STRIPPED,
                false,
                gross,
                null,
                null,
                null,
                null,
                null,
                null,
                null,
                null);
    }
}
