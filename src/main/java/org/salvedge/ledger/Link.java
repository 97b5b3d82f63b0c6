package org.salvedge.ledger;

import java.util.List;
import java.util.stream.Collectors;

/** A column of one table that speaks of a row of another, by that row's key. */
record Link(Table<?> from, String column, Table<?> to, String there) {
    static final List<Link> ALL = List.of(
            new Link(Tables.UNITS, "lot", Tables.LOTS, "lot"),
            new Link(Tables.ATTEMPTS, "unit", Tables.UNITS, "unit"),
            new Link(Tables.EXITS, "unit", Tables.UNITS, "unit"),
            new Link(Tables.COMEBACKS, "unit", Tables.UNITS, "unit"),
            new Link(Tables.PARTS, "from_unit", Tables.UNITS, "unit"),
            new Link(Tables.PARTS, "attempt", Tables.ATTEMPTS, "attempt"),
            new Link(Tables.BIDS, "lot", Tables.LOTS, "lot"),
            new Link(Tables.OFFERS, "unit", Tables.UNITS, "unit"));

    static List<Link> of(Table<?> table) {
        return ALL.stream().filter(l -> l.from().equals(table)).collect(Collectors.toList());
    }
}
