package org.salvedge.ledger;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.sql.Statement;
import org.jspecify.annotations.Nullable;
import org.sqlite.SQLiteConfig;
import org.sqlite.SQLiteConfig.JournalMode;
import org.sqlite.SQLiteConfig.SynchronousMode;
import org.sqlite.SQLiteException;
import org.sqlite.SQLiteOpenMode;

/** One connection to the ledger's file: how it is opened, transactions, and failures put into words. */
final class Database implements AutoCloseable {
    /** How long a write waits for another one to end. */
    private static final int PATIENCE_MILLIS = 30_000;

    /** Bytes that a reader of a ledger needs beside it. */
    private static final long LEAST_ROOM = 64 * 1024;

    private static final int BULK_CACHE_KIB = 128 * 1024;

    private static final long MMAP_BYTES = 4L << 30;

    private enum Mode {
        WRITE,
        QUERY,
        READ,
        IMMUTABLE
    }

    private final Path file;
    private final Mode mode;
    private final Connection connection;
    private final Runnable afterClose;
    private boolean inTransaction;

    private Database(Path file, Mode mode, Connection connection, Runnable afterClose) {
        this.file = file;
        this.mode = mode;
        this.connection = connection;
        this.afterClose = afterClose;
    }

    interface Work<T extends @Nullable Object> {
        T in(Connection connection) throws SQLException;
    }

    /** Opens to read and write; makes the file if told to. */
    static Database forWriting(Path file, boolean create) {
        SQLiteConfig config = new SQLiteConfig();
        if (create) {
            config.setJournalMode(JournalMode.WAL); // stays with the file
        } else {
            config.resetOpenMode(SQLiteOpenMode.CREATE);
        }
        config.enforceForeignKeys(true);
        config.setBusyTimeout(PATIENCE_MILLIS);
        config.setSynchronous(SynchronousMode.FULL);
        return connect(file, Mode.WRITE, file.toString(), config, () -> {});
    }

    /** Opens a file that can be written, to read it and tidy up after. */
    static Database forQueries(Path file) {
        return ofCopy(file, () -> {});
    }

    /** The same; when it is closed, something more is done. */
    static Database ofCopy(Path file, Runnable afterClose) {
        SQLiteConfig config = new SQLiteConfig();
        config.resetOpenMode(SQLiteOpenMode.CREATE);
        config.setBusyTimeout(PATIENCE_MILLIS);
        config.setPragma(SQLiteConfig.Pragma.MMAP_SIZE, Long.toString(MMAP_BYTES));
        Database database = connect(file, Mode.QUERY, file.toString(), config, afterClose);
        database.pragma("query_only = ON");
        return database;
    }

    /** Opens a file that cannot be written. */
    static Database forReading(Path file) {
        return connect(file, Mode.READ, "file:" + uriPath(file), readOnly(), () -> {});
    }

    /** Opens a file that nobody can change: SQLite then looks for no log beside it and locks nothing. */
    static Database immutable(Path file) {
        return connect(file, Mode.IMMUTABLE, "file:" + uriPath(file) + "?immutable=1", readOnly(), () -> {});
    }

    /** A second connection to the same file, to read. */
    Database again() {
        return switch (mode) {
            case WRITE, QUERY -> forQueries(file);
            case READ -> forReading(file);
            case IMMUTABLE -> immutable(file);
        };
    }

    private static SQLiteConfig readOnly() {
        SQLiteConfig config = new SQLiteConfig();
        config.setReadOnly(true);
        config.setBusyTimeout(PATIENCE_MILLIS);
        config.setPragma(SQLiteConfig.Pragma.MMAP_SIZE, Long.toString(MMAP_BYTES));
        return config;
    }

    private static String uriPath(Path file) {
        return file.toAbsolutePath().toUri().getRawPath();
    }

    private static Database connect(Path file, Mode mode, String name, SQLiteConfig config, Runnable afterClose) {
        try {
            return new Database(file, mode, config.createConnection("jdbc:sqlite:" + name), afterClose);
        } catch (SQLException e) {
            throw failure(file, e);
        }
    }

    private void pragma(String setting) {
        plain(c -> {
            execute(c, "PRAGMA " + setting);
            return true;
        });
    }

    interface Step {
        void in(Connection connection) throws SQLException;
    }

