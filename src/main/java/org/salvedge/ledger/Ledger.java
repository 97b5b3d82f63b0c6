package org.salvedge.ledger;

import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.Fact;
import org.salvedge.shop.History;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Part;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/**
 * The shop's record in one SQLite file. Entries are appended, never changed: a correction is an entry that supersedes another.
 * Every call that writes is one transaction, on disk when it returns.
 *
 * <p>Methods throw {@link Refused} where the input cannot be taken, {@link LedgerFailure} where the file cannot be read or
 * written; either way nothing has changed. Not safe for threads; any number of processes may use one file.
 */
public final class Ledger implements AutoCloseable {
    private final Database database;
    private final Settings settings;
    private final @Nullable Clock clock;
    private final Store store;

    private Ledger(Database database, Settings settings, @Nullable Clock clock) {
        this.database = database;
        this.settings = settings;
        this.clock = clock;
        this.store = database.plain(c -> new Store(c, settings.currency(), settings.codes()));
    }

    /** Makes an empty ledger; refused if there is one. */
    public static Ledger create(Path file, Settings settings, Clock clock) {
        return opened(NewFile.make(file, settings.currency()), settings, clock, database -> {});
    }

    /** Opens a ledger to read and write; waits up to some seconds for another writer. */
    public static Ledger open(Path file, Settings settings, Clock clock) {
        requireThere(file);
        return opened(Database.forWriting(file, false), settings, clock, database -> {
            boolean old = database.read(c -> {
                Schema.check(c, settings.currency());
                return Schema.isOld(c);
            });
            if (old) {
                database.doWrite(Schema::upgrade);
            }
        });
    }

    /** Opens a ledger to read only, also from a folder that cannot be written. */
    public static Ledger openForReading(Path file, Settings settings) {
        requireThere(file);
        return opened(
                ReadOnlyOpening.open(file),
                settings,
                null,
                database -> database.doRead(c -> Schema.check(c, settings.currency())));
    }

    private interface Step {
        void on(Database database);
    }

    private static Ledger opened(Database database, Settings settings, @Nullable Clock clock, Step first) {
        boolean done = false;
        try {
            first.on(database);
            Ledger ledger = new Ledger(database, settings, clock);
            done = true;
            return ledger;
        } finally {
            if (!done) {
                database.close();
            }
        }
    }

    /** For a connection that was set up otherwise. */
    static Ledger on(Database database, Settings settings, Clock clock) {
        return new Ledger(database, settings, clock);
    }

    private static void requireThere(Path file) {
        if (!Files.exists(file)) {
            throw new Refused("no shop here: salvedge init (there is no " + file + ")");
        }
    }

    /** Puts facts on record in one transaction; returns their entry numbers in order. Impossible histories are refused. */
    public List<Long> record(List<? extends Fact> facts) {
        return record(() -> facts);
    }

    /** The same; the facts are made within the transaction, so that what the supplier reads of this ledger still holds. */
    public List<Long> record(Supplier<? extends List<? extends Fact>> facts) {
        return write(recorder -> recorder.record(facts.get()));
    }

    /**
     * Several calls in one transaction: all that they write is put on record, or none of it. What is read within still holds
     * when it is put on record.
     */
    public <T> T together(Supplier<T> calls) {
        return write(recorder -> calls.get());
    }

    /** The same for what a person does at once and takes back at once: {@link #undoAct} takes all of it. */
    public <T> T act(Supplier<T> calls) {
        return write(recorder -> {
            long before = store.lastEntry();
            T result = calls.get();
            if (store.lastEntry() > before) {
                new Acts(store).add(before + 1, store.lastEntry());
            }
            return result;
        });
    }

    /**
     * A fact with some columns changed, by their names and texts in the history package; an empty text takes a value away.
     * Nothing is put on record.
     *
     * @throws Refused naming the column and the text that cannot be
     */
    public Fact changed(Fact fact, Map<String, String> changes) {
        return database.read(c -> {
            Currency lot = settings.currency();
            if (fact instanceof TvSet set) {
                var row = new References(store).lot(set.lot());
                lot = row.isEmpty() ? lot : row.get().fact().currency();
            }
            return FactColumns.with(fact, changes, lot, store.codec());
        });
    }

