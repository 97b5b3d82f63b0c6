package org.salvedge.ledger;

import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import org.salvedge.ledger.Ledger.Detail;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.History;
import org.salvedge.shop.HistoryBuilder;
import org.salvedge.shop.Lot;
import org.salvedge.shop.Settings;
import org.salvedge.shop.Text;

/** Reads the record into columns: each table once, in order of entry, whatever was superseded left out on the way. */
final class HistoryReader {
    private static final int ROWS_A_STEP = 1 << 15;
    /** Sets take about so much of the time, what became of them the rest. */
    private static final double SHARE_OF_SETS = 0.6;

    /** Below this many entries a second thread costs more than it saves. */
    private static final long MANY = 20_000;

    private final Database database;
    private final Settings settings;
    private final Detail detail;
    private final HistoryBuilder builder;
    private final Progress progress;
    private int rows;

    HistoryReader(Database database, Settings settings, Detail detail, Progress progress) {
        this.progress = progress;
        this.database = database;
        this.settings = settings;
        this.detail = detail;
        this.builder = History.builder(settings.currency());
    }

    History read(AsOf asOf) {
        return database.read(connection -> {
            SeenEntries visible = SeenEntries.of(asOf, settings.zone(), connection);
            Scan scan = Scan.of(connection, visible);
            if (visible.last() < MANY) {
                attempts(connection, scan);
                rest(connection, scan);
            } else {
                try (Beside beside = Beside.start(database, other -> attempts(other, scan))) {
                    rest(connection, scan);
                    beside.join();
                }
            }
            comebacks(connection, scan);
            builder.sortSets();
            if (detail == Detail.REVIEW) {
                builder.labels(new LabelBlocks(database));
            }
            return builder.build();
        });
    }

    private void rest(Connection connection, Scan scan) throws SQLException {
        units(connection, scan, lots(connection, scan));
        exits(connection, scan);
    }

    /** Tells how far a table is read whose rows are about as many as the sets. */
    private void read(int sets, double from, double share) {
        if (++rows % ROWS_A_STEP == 0) {
            progress.step("reading the record", from + share * Math.min(1, (double) rows / Math.max(1, sets)));
        }
    }

    private record LotRow(int id, Lot lot) {}

    /** Adds the lots by day and name; gives each one's row by the number of its label, -1 where it has none. */
    private int[] lots(Connection connection, Scan scan) throws SQLException {
        Currency book = settings.currency();
        Store store = new Store(connection, book, settings.codes());
        List<LotRow> rows = new ArrayList<>();
        SeenEntries.Cursor cursor = scan.visible().cursor();
        for (Stored<Lot> row :
                store.where(Tables.LOTS, "entry <= ?", scan.visible().last())) {
            Lot lot = row.fact();
            if (cursor.stands(row.entry())
                    && cursor.happened(row.entry(), lot.boughtOn().toEpochDay())) {
                rows.add(new LotRow(store.codec().lots().find(lot.lot().value()), lot));
            }
        }
        rows.sort(Comparator.comparing((LotRow r) -> r.lot().boughtOn())
                .thenComparing(r -> r.lot().lot().value(), Text.CODE_POINTS));
        int[] rowOf = new int[scan.lots() + 1];
        Arrays.fill(rowOf, -1);
        for (LotRow row : rows) {
            Lot lot = row.lot();
            rowOf[row.id()] = builder.lotNames().size();
            builder.lot(
                    lot.lot().value(),
                    builder.suppliers().number(lot.supplier()),
                    (int) lot.boughtOn().toEpochDay(),
                    (int) lot.arrivalDay().toEpochDay(),
                    lot.landedCost(book).minor(),
                    lot.minutes() == null ? -1 : lot.minutes().millionths());
            scan.arrival(row.id(), (int) lot.arrivalDay().toEpochDay());
        }
        return rowOf;
    }

    private void units(Connection connection, Scan scan, int[] lotRow) throws SQLException {
        boolean full = detail == Detail.FULL;
        Packing p = new Packing();
        Packing.Field entry = p.field("entry", scan.visible().last());
        Packing.Field unit = p.field("unit", scan.units());
        Packing.Field lot = p.field("lot", scan.lots());
        Packing.Field family = p.field("family", scan.words());
        Packing.Field maker = p.field("maker", scan.words());
        Packing.Field model = p.field("model", scan.words());
        Packing.Field claimed = p.field("claimed", scan.words());
        Packing.Field flags = p.field("arrived + ifnull(incomplete, 0) * 2 + (line IS NOT NULL) * 4", 7);
        Packing.Field inches = p.optional("inches", 150 * 1_000_000L);
        Packing.Field landed = p.optional("landed_cost", Types.LARGEST);
        Packing.Field asking = full ? p.optional("asking", Types.LARGEST) : landed;
        Packing.Field listedMaker = full ? p.optional("listed_maker", scan.words()) : landed;
        Packing.Field listedModel = full ? p.optional("listed_model", scan.words()) : landed;
        Packing.Field listedInches = full ? p.optional("listed_inches", 150 * 1_000_000L) : landed;
        Numbering families = scan.numbering(builder.families());
        Numbering makers = scan.numbering(builder.makers());
        Numbering models = scan.numbering(builder.models());
        Numbering claims = scan.numbering(builder.claims());
        String[] labels = full ? Scan.texts(connection, "unit_label", scan.units()) : new String[0];
        SeenEntries.Cursor cursor = scan.visible().cursor();
        try (PreparedStatement select =
                        connection.prepareStatement("SELECT " + p.select() + " FROM unit ORDER BY entry");
                ResultSet row = select.executeQuery()) {
            while (p.next(row)) {
                read(scan.units(), 0, SHARE_OF_SETS);
                int lotId = lot.get();
                if (!cursor.stands(entry.getLong())
                        || lotRow[lotId] < 0
                        || !cursor.happened(entry.getLong(), scan.arrival(lotId))) {
                    continue;
                }
                builder.set(
                        unit.get(),
                        lotRow[lotId],
                        families.of(family.get()),
                        makers.of(maker.get()),
                        models.of(model.get()),
                        claims.of(claimed.get()),
                        inches.getLong() - 1,
                        full ? makers.of(listedMaker.get() - 1) : -1,
                        full ? models.of(listedModel.get() - 1) : -1,
                        full ? listedInches.getLong() - 1 : -1,
                        flags.get(),
                        full ? asking.getLong() - 1 : -1,
                        landed.getLong() - 1);
                if (full) {
                    builder.label(labels[unit.get()]);
                }
            }
        }
    }

