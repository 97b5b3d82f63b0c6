package org.salvedge.ledger;

import it.unimi.dsi.fastutil.ints.IntOpenHashSet;
import java.sql.SQLException;
import java.util.HashSet;
import java.util.Set;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Bid;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.Exit;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Offer;
import org.salvedge.shop.Part;
import org.salvedge.shop.Recipe;

/** The checks of the files that speak of sets: keys stand once, what is referred to is there. */
final class RowChecks {
    private final PackageSets sets;
    private final KeysHeld held;
    private final EventLog events;
    private final NumberSet attempts = new NumberSet();
    private boolean twice;
    private final IntOpenHashSet bids = new IntOpenHashSet();
    private final Set<String> parts = new HashSet<>();
    private final Set<String> recipes = new HashSet<>();
    private final Set<String> offers = new HashSet<>();

    RowChecks(PackageSets sets, KeysHeld held, EventLog events) {
        this.sets = sets;
        this.held = held;
        this.events = events;
    }

    RowCheck<Attempt> attempts() {
        return new RowCheck<>() {
            @Override
            public void fill(Values<Attempt> values) {
                Integer number = values.get(Tables.ATTEMPTS.number);
                twice = number != null && !attempts.add(number);
            }

            @Override
            public void spoilt(Values<Attempt> values) throws SQLException {
                sets.doubt(values.get(Tables.ATTEMPTS.unit));
            }

            @Override
            public boolean keep(Attempt a, RowParser<Attempt> row) throws SQLException {
                int unit = sets.requireUnit(a.unit(), Tables.ATTEMPTS.unit, row);
                boolean isNew =
                        RowCheck.isNew(twice, held.attempt(a.number()), Tables.ATTEMPTS.number, a.number(), row);
                if (unit < 0 || !isNew) {
                    return false;
                }
                events.attempt(
                        unit,
                        (int) a.startedAt().toLocalDate().toEpochDay(),
                        a.startedAt().toLocalTime().toSecondOfDay(),
                        a.number(),
                        !a.fix().equals(Fix.NONE),
                        a.passed() == null ? -1 : a.passed() ? 1 : 0,
                        row.row());
                return true;
            }
        };
    }

    RowCheck<Exit> exits() {
        return new RowCheck<>() {
            @Override
            public void spoilt(Values<Exit> values) throws SQLException {
                sets.doubt(values.get(Tables.EXITS.unit));
            }

            @Override
            public boolean keep(Exit e, RowParser<Exit> row) throws SQLException {
                int unit = sets.requireUnit(e.unit(), Tables.EXITS.unit, row);
                if (unit >= 0) {
                    events.exit(unit, (int) e.on().toEpochDay(), e.seq(), e.kind(), e.leaves(), row.row());
                }
                return unit >= 0;
            }
        };
    }

    RowCheck<Comeback> comebacks() {
        return new RowCheck<>() {
            @Override
            public void spoilt(Values<Comeback> values) throws SQLException {
                sets.doubt(values.get(Tables.COMEBACKS.unit));
            }

            @Override
            public boolean keep(Comeback c, RowParser<Comeback> row) throws SQLException {
                int unit = sets.requireUnit(c.unit(), Tables.COMEBACKS.unit, row);
                if (unit >= 0) {
                    events.comeback(unit, (int) c.on().toEpochDay(), c.restocked(), row.row());
                }
                return unit >= 0;
            }
        };
    }

    boolean part(Part p, RowParser<Part> row) throws SQLException {
        boolean good = RowCheck.isNew(!parts.add(p.part()), held.part(p.part()), Tables.PARTS.part, p.part(), row);
        if (p.fromUnit() != null) {
            good &= sets.requireUnit(p.fromUnit(), Tables.PARTS.fromUnit, row) >= 0;
        }
        if (p.attempt() != null && !attempts.contains(p.attempt())) {
            row.problem(
                    Tables.PARTS.attempt,
                    p.attempt().toString(),
                    "is not an attempt of this package",
                    "Add it to the attempts, or mend the number.");
            good = false;
        }
        return good;
    }

    boolean recipe(Recipe r, RowParser<Recipe> row) {
        String key = KeysHeld.recipe(r.panel(), r.side().ordinal(), r.contacts());
        return RowCheck.isNew(!recipes.add(key), held.recipe(key), Tables.RECIPES.panel, r.panel(), row);
    }

    boolean bid(Bid b, RowParser<Bid> row) throws SQLException {
        boolean good = RowCheck.isNew(!bids.add(b.number()), held.bid(b.number()), Tables.BIDS.number, b.number(), row);
        return (b.lot() == null || sets.requireLot(b.lot(), Tables.BIDS.lot, row)) && good;
    }

    boolean offer(Offer o, RowParser<Offer> row) throws SQLException {
        boolean twice = !offers.add(o.unit() + "\0" + o.on());
        boolean good = RowCheck.isNew(twice, false, Tables.OFFERS.unit, o.unit(), row);
        return sets.requireUnit(o.unit(), Tables.OFFERS.unit, row) >= 0 && good;
    }
}
