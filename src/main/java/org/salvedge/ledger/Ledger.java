package org.salvedge.ledger;

import java.nio.file.Path;
import java.time.Clock;
import java.util.List;
import java.util.Optional;
import java.util.function.Supplier;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.Fact;
import org.salvedge.shop.History;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Settings;
import org.salvedge.shop.UnitId;

/**
 * The shop's record in one SQLite file. Entries are appended, never changed: a correction is an entry that supersedes another.
 * Every call that writes is one transaction, on disk when it returns.
 *
 * <p>Methods throw {@link org.salvedge.shop.Refused} where the input cannot be taken, {@link LedgerFailure} where the file
 * cannot be read or written; either way nothing has changed.
 */
public final class Ledger implements AutoCloseable {
    private Ledger() {}

    /** Makes an empty ledger; refused if there is one. */
    public static Ledger create(Path file, Settings settings, Clock clock) {
        throw new UnsupportedOperationException();
    }

    /** Opens a ledger to read and write; waits up to some seconds for another writer. */
    public static Ledger open(Path file, Settings settings, Clock clock) {
        throw new UnsupportedOperationException();
    }

    /** Opens a ledger to read only, also from a folder that cannot be written. */
    public static Ledger openForReading(Path file, Settings settings) {
        throw new UnsupportedOperationException();
    }

    /** Puts facts on record in one transaction; returns their entry numbers in order. Impossible histories are refused. */
    public List<Long> record(List<? extends Fact> facts) {
        throw new UnsupportedOperationException();
    }

    /**
     * The same, with the facts worked out inside the transaction, after every earlier writer's: what is read there, such as
     * {@link #nextAttempt}, still holds when the facts are put on record.
     */
    public List<Long> record(Supplier<? extends List<? extends Fact>> facts) {
        throw new UnsupportedOperationException();
    }

    /** The number after the largest that an attempt ever had, from 1. */
    public int nextAttempt() {
        throw new UnsupportedOperationException();
    }

    /** The number after the largest that a bid ever had, from 1. */
    public int nextBid() {
        throw new UnsupportedOperationException();
    }

    /** Supersedes an entry by a changed fact about the same thing; returns the new entry's number. */
    public long amend(long entry, Fact changed, String why) {
        throw new UnsupportedOperationException();
    }

    /** Takes an entry back; refused, with their names, where later entries rest on it. Returns the new entry's number. */
    public long undo(long entry, String why) {
        throw new UnsupportedOperationException();
    }

    /** The latest entry that stands and is no undoing. */
    public Optional<Entry> latest() {
        throw new UnsupportedOperationException();
    }

    public Optional<Entry> entry(long number) {
        throw new UnsupportedOperationException();
    }

    /** Every entry about a set, superseded ones too, in order of time. */
    public List<Entry> entriesOf(UnitId unit) {
        throw new UnsupportedOperationException();
    }

    /** Every entry about a lot itself (not its sets), in order of time. */
    public List<Entry> entriesOf(LotId lot) {
        throw new UnsupportedOperationException();
    }

    /** The entry that stands for a lot. */
    public Optional<Entry> lot(LotId lot) {
        throw new UnsupportedOperationException();
    }

    /** The entry that stands for a set. */
    public Optional<Entry> unit(UnitId unit) {
        throw new UnsupportedOperationException();
    }

    /** Labels of the sets of a lot, in order. */
    public List<UnitId> unitsOf(LotId lot) {
        throw new UnsupportedOperationException();
    }

    /** Labels that equal the text, else begin with it, else end with it, else hold it; without regard to case; sorted. */
    public List<UnitId> unitsLike(String text, int limit) {
        throw new UnsupportedOperationException();
    }

    /** All facts of one kind that stand, in order of their key. */
    public <F extends Fact> List<F> all(Class<F> kind) {
        throw new UnsupportedOperationException();
    }

    /** The record as columns; see {@link Detail} for which. */
    public History history(AsOf asOf, Detail detail) {
        throw new UnsupportedOperationException();
    }

    /** Which columns of the history are read. */
    public enum Detail {
        /** What the counting of yield, time and margin needs; no labels. */
        COUNTS,
        /** Every column and the labels. */
        FULL
    }

    @Override
    public void close() {
        throw new UnsupportedOperationException();
    }
}
