package org.salvedge.ledger;

import java.math.BigDecimal;
import java.sql.Connection;
import java.sql.SQLException;
import java.time.Clock;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import java.util.Map;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.Settings;

/** When months' reviews were printed, and what was recorded since; of an open {@link Ledger}. */
public final class PrintingBook {
    private final Database database;
    private final Store store;
    private final Settings settings;
    private final @Nullable Clock clock;

    PrintingBook(Database database, Store store, Settings settings, @Nullable Clock clock) {
        this.database = database;
        this.store = store;
        this.settings = settings;
        this.clock = clock;
    }

    /** The number of the last entry on record; 0 = none. */
    public long lastEntry() {
        return database.read(c -> store.lastEntry());
    }

    /**
     * The latest printing of a month's review.
     *
     * @param recorded printings after that day's end are not seen; null = all are
     */
    public Optional<Printing> latest(YearMonth month, @Nullable LocalDate recorded) {
        return database.read(c -> new Printings(c).latest(month, endOf(recorded)));
    }

    /**
     * Keeps that a month's review was printed.
     *
     * @param last the last entry that it counted
     * @param figures that it showed; no name holds a line's end or an equals sign
     */
    public void add(YearMonth month, long last, Map<String, BigDecimal> figures) {
        if (clock == null) {
            throw new IllegalStateException("this ledger was opened to read only");
        }
        Printing printing = new Printing(month, clock.instant(), last, figures);
        database.doWrite(c -> new Printings(c).add(printing));
    }

    /**
     * What was recorded after an entry of lots, sets, attempts, exits, comebacks and bids.
     *
     * @param asOf what had happened by its one day and was recorded by its other; what came by import meanwhile is counted too
     */
    public List<Recorded> recordedAfter(long entry, AsOf asOf) {
        LocalDate happened = asOf.happened();
        return database.read(c -> new RecordedSince(
                        store, entry, lastEntryBy(c, asOf.recorded()), happened == null ? LocalDate.MAX : happened)
                .list());
    }

    /** The sales of some days, both included, and what was done to their sets, as recorded by a day's end; null = so far. */
    public SoldSets sold(LocalDate first, LocalDate last, @Nullable LocalDate recorded) {
        return database.read(c -> SoldSets.of(store, first, last, lastEntryBy(c, recorded)));
    }

    /** The last entry recorded by a day's end; what came by import before the first one after it counts as earlier. */
    long lastEntryBy(Connection connection, @Nullable LocalDate recorded) throws SQLException {
        return Database.number(
                        connection,
                        "SELECT min(first) FROM batch WHERE recorded_at >= ?",
                        Long.MAX_VALUE,
                        endOf(recorded))
                - 1;
    }

    /** Milliseconds since 1970, UTC, of the end of a day by the shop's zone; null = never. */
    long endOf(@Nullable LocalDate day) {
        return day == null
                ? Long.MAX_VALUE
                : day.plusDays(1).atStartOfDay(settings.zone()).toInstant().toEpochMilli();
    }
}
