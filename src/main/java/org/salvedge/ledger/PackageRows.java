package org.salvedge.ledger;

import de.siegmar.fastcsv.reader.CsvRecord;
import it.unimi.dsi.fastutil.ints.Int2IntOpenHashMap;
import java.nio.file.Path;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.Currency;
import java.util.function.LongConsumer;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** Reads all files of a package, checks each row and hands good ones on; bad ones become problems. */
final class PackageRows {
    private final PackageFiles files;
    private final LocalDate today;
    private final Codec codec;
    private final BulkDictionary units;
    private final KeysHeld held;
    private final ProblemList problems;
    private final LongConsumer bytesRead;
    private final RowSink sink;
    private final PackageSets sets;
    private final LotShares shares;
    private int lotsRead;
    private int lotsHeld;
    private final Int2IntOpenHashMap lotRow = new Int2IntOpenHashMap();
    private final SetsAhead ahead;

    /** Where good rows go. */
    interface RowSink {
        <F extends Fact> void take(Table<F> table, F fact) throws SQLException;
    }

    /** @param units the dictionary of sets' labels that the codec has */
    PackageRows(
            PackageFiles files,
            Settings settings,
            LocalDate today,
            Codec codec,
            BulkDictionary units,
            KeysHeld held,
            ProblemList problems,
            LongConsumer bytesRead,
            RowSink sink) {
        this.files = files;
        this.today = today;
        this.codec = codec;
        this.units = units;
        this.held = held;
        this.problems = problems;
        this.bytesRead = bytesRead;
        this.sink = sink;
        sets = new PackageSets(codec);
        shares = new LotShares(settings.currency(), settings.basis());
        ahead = new SetsAhead(files, sets, codec, units, shares);
    }

    void readAll() throws SQLException {
        if (!eachRow(Tables.LOTS, new LotCheck())) {
            sets.breakLots();
        }
        requireNotHereAlready();
        ahead.read(today, v -> currency(Tables.UNITS, v), bytesRead);
        shareOut();
        if (!eachRow(Tables.UNITS, new UnitCheck())) {
            sets.breakUnits();
        }
        EventLog events = new EventLog();
        RowChecks checks = new RowChecks(sets, held, events);
        eachRow(Tables.ATTEMPTS, checks.attempts());
        eachRow(Tables.EXITS, checks.exits());
        eachRow(Tables.COMEBACKS, checks.comebacks());
        events.judge(units.largest(), sets, files, problems);
        eachRow(Tables.PARTS, checks::part);
        eachRow(Tables.RECIPES, checks::recipe);
        eachRow(Tables.BIDS, checks::bid);
        eachRow(Tables.OFFERS, checks::offer);
    }

    /** The same package again: one sentence says more than a line for each of its rows. */
    private void requireNotHereAlready() {
        if (lotsRead > 0 && lotsHeld == lotsRead) {
            throw new Refused("this package is here already: "
                    + (lotsRead == 1 ? "its lot is" : "all of its " + lotsRead + " lots are")
                    + " on record in this shop. Nothing was taken. If it comes from another shop that names its lots"
                    + " alike, import it into a shop of its own");
        }
    }

    /** Reads one file; false if its header is wrong. */
    private <F extends Fact> boolean eachRow(Table<F> table, RowCheck<F> check) throws SQLException {
        Path path = files.path(table);
        if (path == null) {
            return true;
        }
        try (CsvFile file = CsvFile.open(path, problems, bytesRead)) {
            RowParser<F> parser = RowParser.of(table, file, problems, codec, today);
            if (parser == null) {
                return false;
            }
            for (CsvRecord record = file.next(); record != null; record = file.next()) {
                Values<F> values = parser.values(record, v -> currency(table, v));
                check.fill(values);
                F fact = parser.fact(values);
                if (fact == null) {
                    check.spoilt(values);
                } else if (check.keep(fact, parser)) {
                    sink.take(table, fact);
                }
            }
            return true;
        }
    }

    /** Currency of amounts in a lot's currency, by the row's other cells. */
    private <F extends Fact> Currency currency(Table<F> table, Values<F> values) {
        Object found = values.at(table.equals(Tables.LOTS) ? Tables.LOTS.currency.index() : Tables.UNITS.lot.index());
        if (found instanceof Currency own) {
            return own;
        }
        Lot lot = found instanceof LotId id ? lotOrNull(id) : null;
        return lot == null ? codec.book() : lot.currency();
    }

    private @Nullable Lot lotOrNull(LotId id) {
        try {
            return sets.lot(id);
        } catch (SQLException e) {
            throw new IllegalStateException("a dictionary in memory needs no database", e);
        }
    }

    /** Tells wrong landed costs beside whatever else is wrong, but only where all that they rest on could be read. */
    private void shareOut() throws SQLException {
        shares.share(
                sets.lots(),
                units,
                units.largest(),
                ahead::isWhole,
                (lot, problem) -> problems.add(
                        files.name(Tables.LOTS),
                        lotRow.get(lot),
                        "lot",
                        codec.lots().text(lot),
                        problem,
                        ""));
        int[] ids = sets.lots().keySet().toIntArray();
        it.unimi.dsi.fastutil.ints.IntArrays.quickSort(ids, (a, b) -> Integer.compare(lotRow.get(a), lotRow.get(b)));
        for (int id : ids) {
            sink.take(Tables.LOTS, sets.lots().get(id));
        }
    }

    /** Lots are kept aside until their cost is shared out. */
    private final class LotCheck implements RowCheck<Lot> {
        @Override
        public void spoilt(Values<Lot> values) {
            lotsRead++;
        }

        @Override
        public void fill(Values<Lot> values) throws SQLException {
            sets.seeLot(values.get(Tables.LOTS.lot));
        }

        @Override
        public boolean keep(Lot lot, RowParser<Lot> row) throws SQLException {
            int id = codec.lots().id(lot.lot().value());
            try {
                FactCheck.checkRate(lot.currency(), lot.rate(), codec.book());
            } catch (BadCell e) {
                row.problem(Tables.LOTS.rate, null, e.problem(), e.advice());
                ahead.doubt(id);
            }
            if (sets.lots().containsKey(id)) {
                ahead.doubt(id);
            }
            lotsRead++;
            lotsHeld += held.lot(id) ? 1 : 0;
            if (RowCheck.isNew(sets.lots().containsKey(id), held.lot(id), Tables.LOTS.lot, lot.lot(), row)) {
                sets.lots().put(id, lot);
                lotRow.put(id, (int) row.row());
            }
            return false;
        }
    }

    private final class UnitCheck implements RowCheck<TvSet> {
        @Override
        public void fill(Values<TvSet> values) throws SQLException {
            UnitId unit = values.get(Tables.UNITS.unit);
            sets.seeUnit(unit);
            if (unit != null && values.get(Tables.UNITS.landedCost) == null) {
                values.put(Tables.UNITS.landedCost, shares.of(units.find(unit.value())));
            }
        }

        @Override
        public boolean keep(TvSet set, RowParser<TvSet> row) throws SQLException {
            int id = units.id(set.unit().value());
            boolean isNew = RowCheck.isNew(sets.hasUnit(id), held.unit(id), Tables.UNITS.unit, set.unit(), row);
            boolean good = sets.requireLot(set.lot(), Tables.UNITS.lot, row) && isNew;
            sets.addUnit(id, set);
            return good;
        }
    }
}