    /** Supersedes an entry by a changed fact about the same thing; returns the new entry's number. */
    public long amend(long entry, Fact changed, String why) {
        return write(recorder -> recorder.amend(entry, changed, why));
    }

    /** Entries that an amendment brought with it, so that a lot's shares add up; in order of their numbers. */
    public List<Long> followersOf(long amendment) {
        return database.read(c -> new Corrections(c).followersOf(amendment));
    }

    /** Takes an entry back; refused, with their names, where later entries rest on it. Returns the new entry's number. */
    public long undo(long entry, String why) {
        return write(recorder -> recorder.undo(entry, why));
    }

    /**
     * Takes back all that was recorded in one act with an entry; refused, with their names, where later entries rest on it. A set of
     * a lot that was received goes alone, and the lot with all its sets.
     *
     * @param entry null = the latest that stands, with all that was recorded with it
     * @return each entry taken back with the new one's number, the latest first
     */
    public Map<Long, Long> undoAct(@Nullable Long entry, String why) {
        return write(recorder -> new Undoing(store, recorder).act(entry, why));
    }

    private interface Recording<T> {
        T with(Recorder recorder) throws java.sql.SQLException;
    }

    private <T> T write(Recording<T> recording) {
        Clock now = clock();
        boolean done = false;
        try {
            T result = database.write(c -> recording.with(new Recorder(store, settings, now)));
            done = true;
            return result;
        } finally {
            if (!done) {
                store.forget();
            }
        }
    }

    /** The latest entry that stands and is no undoing. */
    public Optional<Entry> latest() {
        return database.read(c -> new Entries(store).latest());
    }

    public Optional<Entry> entry(long number) {
        return database.read(c -> new Entries(store).entry(number));
    }

    /** Every entry about a set, superseded ones too, in order of time. */
    public List<Entry> entriesOf(UnitId unit) {
        return database.read(c -> new Entries(store).of(unit));
    }

    /** Every entry about a lot itself (not its sets), its bids included, in order of time. */
    public List<Entry> entriesOf(LotId lot) {
        return database.read(c -> new Entries(store).of(lot));
    }

    /** The entry that stands for a lot. */
    public Optional<Entry> lot(LotId lot) {
        return database.read(c -> {
            var row = new References(store).lot(lot);
            return row.isEmpty()
                    ? Optional.empty()
                    : new Entries(store).entry(row.get().entry());
        });
    }

    /** The entry that stands for a set. */
    public Optional<Entry> unit(UnitId unit) {
        return database.read(c -> {
            var row = new References(store).unit(unit);
            return row.isEmpty()
                    ? Optional.empty()
                    : new Entries(store).entry(row.get().entry());
        });
    }

    /** The entries that stand for the recipes of a panel, in order of their numbers. */
    public List<Entry> recipes(String panel) {
        return database.read(c -> new Lookups(store).recipes(panel));
    }

    /** The entry that stands for a bid. */
    public Optional<Entry> bid(int number) {
        return database.read(c -> {
            var rows = store.standing(Tables.BIDS, "bid = ?", number);
            return rows.isEmpty()
                    ? Optional.empty()
                    : new Entries(store).entry(rows.get(0).entry());
        });
    }

    /** The entry that stands for a part; its label without regard to case. */
    public Optional<Entry> part(String label) {
        return database.read(c -> new Lookups(store).part(label));
    }

    /** The sets that wait for a part, in order of their labels. */
    public List<TvSet> waiting() {
        return database.read(c -> new Lookups(store).waiting());
    }

    /** The sets of a lot, in order of their labels. */
    public List<TvSet> setsOf(LotId lot) {
        return database.read(c -> new Lookups(store).setsOf(lot));
    }

    /** Labels of the sets of a lot, in order. */
    public List<UnitId> unitsOf(LotId lot) {
        return database.read(
                c -> new Lookups(store).setsOf(lot).stream().map(TvSet::unit).toList());
    }

    /** Labels that equal the text, else begin with it, else end with it, else hold it; without regard to case; sorted. */
    public List<UnitId> unitsLike(String text, int limit) {
        return database.read(c -> LabelSearch.units(c, text, limit));
    }

