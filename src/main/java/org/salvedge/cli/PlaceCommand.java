package org.salvedge.cli;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Where a set stands. */
@picocli.CommandLine.Command(
        description = "Record where sets stand: shelf, bay.",
        footer = {"", "Example: salvedge place L0042-007 L0042-008 \"shelf 3\""})
final class PlaceCommand extends Recording {
    @Parameters(
            arity = "1..*",
            paramLabel = "UNIT",
            description = "Labels, or enough of each to be the only one; without --place the last word is the place.")
    List<String> units = new ArrayList<>();

    @Option(names = "--place", paramLabel = "TEXT", description = "The shelf or bay; \"\" = nowhere in particular.")
    @Nullable
    String place;

    @Override
    List<Put> record(Session session, Ledger ledger) {
        List<String> labels = new ArrayList<>(units);
        if (place == null && labels.size() < 2) {
            throw new Usage("missing: --place TEXT");
        }
        String to = place == null ? labels.remove(labels.size() - 1) : place;
        List<Put> put = new ArrayList<>();
        for (UnitId unit : UnitPick.units(ledger, labels)) {
            Entry entry = UnitPick.entry(ledger, unit);
            TvSet moved = UnitPick.set(entry).toBuilder()
                    .place(to.isBlank() ? null : to.strip())
                    .build();
            long number = ledger.amend(entry.number(), moved, "moved");
            put.add(new Put(number, unit + (to.isBlank() ? " in no place" : " at " + to.strip())));
        }
        return put;
    }
}
