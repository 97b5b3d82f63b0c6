package org.salvedge.ledger;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeSet;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Fact;
import org.salvedge.shop.LotId;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** Which facts that happened by a day were recorded between two entries; of the kinds that a month's review counts. */
final class RecordedSince {
    private static final List<Table<?>> KINDS =
            List.of(Tables.LOTS, Tables.UNITS, Tables.ATTEMPTS, Tables.EXITS, Tables.COMEBACKS, Tables.BIDS);

    private final Store store;
    private final long after;
    private final long upTo;
    private final LocalDate happenedBy;
    private final Map<LotId, LocalDate> bought = new HashMap<>();

    /**
     * @param after entries up to this one are not looked at
     * @param upTo nor those behind this one
     */
    RecordedSince(Store store, long after, long upTo, LocalDate happenedBy) {
        this.store = store;
        this.after = after;
        this.upTo = upTo;
        this.happenedBy = happenedBy;
    }

    /** One for each kind of which there is something. */
    List<Recorded> list() throws SQLException {
        List<Recorded> all = new ArrayList<>();
        for (Table<?> table : KINDS) {
            Recorded recorded = of(table);
            if (recorded.recorded() + recorded.corrected() + recorded.takenBack() > 0) {
                all.add(recorded);
            }
        }
        return all;
    }

    private <F extends Fact> Recorded of(Table<F> table) throws SQLException {
        String name = table.name();
        Map<Long, F> before = new HashMap<>();
        for (Stored<F> old :
                store.where(table, "entry IN (SELECT old FROM supersede WHERE new > ? AND new <= ?)", after, upTo)) {
            before.put(old.entry(), old.fact());
        }
        Map<Long, Long> replaced = replaced(name);
        Set<Long> answered = new HashSet<>();
        Set<UnitId> sets = new TreeSet<>();
        int recorded = 0;
        int corrected = 0;
        for (Stored<F> row : store.where(table, "entry > ? AND entry <= ?", after, upTo)) {
            Long old = replaced.get(row.entry());
            F was = old == null ? null : before.get(old);
            answered.add(old == null ? 0L : old);
            if (happened(table, row.fact()) || happened(table, was)) {
                recorded += old == null ? 1 : 0;
                corrected += old != null && old <= after ? 1 : 0;
                add(sets, row.fact());
            }
        }
        int takenBack = 0;
        for (Map.Entry<Long, F> old : before.entrySet()) {
            if (!answered.contains(old.getKey()) && happened(table, old.getValue())) {
                takenBack++;
                add(sets, old.getValue());
            }
        }
        return new Recorded(name, recorded, corrected, takenBack, List.copyOf(sets));
    }

    /** Of each correction the entry that it replaced. The sign keeps SQLite from trying each entry of the table among the replaced. */
    private Map<Long, Long> replaced(String table) throws SQLException {
        Map<Long, Long> replaced = new HashMap<>();
        try (PreparedStatement select = store.connection()
                .prepareStatement(
                        "SELECT new, old FROM supersede WHERE new > ? AND new <= ? AND +old IN (SELECT entry FROM "
                                + table + ")")) {
            Database.bind(select, after, upTo);
            try (ResultSet row = select.executeQuery()) {
                while (row.next()) {
                    replaced.put(row.getLong(1), row.getLong(2));
                }
            }
        }
        return replaced;
    }

    private static void add(Set<UnitId> sets, Fact fact) {
        UnitId unit = References.setOf(fact);
        if (unit != null) {
            sets.add(unit);
        }
    }

    private <F extends Fact> boolean happened(Table<F> table, @Nullable F fact) throws SQLException {
        return fact != null && !day(table, fact).isAfter(happenedBy);
    }

    private <F extends Fact> LocalDate day(Table<F> table, F fact) throws SQLException {
        if (!(fact instanceof TvSet set)) {
            return table.day(fact);
        }
        LocalDate known = bought.get(set.lot());
        if (known == null) {
            var lot = new References(store).lot(set.lot());
            known = lot.isPresent() ? lot.get().fact().boughtOn() : LocalDate.EPOCH;
            bought.put(set.lot(), known);
        }
        return known;
    }
}
