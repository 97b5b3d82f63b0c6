package org.salvedge.ledger;

import java.math.BigInteger;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import org.salvedge.shop.Basis;
import org.salvedge.shop.Fact;
import org.salvedge.shop.LandedCost;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Money;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** Keeps the shares of each lot's landed cost adding up to it. */
final class Shares {
    private final References references;
    private final Store store;
    private final Basis basisOtherwise;

    Shares(Store store, Basis basisOtherwise) {
        this.store = store;
        this.references = new References(store);
        this.basisOtherwise = basisOtherwise;
    }

    /** Facts to record, with received day, basis and shares filled in where they were left out. */
    List<Fact> filled(List<? extends Fact> facts) throws SQLException {
        Map<LotId, Lot> lots = new LinkedHashMap<>();
        Map<LotId, List<TvSet>> sets = new LinkedHashMap<>();
        for (Fact fact : facts) {
            if (fact instanceof Lot lot) {
                lots.put(lot.lot(), lot);
                sets.putIfAbsent(lot.lot(), new ArrayList<>());
            } else if (fact instanceof TvSet set) {
                sets.computeIfAbsent(set.lot(), l -> new ArrayList<>()).add(set);
            }
        }
        Map<UnitId, Money> shares = new HashMap<>();
        for (Map.Entry<LotId, List<TvSet>> entry : sets.entrySet()) {
            List<TvSet> all = new ArrayList<>(entry.getValue());
            Lot lot = lots.get(entry.getKey());
            if (lot == null) {
                var known = references.lot(entry.getKey());
                if (known.isEmpty()) {
                    continue; // refused later, as a set without a lot
                }
                lot = known.get().fact();
                references.unitsOf(lot.lot()).forEach(s -> all.add(s.fact()));
            } else {
                lots.put(lot.lot(), filled(lot, all, basisOtherwise));
            }
            shares.putAll(
                    LandedCost.shares(lot, all, basisOtherwise, store.codec().book()));
        }
        List<Fact> filled = new ArrayList<>(facts.size());
        for (Fact fact : facts) {
            if (fact instanceof Lot lot) {
                filled.add(lots.getOrDefault(lot.lot(), lot));
            } else if (fact instanceof TvSet set && set.arrived() && set.landedCost() == null) {
                filled.add(set.toBuilder().landedCost(shares.get(set.unit())).build());
            } else {
                filled.add(fact);
            }
        }
        return filled;
    }

    /** The lot with its basis and the day it was received, where they were left out. */
    static Lot filled(Lot lot, List<TvSet> sets, Basis otherwise) {
        return filled(lot, LandedCost.basis(lot, sets, otherwise));
    }

    static Lot filled(Lot lot, Basis basis) {
        if (lot.receivedOn() != null && lot.basis() != null) {
            return lot;
        }
        return new Lot(
                lot.lot(),
                lot.supplier(),
                lot.boughtOn(),
                lot.currency(),
                lot.rate(),
                lot.price(),
                lot.premium(),
                lot.freight(),
                lot.otherCost(),
                lot.minutes(),
                lot.arrivalDay(),
                lot.basis() == null ? basis : lot.basis(),
                lot.note());
    }

    /**
     * The sets of a lot whose share must change for the sum to hold, as they then are. A set in {@code pinned} keeps its own.
     * Shares that were given keep their proportions.
     */
    Map<Stored<TvSet>, TvSet> mended(LotId id, Set<UnitId> pinned) throws SQLException {
        Map<Stored<TvSet>, TvSet> changed = new LinkedHashMap<>();
        var lot = references.lot(id);
        if (lot.isEmpty()) {
            return changed;
        }
        List<Stored<TvSet>> sets = new ArrayList<>(references.unitsOf(id));
        sets.sort(Comparator.comparing(s -> s.fact().unit()));
        if (addsUp(lot.get().fact(), sets)) {
            return changed;
        }
        Map<UnitId, Money> shares = shared(lot.get().fact(), sets, pinned);
        for (Stored<TvSet> set : sets) {
            Money share = shares.get(set.fact().unit());
            if (!java.util.Objects.equals(share, set.fact().landedCost())) {
                changed.put(set, set.fact().toBuilder().landedCost(share).build());
            }
        }
        return changed;
    }

    private boolean addsUp(Lot lot, List<Stored<TvSet>> sets) {
        Money left = lot.landedCost(store.codec().book());
        boolean none = true;
        for (Stored<TvSet> s : sets) {
            Money share = s.fact().landedCost();
            if (s.fact().arrived() && share == null) {
                return false;
            }
            if (!s.fact().arrived() && share != null && !share.isZero()) {
                return false;
            }
            left = share == null ? left : left.minus(share);
            none &= !s.fact().arrived();
        }
        return none || left.isZero();
    }

    private Map<UnitId, Money> shared(Lot lot, List<Stored<TvSet>> sets, Set<UnitId> pinned) {
        Set<UnitId> keep = new HashSet<>();
        for (Stored<TvSet> s : sets) {
            if (s.fact().arrived()
                    && s.fact().landedCost() != null
                    && pinned.contains(s.fact().unit())) {
                keep.add(s.fact().unit());
            }
        }
        if (lot.basis() != Basis.GIVEN) {
            List<TvSet> open = new ArrayList<>();
            for (Stored<TvSet> s : sets) {
                TvSet set = s.fact();
                open.add(
                        keep.contains(set.unit())
                                ? set
                                : set.toBuilder().landedCost(null).build());
            }
            return LandedCost.shares(lot, open, basisOtherwise, store.codec().book());
        }
        return inProportion(lot, sets, keep);
    }

    private Map<UnitId, Money> inProportion(Lot lot, List<Stored<TvSet>> sets, Set<UnitId> keep) {
        Map<UnitId, Money> shares = new HashMap<>();
        Money left = lot.landedCost(store.codec().book());
        List<TvSet> open = new ArrayList<>();
        for (Stored<TvSet> s : sets) {
            TvSet set = s.fact();
            Money own = set.landedCost();
            if (own != null && keep.contains(set.unit())) {
                shares.put(set.unit(), own);
                left = left.minus(own);
            } else if (set.arrived()) {
                open.add(set);
            }
        }
        if (open.isEmpty() || left.isNegative()) {
            throw new org.salvedge.shop.Refused(
                    "the landed costs of lot " + lot.lot() + " would not add up to its cost of "
                            + lot.landedCost(store.codec().book()));
        }
        BigInteger[] weights = new BigInteger[open.size()];
        for (int i = 0; i < weights.length; i++) {
            Money own = open.get(i).landedCost();
            weights[i] = BigInteger.valueOf(own == null ? 0 : own.minor());
        }
        List<Money> parts = left.allocate(weights);
        for (int i = 0; i < weights.length; i++) {
            shares.put(open.get(i).unit(), parts.get(i));
        }
        return shares;
    }
}
