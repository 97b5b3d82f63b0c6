package org.salvedge.ledger;

import de.siegmar.fastcsv.reader.CsvRecord;
import it.unimi.dsi.fastutil.ints.IntOpenHashSet;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.BitSet;
import java.util.Currency;
import java.util.Set;
import java.util.function.Function;
import java.util.function.LongConsumer;
import org.salvedge.shop.LotId;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/**
 * Reads from a package's sets only what the shares of landed cost rest on, before they are read in full: a share is written with
 * its set. Problems are told then; here it is only noted of which lots not all could be read.
 */
final class SetsAhead {
    private final PackageFiles files;
    private final PackageSets sets;
    private final Codec codec;
    private final BulkDictionary units;
    private final LotShares shares;
    private final IntOpenHashSet notAllRead = new IntOpenHashSet();
    private boolean someOfNoLot;

    SetsAhead(PackageFiles files, PackageSets sets, Codec codec, BulkDictionary units, LotShares shares) {
        this.files = files;
        this.sets = sets;
        this.codec = codec;
        this.units = units;
        this.shares = shares;
    }

    /** @param money currency of a set's amounts, by its row's other cells */
    void read(LocalDate today, Function<Values<TvSet>, Currency> money, LongConsumer bytesRead) throws SQLException {
        Path path = files.path(Tables.UNITS);
        if (path == null) {
            return;
        }
        ProblemList later = new ProblemList();
        long ofCells = 0;
        UnitTable t = Tables.UNITS;
        try (CsvFile file = CsvFile.open(path, later, bytesRead)) {
            RowParser<TvSet> parser = RowParser.of(t, file, later, codec, today);
            if (parser == null) {
                return;
            }
            parser.only(Set.of(t.unit, t.lot, t.arrived, t.inches, t.asking, t.landedCost));
            BitSet seen = new BitSet();
            for (CsvRecord record = file.next(); record != null; record = file.next()) {
                long before = later.count();
                Values<TvSet> values = parser.values(record, money);
                ofCells += later.count() - before;
                take(values, seen);
            }
            someOfNoLot |= later.count() > ofCells; // rows that are none
        }
    }

    private void take(Values<TvSet> values, BitSet seen) throws SQLException {
        UnitTable t = Tables.UNITS;
        UnitId unit = values.get(t.unit);
        LotId lot = values.get(t.lot);
        int id = unit == null ? -1 : units.id(unit.value());
        boolean good = unit != null && !values.isSpoilt() && !seen.get(id);
        if (lot == null || !sets.hasSeen(lot)) {
            someOfNoLot = true;
        } else if (!good) {
            doubt(codec.lots().find(lot.value()));
        } else if (sets.lot(lot) != null) {
            seen.set(id);
            shares.add(
                    id,
                    codec.lots().find(lot.value()),
                    values.or(t.arrived, true),
                    values.get(t.inches),
                    values.get(t.asking),
                    values.get(t.landedCost));
        }
    }

    /** What that lot cost cannot be judged. */
    void doubt(int lot) {
        notAllRead.add(lot);
    }

    /** Whether all that the shares of a lot rest on was read. */
    boolean isWhole(int lot) {
        return !someOfNoLot && !notAllRead.contains(lot);
    }
}
