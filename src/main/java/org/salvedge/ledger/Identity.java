package org.salvedge.ledger;

import java.sql.SQLException;
import java.util.Objects;
import java.util.Set;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Basis;
import org.salvedge.shop.Bid;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Part;
import org.salvedge.shop.Refused;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** What an amendment may not change: a fact stays about the same thing. */
final class Identity {
    private Identity() {}

    /**
     * A lot, set, attempt, bid and part keep their label or number, a set its lot. Days of exits, comebacks and offers, and the
     * set that a turn at the bench was booked on, are what slips are about: they may change.
     */
    static void requireSame(Fact old, Fact changed) {
        if (old.getClass() != changed.getClass()) {
            throw new Refused("an entry can be amended only by one of its own kind");
        }
        if (!Objects.equals(name(old), name(changed))) {
            throw new Refused("an amendment keeps the label or number: this is " + name(old) + ", not " + name(changed)
                    + "; undo the entry and record it anew");
        }
        if (old instanceof TvSet a && changed instanceof TvSet b && !a.lot().equals(b.lot())) {
            throw new Refused("set " + a.unit() + " came with lot " + a.lot()
                    + "; undo its entry and record it anew under lot " + b.lot());
        }
    }

    private static @Nullable Object name(Fact fact) {
        if (fact instanceof Lot lot) {
            return lot.lot();
        } else if (fact instanceof TvSet set) {
            return set.unit();
        } else if (fact instanceof Attempt attempt) {
            return attempt.number();
        } else if (fact instanceof Bid bid) {
            return bid.number();
        }
        return fact instanceof Part part ? part.part() : null;
    }

    /** Asking prices are kept in minor units of their lot's currency: it cannot get other digits under them. */
    static void requireDigits(Fact old, Fact changed, References references) throws SQLException {
        if (old instanceof Lot a
                && changed instanceof Lot b
                && a.currency().getDefaultFractionDigits() != b.currency().getDefaultFractionDigits()
                && references.unitsOf(a.lot()).stream().anyMatch(s -> s.fact().asking() != null)) {
            throw new Refused("lot " + a.lot() + " has sets with asking prices in " + a.currency() + ", which has other"
                    + " decimals than " + b.currency() + "; undo the lot and book it anew");
        }
    }

    /** A lot keeps its basis where the amendment names none, and always has a day on which it was received. */
    static Fact filled(Fact old, Fact changed) {
        if (old instanceof Lot before && changed instanceof Lot after) {
            return Shares.filled(after, before.basis() == null ? Basis.EQUAL : before.basis());
        }
        return changed;
    }

    /** The lot whose shares a change of that fact may touch. */
    static @Nullable LotId lotOf(Fact fact) {
        if (fact instanceof Lot lot) {
            return lot.lot();
        }
        return fact instanceof TvSet set ? set.lot() : null;
    }

    /** The set whose share was changed on purpose. */
    static Set<UnitId> pinned(Fact old, @Nullable Fact changed) {
        boolean share =
                old instanceof TvSet a && changed instanceof TvSet b && !Objects.equals(a.landedCost(), b.landedCost());
        return share ? Set.of(((TvSet) old).unit()) : Set.of();
    }
}
