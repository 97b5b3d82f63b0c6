package org.salvedge.ledger;

import it.unimi.dsi.fastutil.bytes.ByteArrayList;
import it.unimi.dsi.fastutil.ints.Int2ObjectOpenHashMap;
import it.unimi.dsi.fastutil.ints.IntArrayList;
import it.unimi.dsi.fastutil.longs.LongArrayList;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.function.IntPredicate;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Basis;
import org.salvedge.shop.LandedCost;
import org.salvedge.shop.Lot;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.Refused;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** The shares of landed cost of a package's sets, worked out lot by lot once all sets were seen. */
final class LotShares {
    private static final long NONE = -1;

    private final Currency book;
    private final Basis otherwise;
    private final IntArrayList unit = new IntArrayList();
    private final IntArrayList lot = new IntArrayList();
    private final ByteArrayList arrived = new ByteArrayList();
    private final LongArrayList inches = new LongArrayList();
    private final LongArrayList asking = new LongArrayList();
    private final LongArrayList given = new LongArrayList();
    private long[] shares = new long[0];

    LotShares(Currency book, Basis otherwise) {
        this.book = book;
        this.otherwise = otherwise;
    }

    void add(
            int unitId,
            int lotId,
            boolean hasArrived,
            @Nullable Quantity diagonal,
            @Nullable Money value,
            @Nullable Money landed) {
        unit.add(unitId);
        lot.add(lotId);
        arrived.add((byte) (hasArrived ? 1 : 0));
        boolean size = diagonal != null && diagonal.millionths() > 0 && diagonal.compareTo(TvSet.LARGEST) <= 0;
        inches.add(diagonal == null || !size ? NONE : diagonal.millionths());
        asking.add(value == null ? NONE : value.minor());
        given.add(landed == null ? NONE : landed.minor());
    }

    /** A lot's cost cannot be shared. */
    interface Complaint {
        void about(int lotId, String problem) throws SQLException;
    }

    /**
     * Works the shares out; gives the lots back with basis and received day filled in.
     *
     * @param known whether all the sets of a lot were seen; the others are left as they are
     */
    void share(
            Int2ObjectOpenHashMap<Lot> lots, Dictionary units, int largestUnit, IntPredicate known, Complaint complaint)
            throws SQLException {
        shares = new long[largestUnit + 1];
        Arrays.fill(shares, NONE);
        Int2ObjectOpenHashMap<IntArrayList> members = new Int2ObjectOpenHashMap<>();
        for (int i = 0; i < unit.size(); i++) {
            members.computeIfAbsent(lot.getInt(i), l -> new IntArrayList()).add(i);
        }
        for (int id : lots.keySet().toIntArray()) {
            if (!known.test(id)) {
                continue;
            }
            Lot one = lots.get(id);
            IntArrayList rows = members.getOrDefault(id, new IntArrayList());
            List<TvSet> sets = new ArrayList<>(rows.size());
            for (int i = 0; i < rows.size(); i++) {
                sets.add(set(rows.getInt(i), one, units));
            }
            lots.put(id, Shares.filled(one, sets, otherwise));
            try {
                Map<UnitId, Money> of = LandedCost.shares(one, sets, otherwise, book);
                for (int i = 0; i < sets.size(); i++) {
                    Money share = of.get(sets.get(i).unit());
                    shares[unit.getInt(rows.getInt(i))] = share == null ? NONE : share.minor();
                }
            } catch (Refused e) {
                complaint.about(id, String.valueOf(e.getMessage()));
            }
        }
    }

    private TvSet set(int row, Lot of, Dictionary units) throws SQLException {
        long diagonal = inches.getLong(row);
        long value = asking.getLong(row);
        long landed = given.getLong(row);
        return TvSet.builder(new UnitId(units.text(unit.getInt(row))), of.lot())
                .arrived(arrived.getByte(row) == 1)
                .inches(diagonal == NONE ? null : new Quantity(diagonal))
                .asking(value == NONE ? null : new Money(value, of.currency()))
                .landedCost(landed == NONE ? null : new Money(landed, book))
                .build();
    }

    /** The share of a set; null where it carries none. */
    @Nullable
    Money of(int unitId) {
        return unitId < 0 || unitId >= shares.length || shares[unitId] == NONE ? null : new Money(shares[unitId], book);
    }
}
