package org.salvedge.ledger;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.HashMap;
import java.util.Map;
import java.util.concurrent.ArrayBlockingQueue;
import java.util.concurrent.BlockingQueue;
import java.util.concurrent.ExecutionException;
import java.util.concurrent.FutureTask;
import java.util.concurrent.TimeUnit;
import java.util.function.LongConsumer;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;

/**
 * Takes a package whole, within a transaction of the caller: one thread reads and checks the files, this one writes, as far as
 * the other has come.
 */
final class Importer {
    /** Chunks that may wait to be written. */
    private static final int WAITING = 16;
    /** Bytes of a row of a package, about. */
    private static final long ROW_BYTES = 80;

    private final PackageFiles files;
    private final Settings settings;
    private final LocalDate today;
    private final Progress progress;
    private final ProblemList problems = new ProblemList();
    private final BlockingQueue<Chunk<?>> ready = new ArrayBlockingQueue<>(WAITING);

    Importer(PackageFiles files, Settings settings, LocalDate today, Progress progress) {
        this.files = files;
        this.settings = settings;
        this.today = today;
        this.progress = progress;
    }

    Imported run(Connection connection, Path folder) throws SQLException {
        long first = Database.number(connection, "SELECT last FROM batch ORDER BY first DESC LIMIT 1", 0) + 1;
        boolean rebuild = files.bytes() / ROW_BYTES > first;
        if (rebuild) {
            dropIndexes(connection);
        }
        BulkDictionary words = new BulkDictionary(connection, "word");
        BulkDictionary lots = new BulkDictionary(connection, "lot_label");
        BulkDictionary units = new BulkDictionary(connection, "unit_label");
        Codec codec = new Codec(words, lots, units, settings.currency(), lot -> settings.currency(), settings.codes());
        KeysHeld held = new KeysHeld(connection);
        ChunkMaker maker = new ChunkMaker(codec, first);
        FutureTask<Boolean> reading = new FutureTask<>(() -> {
            new PackageRows(files, settings, today, codec, units, held, problems, bytes(files.bytes()), maker)
                    .readAll();
            maker.flush();
            return true;
        });
        Map<Table<?>, Long> rows = write(connection, reading);
        problems.refuse(folder.toString());
        progress.step("finishing", 0.9);
        words.write(connection);
        lots.write(connection);
        units.write(connection);
        if (rebuild) {
            for (String sql : Schema.indexes()) {
                Database.execute(connection, sql);
            }
        }
        if (maker.next > first) {
            Batches.add(connection, first, maker.next - 1, null, Batches.IMPORT);
        }
        return new Imported(
                first,
                rows.getOrDefault(Tables.LOTS, 0L),
                rows.getOrDefault(Tables.UNITS, 0L),
                rows.getOrDefault(Tables.ATTEMPTS, 0L),
                rows.getOrDefault(Tables.EXITS, 0L),
                rows.getOrDefault(Tables.COMEBACKS, 0L),
                rows.getOrDefault(Tables.PARTS, 0L),
                rows.getOrDefault(Tables.RECIPES, 0L),
                rows.getOrDefault(Tables.BIDS, 0L),
                rows.getOrDefault(Tables.OFFERS, 0L));
    }

    private static void dropIndexes(Connection connection) throws SQLException {
        for (String sql : Schema.indexes()) {
            String name = sql.substring(sql.indexOf("INDEX ") + "INDEX ".length(), sql.indexOf(" ON "));
            Database.execute(connection, "DROP INDEX " + name);
        }
    }

    private LongConsumer bytes(long all) {
        return new LongConsumer() {
            private long done;
            private long told;

            @Override
            public void accept(long more) {
                done += more;
                if (done - told > all / 200) {
                    told = done;
                    progress.step("reading", Math.min(0.9, 0.65 * done / all));
                }
            }
        };
    }

    /** Writes chunks until the reader has ended; a failure of either ends both. */
    private Map<Table<?>, Long> write(Connection connection, FutureTask<Boolean> reading) throws SQLException {
        Thread reader = new Thread(reading, "package reader");
        reader.setDaemon(true);
        reader.start();
        Map<Table<?>, Long> rows = new HashMap<>();
        Map<Table<?>, PreparedStatement> inserts = new HashMap<>();
        boolean done = false;
        try {
            for (Chunk<?> chunk = next(reading); chunk != null; chunk = next(reading)) {
                Table<?> table = chunk.table();
                PreparedStatement insert = inserts.get(table);
                if (insert == null) {
                    insert = connection.prepareStatement(table.insert());
                    inserts.put(table, insert);
                }
                chunk.write(insert);
                rows.merge(table, (long) chunk.rows(), Long::sum);
            }
            done = true;
            return rows;
        } finally {
            if (!done) {
                reader.interrupt();
            }
            for (PreparedStatement insert : inserts.values()) {
                insert.close();
            }
        }
    }

    private @Nullable Chunk<?> next(FutureTask<Boolean> reading) {
        try {
            while (true) {
                Chunk<?> chunk = ready.poll(20, TimeUnit.MILLISECONDS);
                if (chunk != null) {
                    return chunk;
                }
                if (reading.isDone() && ready.isEmpty()) {
                    reading.get();
                    return null;
                }
            }
        } catch (InterruptedException e) {
            Thread.currentThread().interrupt();
            throw new IllegalStateException("interrupted while importing", e);
        } catch (ExecutionException e) {
            if (e.getCause() instanceof RuntimeException known) {
                throw known;
            }
            throw new IllegalStateException(e.getCause());
        }
    }

    /** Gathers rows into chunks, as long as there is no problem: after one, nothing will be kept anyway. */
    private final class ChunkMaker implements PackageRows.RowSink {
        private final Codec codec;
        private long next;
        private @Nullable Chunk<?> open;

        ChunkMaker(Codec codec, long first) {
            this.codec = codec;
            this.next = first;
        }

        @Override
        public <F extends Fact> void take(Table<F> table, F fact) throws SQLException {
            if (!problems.isEmpty()) {
                return;
            }
            chunk(table).add(fact, codec);
            next++;
        }

        @SuppressWarnings("unchecked") // the chunk of that table is of its kind
        private <F extends Fact> Chunk<F> chunk(Table<F> table) {
            Chunk<?> current = open;
            if (current != null && current.table().equals(table) && !current.isFull()) {
                return (Chunk<F>) current;
            }
            flush();
            Chunk<F> fresh = new Chunk<>(table, next);
            open = fresh;
            return fresh;
        }

        void flush() {
            Chunk<?> full = open;
            open = null;
            if (full == null) {
                return;
            }
            try {
                ready.put(full);
            } catch (InterruptedException e) {
                Thread.currentThread().interrupt();
                throw new Refused("the import was given up");
            }
        }
    }
}
