package org.salvedge.ledger;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.Instant;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.TreeMap;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.Exit;
import org.salvedge.shop.Fact;
import org.salvedge.shop.LotId;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** Looks entries up, within a transaction of the caller. */
record Entries(Store store) {

    Optional<Entry> entry(long number) throws SQLException {
        Optional<Stored<? extends Fact>> row = store.entry(number);
        if (row.isPresent()) {
            return Optional.of(entry(number, row.get().fact()));
        }
        boolean undoing = Database.number(store.connection(), "SELECT 1 FROM supersede WHERE new = ?", 0, number) == 1;
        return undoing ? Optional.of(entry(number, null)) : Optional.empty();
    }

    private Entry entry(long number, @Nullable Fact fact) throws SQLException {
        Instant recorded = null;
        try (PreparedStatement select = store.connection()
                .prepareStatement("SELECT recorded_at FROM batch WHERE first <= ? ORDER BY first DESC LIMIT 1")) {
            select.setLong(1, number);
            try (ResultSet row = select.executeQuery()) {
                if (row.next()) {
                    long millis = row.getLong(1);
                    recorded = row.wasNull() ? null : Instant.ofEpochMilli(millis);
                }
            }
        }
        try (PreparedStatement select = store.connection()
                .prepareStatement(
                        "SELECT (SELECT old FROM supersede WHERE new = ?1), (SELECT why FROM supersede WHERE new"
                                + " = ?1), (SELECT new FROM supersede WHERE old = ?1)")) {
            select.setLong(1, number);
            try (ResultSet row = select.executeQuery()) {
                row.next();
                return new Entry(number, fact, recorded, row.getLong(1), row.getLong(3), row.getString(2));
            }
        }
    }

    /** The latest entry that stands and is no undoing. */
    Optional<Entry> latest() throws SQLException {
        try (PreparedStatement select = store.connection()
                .prepareStatement("SELECT first, last, what FROM batch WHERE what <> ? ORDER BY first DESC")) {
            select.setString(1, Batches.UNDO);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    long first = row.getLong(1);
                    // Of an amendment the first entry is the one that was asked for; shares that follow from it come
                    // after.
                    long last = row.getString(3).equals(Batches.AMEND) ? first : row.getLong(2);
                    for (long number = last; number >= first; number--) {
                        if (store.stands(number)) {
                            return entry(number);
                        }
                    }
                }
            }
        }
        return Optional.empty();
    }

    List<Entry> of(UnitId label) throws SQLException {
        int unit = store.codec().units().find(label.value());
        if (unit < 0) {
            return List.of();
        }
        List<Stored<? extends Fact>> rows = new ArrayList<>();
        List<Stored<TvSet>> sets = store.where(Tables.UNITS, "unit = ?", unit);
        rows.addAll(sets);
        rows.addAll(store.where(Tables.ATTEMPTS, "unit = ?", unit));
        rows.addAll(store.where(Tables.EXITS, "unit = ?", unit));
        rows.addAll(store.where(Tables.COMEBACKS, "unit = ?", unit));
        rows.addAll(store.where(Tables.PARTS, "from_unit = ?", unit));
        rows.addAll(store.where(Tables.OFFERS, "unit = ?", unit));
        LocalDate arrival = LocalDate.EPOCH;
        if (!sets.isEmpty()) {
            var lot = new References(store).lot(sets.get(sets.size() - 1).fact().lot());
            arrival = lot.isPresent() ? lot.get().fact().arrivalDay() : arrival;
        }
        return inOrderOfTime(rows, arrival);
    }

    List<Entry> of(LotId label) throws SQLException {
        int lot = store.codec().lots().find(label.value());
        List<Stored<? extends Fact>> rows = new ArrayList<>(store.where(Tables.LOTS, "lot = ?", lot));
        rows.addAll(store.where(Tables.BIDS, "lot = ?", lot));
        return inOrderOfTime(rows, LocalDate.EPOCH);
    }

    /** When it happened; what corrects an entry stands where that one stood, or where its own time puts it. */
    private record Place(LocalDateTime time, int kind, long entry) implements Comparable<Place> {
        private static final Comparator<Place> ORDER =
                Comparator.comparing(Place::time).thenComparingInt(Place::kind).thenComparingLong(Place::entry);

        @Override
        public int compareTo(Place other) {
            return ORDER.compare(this, other);
        }
    }

    private List<Entry> inOrderOfTime(List<Stored<? extends Fact>> rows, LocalDate arrival) throws SQLException {
        Map<Place, Entry> ordered = new TreeMap<>();
        for (Stored<? extends Fact> row : rows) {
            boolean firstOfDay = row.fact() instanceof Comeback back && goneBefore(back, rows);
            Place place = firstOfDay
                    ? new Place(((Comeback) row.fact()).on().atStartOfDay(), Tables.ALL.size(), row.entry())
                    : place(row, arrival);
            Entry entry = entry(row.entry(), row.fact());
            ordered.put(place, entry);
            if (entry.supersededBy() != 0 && store.entry(entry.supersededBy()).isEmpty()) {
                Place after = new Place(place.time(), place.kind(), entry.supersededBy());
                ordered.put(after, entry(entry.supersededBy(), null));
            }
        }
        return List.copyOf(ordered.values());
    }

    /** Whether the set stood sold from an earlier day when the day of its comeback began: what it did that day came after. */
    private boolean goneBefore(Comeback back, List<Stored<? extends Fact>> rows) throws SQLException {
        LocalDate gone = LocalDate.MIN;
        LocalDate here = LocalDate.MIN;
        for (Stored<? extends Fact> row : rows) {
            if (!store.stands(row.entry())) {
                continue;
            }
            if (row.fact() instanceof Exit e && e.leaves() && e.on().isBefore(back.on())) {
                gone = e.on().isAfter(gone) ? e.on() : gone;
            } else if (row.fact() instanceof Comeback c && c.restocked() && c.on().isBefore(back.on())) {
                here = c.on().isAfter(here) ? c.on() : here;
            }
        }
        return gone.isAfter(here);
    }

    private static <F extends Fact> Place place(Stored<F> row, LocalDate arrival) {
        F fact = row.fact();
        Table<F> table = Tables.of(fact);
        int kind = Tables.ALL.indexOf(table);
        if (fact instanceof Attempt attempt) {
            return new Place(attempt.startedAt(), kind, row.entry());
        }
        // Attempts of a day come before what is known by the day only, apart from the set's own arrival.
        LocalDateTime time =
                fact instanceof TvSet ? arrival.atStartOfDay() : table.day(fact).atTime(23, 59, 59);
        return new Place(time, kind, row.entry());
    }
}