    void doRead(Step step) {
        read(connection -> {
            step.in(connection);
            return true;
        });
    }

    void doWrite(Step step) {
        write(connection -> {
            step.in(connection);
            return true;
        });
    }

    /** Reads within one transaction, so that all of it is of one moment. */
    <T extends @Nullable Object> T read(Work<T> work) {
        return transact("BEGIN", work);
    }

    /** Writes within one transaction; on disk when it returns, undone when it throws. */
    <T extends @Nullable Object> T write(Work<T> work) {
        return transact("BEGIN IMMEDIATE", work);
    }

    /** The same for many rows whose references are known to be good: SQLite need not look each one up, and has more memory. */
    <T extends @Nullable Object> T writeInBulk(Work<T> work) {
        pragma("foreign_keys = OFF");
        pragma("cache_size = -" + BULK_CACHE_KIB);
        try {
            T result = write(work);
            pragma("wal_checkpoint(TRUNCATE)");
            return result;
        } finally {
            pragma("cache_size = -2000");
            pragma("foreign_keys = ON");
        }
    }

    private <T extends @Nullable Object> T transact(String begin, Work<T> work) {
        try {
            if (inTransaction) {
                return work.in(connection);
            }
            execute(connection, begin);
            inTransaction = true;
            boolean done = false;
            try {
                T result = work.in(connection);
                execute(connection, "COMMIT");
                done = true;
                return result;
            } finally {
                inTransaction = false;
                if (!done) {
                    rollback();
                }
            }
        } catch (SQLException e) {
            throw failure(file, e);
        }
    }

    private void rollback() {
        try {
            execute(connection, "ROLLBACK");
        } catch (SQLException e) {
            // SQLite has rolled back by itself, as it does when the disk is full.
        }
    }

    /** Outside any transaction. */
    <T extends @Nullable Object> T plain(Work<T> work) {
        try {
            return work.in(connection);
        } catch (SQLException e) {
            throw failure(file, e);
        }
    }

    static void execute(Connection connection, String sql) throws SQLException {
        try (Statement statement = connection.createStatement()) {
            statement.execute(sql);
        }
    }

    /** The whole number that a query gives; {@code otherwise} where it gives no row or NULL. */
    static long number(Connection connection, String sql, long otherwise, Object... parameters) throws SQLException {
        try (PreparedStatement statement = connection.prepareStatement(sql)) {
            bind(statement, parameters);
            try (ResultSet row = statement.executeQuery()) {
                if (!row.next()) {
                    return otherwise;
                }
                long value = row.getLong(1);
                return row.wasNull() ? otherwise : value;
            }
        }
    }

    static void bind(PreparedStatement statement, Object... parameters) throws SQLException {
        for (int i = 0; i < parameters.length; i++) {
            statement.setObject(i + 1, parameters[i]);
        }
    }

    Path file() {
        return file;
    }

    @Override
    public void close() {
        try {
            connection.close();
        } catch (SQLException e) {
            throw failure(file, e);
        } finally {
            afterClose.run();
        }
    }

    /** SQLite says "input or output" where it wanted to lengthen a file beside the ledger. */
    private static boolean isFull(Path file) {
        try {
            return Files.getFileStore(file).getUsableSpace() < LEAST_ROOM;
        } catch (IOException e) {
            return false;
        }
    }

    /** What went wrong, in words that say what to do. */
    static LedgerFailure failure(Path file, SQLException e) {
        String advice = "";
        if (e instanceof SQLiteException s) {
            advice = switch (s.getResultCode().code & 0xff) {
                case 5, 6 -> "another program is writing to it; try again in a moment";
                case 8 -> "it cannot be written; see its permissions and those of its folder";
                case 10 ->
                    isFull(file)
                            ? "the disk is full; make room and try again"
                            : "the disk could not be read or written";
                case 11 -> "its file is damaged; go back to a copy, then run audit";
                case 13 -> "the disk is full; make room and try again";
                case 14 -> "it cannot be opened; see that it is there and may be read";
                case 26 -> "it is not a ledger";
                default -> "";
            };
        }
        String detail = advice.isEmpty() ? String.valueOf(e.getMessage()) : advice;
        return new LedgerFailure("the ledger " + file + ": " + detail, e);
    }
}
