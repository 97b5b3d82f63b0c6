package org.salvedge.ledger;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Optional;
import org.salvedge.shop.LotId;
import org.salvedge.shop.TvSet;

/** Looks up what stands by other things than its key, within a transaction of the caller. */
record Lookups(Store store) {
    List<Entry> recipes(String panel) throws SQLException {
        List<Entry> entries = new ArrayList<>();
        for (var row : store.standing(Tables.RECIPES, "1")) {
            if (row.fact().panel().equals(panel)) {
                new Entries(store).entry(row.entry()).ifPresent(entries::add);
            }
        }
        return entries;
    }

    Optional<Entry> part(String label) throws SQLException {
        for (var row : store.standing(Tables.PARTS, "1")) {
            if (row.fact().part().equalsIgnoreCase(label)) {
                return new Entries(store).entry(row.entry());
            }
        }
        return Optional.empty();
    }

    List<TvSet> waiting() throws SQLException {
        List<TvSet> sets = new ArrayList<>();
        store.standing(Tables.UNITS, "waiting_for IS NOT NULL").forEach(s -> sets.add(s.fact()));
        sets.sort(Comparator.comparing(TvSet::unit));
        return sets;
    }

    List<TvSet> setsOf(LotId lot) throws SQLException {
        List<TvSet> sets = new ArrayList<>();
        new References(store).unitsOf(lot).forEach(s -> sets.add(s.fact()));
        sets.sort(Comparator.comparing(TvSet::unit));
        return sets;
    }
}