    /** All facts of one kind that stand, in order of their key. */
    public <F extends Fact> List<F> all(Class<F> kind) {
        return database.read(c -> {
            Table<F> table = Tables.of(kind);
            List<F> facts = new ArrayList<>();
            store.standing(table, "1").forEach(s -> facts.add(s.fact()));
            facts.sort(table.byKey());
            return facts;
        });
    }

    /** The number for the next attempt to be recorded: one more than the largest. */
    public int nextAttempt() {
        return database.read(c -> 1 + (int) Database.number(c, "SELECT max(attempt) FROM attempt", 0));
    }

    /** The number for the next bid to be recorded: one more than the largest. */
    public int nextBid() {
        return database.read(c -> 1 + (int) Database.number(c, "SELECT max(bid) FROM bid", 0));
    }

    /** The settings that a package names; to be asked before a shop is made for it. */
    public static PackageSettings packageSettings(Path folder) {
        return new PackageFiles(folder).settings();
    }

    /**
     * Takes a history package, whole or not at all. {@link Refused#problems} lists the first bad rows of each file, with file,
     * row and column.
     */
    public Imported importPackage(Path folder, Progress progress) {
        LocalDate today = LocalDate.now(clock().withZone(settings.zone()));
        PackageFiles files = new PackageFiles(folder);
        Currency currency = files.settings().currency();
        if (currency != null && !currency.equals(settings.currency())) {
            throw new Refused("the package is in " + currency + ", this shop's book in " + settings.currency()
                    + "; make a shop for it with init --currency " + currency);
        }
        try {
            Importer importer = new Importer(files, settings, today, progress);
            return database.writeInBulk(c -> importer.run(c, folder));
        } catch (UncheckedIOException e) {
            throw new Refused("the package " + folder + " could not be read: " + Failures.reason(e));
        }
    }

    /**
     * Writes what stands as a history package, in its canonical form; put in place whole. Returns the number of rows.
     *
     * @param folder new, empty, or holding an earlier export; anything else is refused
     */
    public long exportPackage(Path folder, Progress progress) {
        try {
            return ExportFolder.replace(
                    folder, fresh -> database.read(c -> new Exporter(store, settings, progress).write(fresh)));
        } catch (UncheckedIOException e) {
            throw new LedgerFailure("the export to " + folder + " could not be written: " + Failures.reason(e), e);
        }
    }

    /** Checks the ledger against its own rules; empty only if all hold. */
    public List<Finding> audit(Progress progress) {
        return new Audit(database, settings, progress).run();
    }

    private Clock clock() {
        if (clock == null) {
            throw new IllegalStateException("this ledger was opened to read only");
        }
        return clock;
    }

    /** The record as columns; see {@link Detail} for which. */
    public History history(AsOf asOf, Detail detail) {
        return history(asOf, detail, Progress.NONE);
    }

    /** @param progress told how much of the record is read */
    public History history(AsOf asOf, Detail detail, Progress progress) {
        return new HistoryReader(database, settings, detail, progress).read(asOf);
    }

    /** The parts as they stood, in order of their labels; one that had not gone by then has not gone. */
    public List<Part> parts(AsOf asOf) {
        return database.read(c -> PartsSeen.of(c, store, settings.zone(), asOf));
    }

    /** Tells the record as it stood from any other state of this ledger: two readings under the same text are equal. */
    public String state(AsOf asOf) {
        long end = printings().endOf(asOf.recorded());
        return database.read(c -> {
            String seen = " FROM batch WHERE recorded_at IS NULL OR recorded_at < " + end;
            return Database.number(c, "SELECT count(*)" + seen, 0)
                    + " " + Database.number(c, "SELECT max(last)" + seen, 0)
                    + " " + Database.number(c, "SELECT sum(crc)" + seen, 0)
                    + " " + asOf;
        });
    }

    /** When months' reviews were printed, and what was recorded since. */
    public PrintingBook printings() {
        return new PrintingBook(database, store, settings, clock);
    }

    /** Which columns of the history are read. */
    public enum Detail {
        /** What the counting of yield, time and margin needs; no labels. */
        COUNTS,
        /** The same; a label is read when asked for, while the ledger is open. */
        REVIEW,
        /** Every column and the labels. */
        FULL
    }

    @Override
    public void close() {
        database.close();
    }
}
