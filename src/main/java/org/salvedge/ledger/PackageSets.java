package org.salvedge.ledger;

import it.unimi.dsi.fastutil.ints.Int2ObjectOpenHashMap;
import it.unimi.dsi.fastutil.ints.IntArrayList;
import java.sql.SQLException;
import java.util.BitSet;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** The lots and sets that a package brings, by the numbers of their labels. */
final class PackageSets implements EventLog.Sets {
    private final Codec codec;
    private final Int2ObjectOpenHashMap<Lot> lots = new Int2ObjectOpenHashMap<>();
    private final BitSet lotsSeen = new BitSet();
    private final BitSet units = new BitSet();
    private final BitSet unitsSeen = new BitSet();
    private final BitSet doubtful = new BitSet();
    private final BitSet arrived = new BitSet();
    private final IntArrayList lotOf = new IntArrayList();
    private boolean lotsBroken;
    private boolean unitsBroken;

    PackageSets(Codec codec) {
        this.codec = codec;
    }

    Int2ObjectOpenHashMap<Lot> lots() {
        return lots;
    }

    /** The header of their file is wrong: no row that speaks of them is to blame. */
    void breakLots() {
        lotsBroken = true;
    }

    void breakUnits() {
        unitsBroken = true;
    }

    /** Null where the package has no such lot. */
    @Nullable
    Lot lot(LotId label) throws SQLException {
        return lots.get(codec.lots().find(label.value()));
    }

    /** There is a row for that lot, good or bad. */
    void seeLot(@Nullable LotId label) throws SQLException {
        if (label != null) {
            lotsSeen.set(codec.lots().id(label.value()));
        }
    }

    boolean hasSeen(LotId label) throws SQLException {
        int id = codec.lots().find(label.value());
        return id >= 0 && lotsSeen.get(id);
    }

    /** There is a row for that set, good or bad. */
    void seeUnit(@Nullable UnitId label) throws SQLException {
        if (label != null) {
            unitsSeen.set(codec.units().id(label.value()));
        }
    }

    /** Some row of that set could not be read: its history cannot be judged. */
    void doubt(@Nullable UnitId label) throws SQLException {
        int id = label == null ? -1 : codec.units().find(label.value());
        if (id >= 0) {
            doubtful.set(id);
        }
    }

    boolean hasUnit(int id) {
        return units.get(id);
    }

    void addUnit(int id, TvSet set) throws SQLException {
        units.set(id);
        arrived.set(id, set.arrived());
        while (lotOf.size() <= id) {
            lotOf.add(-1);
        }
        lotOf.set(id, codec.lots().find(set.lot().value()));
    }

    /** Whether a row may speak of that lot; tells it if not. */
    <F extends org.salvedge.shop.Fact> boolean requireLot(LotId label, Column<F, LotId> column, RowParser<F> row)
            throws SQLException {
        if (hasSeen(label)) {
            return true;
        }
        if (!lotsBroken) {
            row.problem(column, label.value(), "is not a lot of this package", "Add it to the lots, or mend the name.");
        }
        return false;
    }

    /** The number of the set that a row speaks of; -1, and told, where the package has no such set. */
    <F extends org.salvedge.shop.Fact> int requireUnit(UnitId label, Column<F, UnitId> column, RowParser<F> row)
            throws SQLException {
        int id = codec.units().find(label.value());
        if (id >= 0 && unitsSeen.get(id)) {
            return id;
        }
        if (!unitsBroken) {
            row.problem(
                    column, label.value(), "is not a set of this package", "Add it to the sets, or mend the label.");
        }
        return -1;
    }

    @Override
    public boolean judgeable(int unit) {
        return units.get(unit) && !doubtful.get(unit);
    }

    @Override
    public boolean arrived(int unit) {
        return arrived.get(unit);
    }

    @Override
    public int firstDay(int unit) {
        Lot lot = lots.get(lotOf.getInt(unit));
        return lot == null ? 0 : (int) lot.arrivalDay().toEpochDay();
    }
}
