package org.salvedge.ledger;

import java.sql.SQLException;
import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Bid;
import org.salvedge.shop.Comeback;
import org.salvedge.shop.Exit;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Offer;
import org.salvedge.shop.Part;
import org.salvedge.shop.Recipe;
import org.salvedge.shop.Refused;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** Which things a fact speaks of, and that they are on record. */
record References(Store store) {
    /** The set whose history a fact belongs to; null for other facts. */
    static @Nullable UnitId setOf(Fact fact) {
        if (fact instanceof TvSet set) {
            return set.unit();
        } else if (fact instanceof Attempt attempt) {
            return attempt.unit();
        } else if (fact instanceof Exit exit) {
            return exit.unit();
        } else if (fact instanceof Comeback comeback) {
            return comeback.unit();
        }
        return fact instanceof Offer offer ? offer.unit() : null;
    }

    Optional<Stored<Lot>> lot(LotId lot) throws SQLException {
        return store.standing(Tables.LOTS, "lot = ?", store.codec().lots().find(lot.value())).stream()
                .findFirst();
    }

    Optional<Stored<TvSet>> unit(UnitId unit) throws SQLException {
        return store.standing(Tables.UNITS, "unit = ?", store.codec().units().find(unit.value())).stream()
                .findFirst();
    }

    /** Sets of a lot that stand, in order of entry. */
    List<Stored<TvSet>> unitsOf(LotId lot) throws SQLException {
        return store.standing(Tables.UNITS, "lot = ?", store.codec().lots().find(lot.value()));
    }

    /** @throws Refused if it names a thing that is not on record */
    void require(Fact fact) throws SQLException {
        if (fact instanceof TvSet set) {
            Stored<Lot> lot = requireLot(set.lot());
            if (set.asking() != null
                    && !set.asking().currency().equals(lot.fact().currency())) {
                throw new Refused("the asking price of set " + set.unit() + " is in "
                        + set.asking().currency() + ", its lot's amounts are in "
                        + lot.fact().currency());
            }
        } else if (fact instanceof Part part) {
            if (part.fromUnit() != null) {
                requireUnit(part.fromUnit());
            }
            if (part.attempt() != null) {
                requireAttempt(part.attempt());
            }
        } else if (fact instanceof Bid bid) {
            if (bid.lot() != null) {
                requireLot(bid.lot());
            }
        } else {
            UnitId unit = setOf(fact);
            if (unit != null) {
                requireUnit(unit);
            }
        }
    }

    private Stored<Lot> requireLot(LotId lot) throws SQLException {
        return lot(lot).orElseThrow(() -> new Refused("there is no lot " + lot + "; book it first"));
    }

    private void requireUnit(UnitId unit) throws SQLException {
        if (unit(unit).isEmpty()) {
            throw new Refused("there is no set " + unit + "; look for its label with show");
        }
    }

    private void requireAttempt(int number) throws SQLException {
        if (store.standing(Tables.ATTEMPTS, "attempt = ?", number).isEmpty()) {
            throw new Refused("there is no attempt " + number);
        }
    }

    /** Entries that speak of the thing that a fact put on record. */
    List<Stored<? extends Fact>> restingOn(Fact fact) throws SQLException {
        List<Stored<? extends Fact>> all = new ArrayList<>();
        if (fact instanceof Lot lot) {
            int id = store.codec().lots().find(lot.lot().value());
            all.addAll(store.standing(Tables.UNITS, "lot = ?", id));
            all.addAll(store.standing(Tables.BIDS, "lot = ?", id));
        } else if (fact instanceof TvSet set) {
            int id = store.codec().units().find(set.unit().value());
            all.addAll(store.standing(Tables.ATTEMPTS, "unit = ?", id));
            all.addAll(store.standing(Tables.EXITS, "unit = ?", id));
            all.addAll(store.standing(Tables.COMEBACKS, "unit = ?", id));
            all.addAll(store.standing(Tables.PARTS, "from_unit = ?", id));
            all.addAll(store.standing(Tables.OFFERS, "unit = ?", id));
        } else if (fact instanceof Attempt attempt) {
            all.addAll(store.standing(Tables.PARTS, "attempt = ?", attempt.number()));
        } else if (fact instanceof Recipe) {
            return all;
        }
        return all;
    }
}
