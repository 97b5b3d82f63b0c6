package org.salvedge.ledger;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;

/**
 * Opens a ledger to read, wherever it lies. A file in write-ahead mode has two more beside it while it is in use: where they
 * cannot be made, the file is read as one that nobody changes, or, if a log was left behind, from a copy together with that log.
 */
final class ReadOnlyOpening {
    private ReadOnlyOpening() {}

    static Database open(Path file) {
        Path folder = file.toAbsolutePath().getParent();
        if (folder != null && Files.isWritable(folder) && Files.isWritable(file)) {
            return orWithoutLog(Database.forQueries(file), file);
        }
        return orWithoutLog(Database.forReading(file), file);
    }

    private static Database orWithoutLog(Database database, Path file) {
        boolean good = false;
        try {
            database.doRead(c -> Database.number(c, "SELECT count(*) FROM sqlite_schema", 0));
            good = true;
            return database;
        } catch (LedgerFailure e) {
            if (!e.isForLackOfLog()) {
                throw e;
            }
        } finally {
            if (!good) {
                database.close();
            }
        }
        return withoutLog(file);
    }

    /** For a folder in which no log can be made. */
    static Database withoutLog(Path file) {
        Path log = file.resolveSibling(file.getFileName() + "-wal");
        try {
            if (!Files.exists(log) || Files.size(log) == 0) {
                return Database.immutable(file);
            }
            Path copies = Files.createTempDirectory("salvedge-");
            boolean good = false;
            try {
                Path copy = copies.resolve("shop.db");
                Files.copy(file, copy);
                Files.copy(log, copies.resolve("shop.db-wal"));
                Database database = Database.ofCopy(copy, () -> delete(copies));
                good = true;
                return database;
            } finally {
                if (!good) {
                    delete(copies);
                }
            }
        } catch (IOException e) {
            throw new LedgerFailure("the ledger " + file + " could not be copied to read it: " + e.getMessage(), e);
        }
    }

    private static void delete(Path folder) {
        try (Stream<Path> files = Files.list(folder)) {
            for (Path file : files.toList()) {
                Files.delete(file);
            }
            Files.delete(folder);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }
}