    private void attempts(Connection connection, Scan scan) throws SQLException {
        Packing p = new Packing();
        Packing.Field entry = p.field("entry", scan.visible().last());
        Packing.Field unit = p.field("unit", scan.units());
        Packing.Field started = p.field("started_at", (Types.LAST_DAY + 1L) * 86_400);
        Packing.Field number = p.field("attempt", Integer.MAX_VALUE);
        Packing.Field fault = p.field("fault", scan.words());
        Packing.Field fix = p.field("fix", scan.words());
        Packing.Field technician = p.optional("technician", scan.words());
        Packing.Field passed = p.optional("passed", 1);
        Packing.Field grade = p.optional("grade", 2);
        Packing.Field diagnosis = p.optional("diagnosis_minutes", Types.LARGEST);
        Packing.Field minutes = p.optional("fix_minutes", Types.LARGEST);
        Packing.Field parts = p.field("ifnull(parts_cost, 0)", Types.LARGEST);
        Numbering faults = scan.numbering(builder.faults());
        Numbering fixes = scan.numbering(builder.fixes());
        Numbering technicians = scan.numbering(builder.technicians());
        SeenEntries.Cursor cursor = scan.visible().cursor();
        try (PreparedStatement select =
                        connection.prepareStatement("SELECT " + p.select() + " FROM attempt ORDER BY entry");
                ResultSet row = select.executeQuery()) {
            while (p.next(row)) {
                int day = (int) (started.getLong() / 86_400);
                if (!cursor.stands(entry.getLong()) || !cursor.happened(entry.getLong(), day)) {
                    continue;
                }
                builder.attempt(
                        unit.get(),
                        day,
                        (int) (started.getLong() % 86_400),
                        number.get(),
                        faults.of(fault.get()),
                        fixes.of(fix.get()),
                        technicians.of(technician.get() - 1),
                        passed.get() - 1,
                        grade.get() - 1,
                        diagnosis.getLong() - 1,
                        minutes.getLong() - 1,
                        parts.getLong());
            }
        }
    }

    private void exits(Connection connection, Scan scan) throws SQLException {
        Packing p = new Packing();
        Packing.Field entry = p.field("entry", scan.visible().last());
        Packing.Field unit = p.field("unit", scan.units());
        Packing.Field day = p.field("\"on\"", Types.LAST_DAY);
        Packing.Field kind = p.field("exit", 4);
        Packing.Field gone = p.field("ifnull(gone, 1)", 1);
        Packing.Field grade = p.optional("grade", 2);
        Packing.Field seq = p.field("seq", Integer.MAX_VALUE);
        Packing.Field channel = p.optional("channel", scan.words());
        Packing.Field gross = p.field("gross", Types.LARGEST);
        Packing.Field costs = p.field("ifnull(fees, 0) + ifnull(shipping, 0) + ifnull(tax, 0)", 3 * Types.LARGEST);
        Packing.Field minutes = p.optional("minutes", Types.LARGEST);
        Numbering channels = scan.numbering(builder.channels());
        rows = 0;
        SeenEntries.Cursor cursor = scan.visible().cursor();
        try (PreparedStatement select =
                        connection.prepareStatement("SELECT " + p.select() + " FROM exit ORDER BY entry");
                ResultSet row = select.executeQuery()) {
            while (p.next(row)) {
                read(scan.units(), SHARE_OF_SETS, 1 - SHARE_OF_SETS);
                if (cursor.stands(entry.getLong()) && cursor.happened(entry.getLong(), day.get())) {
                    builder.exit(
                            unit.get(),
                            day.get(),
                            seq.get(),
                            kind.get(),
                            gone.get(),
                            gross.getLong(),
                            costs.getLong(),
                            minutes.getLong() - 1,
                            channels.of(channel.get() - 1),
                            grade.get() - 1);
                }
            }
        }
    }

    private void comebacks(Connection connection, Scan scan) throws SQLException {
        Packing p = new Packing();
        Packing.Field entry = p.field("entry", scan.visible().last());
        Packing.Field unit = p.field("unit", scan.units());
        Packing.Field day = p.field("\"on\"", Types.LAST_DAY);
        Packing.Field restocked = p.field("restocked", 1);
        Packing.Field fault = p.optional("fault", scan.words());
        Packing.Field cost = p.field("ifnull(refund, 0) + ifnull(cost, 0)", 2 * Types.LARGEST);
        Numbering faults = scan.numbering(builder.faults());
        SeenEntries.Cursor cursor = scan.visible().cursor();
        try (PreparedStatement select =
                        connection.prepareStatement("SELECT " + p.select() + " FROM comeback ORDER BY entry");
                ResultSet row = select.executeQuery()) {
            while (p.next(row)) {
                if (cursor.stands(entry.getLong()) && cursor.happened(entry.getLong(), day.get())) {
                    builder.comeback(
                            unit.get(), day.get(), cost.getLong(), restocked.get(), faults.of(fault.get() - 1));
                }
            }
        }
    }
}
