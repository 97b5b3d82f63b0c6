package org.salvedge.ledger;

import java.io.IOException;
import java.nio.file.FileAlreadyExistsException;
import java.nio.file.Files;
import java.nio.file.LinkOption;
import java.nio.file.Path;
import java.util.Currency;
import java.util.List;
import java.util.stream.Stream;
import org.salvedge.shop.Refused;

/** The file of a new ledger: whole, or not there; half of one would be taken for a shop. */
final class NewFile {
    private NewFile() {}

    static Database make(Path file, Currency currency) {
        List<Path> absent = Stream.of("", "-wal", "-shm", "-journal")
                .map(end -> file.resolveSibling(file.getFileName() + end))
                .filter(f -> !Files.exists(f, LinkOption.NOFOLLOW_LINKS))
                .toList();
        reserve(file);
        boolean done = false;
        try {
            Database database = withTables(file, currency);
            done = true;
            return database;
        } finally {
            if (!done) {
                absent.forEach(NewFile::delete);
            }
        }
    }

    /** So that of two who make the same ledger at once one is refused, and does not take the other's away. */
    private static void reserve(Path file) {
        try {
            Files.createFile(file);
        } catch (FileAlreadyExistsException e) {
            if (Files.exists(file)) { // else a link to where none is yet
                throw new Refused("there is a ledger already: " + file);
            }
        } catch (IOException e) {
            // SQLite will fail on it too, and its failures are put into words.
        }
    }

    private static Database withTables(Path file, Currency currency) {
        Database database = Database.forWriting(file, true);
        boolean done = false;
        try {
            database.doWrite(c -> Schema.create(c, currency));
            done = true;
            return database;
        } finally {
            if (!done) {
                database.close();
            }
        }
    }

    private static void delete(Path file) {
        try {
            Files.deleteIfExists(file);
        } catch (IOException e) {
            // The failure that led here is told.
        }
    }
}
