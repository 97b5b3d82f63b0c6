package org.salvedge.shop;

import java.math.BigInteger;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.Currency;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/**
 * How a lot's landed cost is shared among its sets. Sets that did not arrive carry none; where none arrived, the cost is the
 * lot's loss, outside all sets. A landed cost that is given is taken out first, the others share what remains; the shares add up
 * to the landed cost exactly, by largest remainder, ties to the smaller label.
 */
public final class LandedCost {
    private LandedCost() {}

    /**
     * The share of each set that arrived, in the book's currency.
     *
     * @param sets all sets of the lot; a landed cost they carry is a given one
     * @param otherwise the basis where the lot says none
     * @throws Refused if given landed costs leave nothing sensible to share
     */
    public static Map<UnitId, Money> shares(Lot lot, List<TvSet> sets, Basis otherwise, Currency book) {
        Money remaining = lot.landedCost(book);
        List<TvSet> arrived = new ArrayList<>();
        List<TvSet> open = new ArrayList<>();
        Map<UnitId, Money> shares = new HashMap<>();
        for (TvSet set : sets) {
            Money given = set.landedCost();
            if (!set.arrived()) {
                if (given != null && !given.isZero()) {
                    throw new Refused("set " + set.unit() + " did not arrive, yet carries a landed cost of " + given
                            + "; leave it empty");
                }
                continue;
            }
            arrived.add(set);
            if (given == null) {
                open.add(set);
            } else {
                shares.put(set.unit(), given);
                remaining = remaining.minus(given);
            }
        }
        if (arrived.isEmpty()) {
            return shares;
        }
        Money cost = lot.landedCost(book);
        if (remaining.isNegative() || open.isEmpty() && !remaining.isZero()) {
            throw new Refused("the landed costs given for the sets of lot " + lot.lot() + " add up to "
                    + cost.minus(remaining) + ", the lot cost " + cost
                    + "; mend one of them, or leave them empty to have the cost shared");
        }
        if (open.isEmpty()) {
            return shares;
        }
        Basis basis = basis(lot, sets, otherwise);
        if (basis == Basis.GIVEN) {
            throw new Refused("lot " + lot.lot() + " has the basis \"given\", but set "
                    + open.get(0).unit() + " has no landed cost; give it, or name another basis");
        }
        open.sort(Comparator.comparing(TvSet::unit));
        List<Money> parts = remaining.allocate(weights(basis, arrived, open));
        for (int i = 0; i < parts.size(); i++) {
            shares.put(open.get(i).unit(), parts.get(i));
        }
        return shares;
    }

    /** The basis that {@link #shares} goes by: the lot's own, else "given" where every set has its cost, else the other one. */
    public static Basis basis(Lot lot, List<TvSet> sets, Basis otherwise) {
        if (lot.basis() != null) {
            return lot.basis();
        }
        boolean allGiven = true;
        boolean any = false;
        for (TvSet set : sets) {
            any |= set.arrived();
            allGiven &= !set.arrived() || set.landedCost() != null;
        }
        return any && allGiven ? Basis.GIVEN : otherwise;
    }

    private static BigInteger[] weights(Basis basis, List<TvSet> arrived, List<TvSet> open) {
        Function<TvSet, @Nullable BigInteger> figure = switch (basis) {
            case AREA -> LandedCost::area;
            case VALUE -> LandedCost::asking;
            case EQUAL, GIVEN -> set -> BigInteger.ONE;
        };
        BigInteger twiceMedian = twiceMedian(arrived, figure);
        BigInteger[] weights = new BigInteger[open.size()];
        for (int i = 0; i < weights.length; i++) {
            BigInteger own = figure.apply(open.get(i));
            weights[i] = own == null ? twiceMedian : own.shiftLeft(1);
        }
        return weights;
    }

    /** Screens are 16:9, so the area goes with the square of the diagonal. */
    private static @Nullable BigInteger area(TvSet set) {
        return set.inches() == null
                ? null
                : BigInteger.valueOf(set.inches().millionths()).pow(2);
    }

    private static @Nullable BigInteger asking(TvSet set) {
        return set.asking() == null ? null : BigInteger.valueOf(set.asking().minor());
    }

    /** Twice, so that the mean of the two in the middle is whole. Where no set has the figure, all weigh alike. */
    private static BigInteger twiceMedian(List<TvSet> sets, Function<TvSet, @Nullable BigInteger> figure) {
        List<BigInteger> known = new ArrayList<>();
        for (TvSet set : sets) {
            BigInteger value = figure.apply(set);
            if (value != null) {
                known.add(value);
            }
        }
        if (known.isEmpty()) {
            return BigInteger.ONE;
        }
        known.sort(Comparator.naturalOrder());
        int n = known.size();
        return known.get((n - 1) / 2).add(known.get(n / 2));
    }
}
