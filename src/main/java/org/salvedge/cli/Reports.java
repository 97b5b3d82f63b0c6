package org.salvedge.cli;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Locale;
import org.salvedge.ledger.LedgerFailure;
import org.salvedge.report.Paper;
import org.salvedge.shop.Settings;

/** Writing a workbook, and what stands on each. */
final class Reports {
    private Reports() {}

    interface Writing {
        void run() throws IOException;
    }

    /**
     * Where a report goes that somebody named.
     *
     * @param option as it was typed
     * @param ending that says what the file holds, with its dot
     * @throws Usage if the name says that it holds something else
     * @throws LedgerFailure if its folder is not there; only the shop's own is made
     */
    static Path target(Session session, String option, Path named, String ending) {
        if (!named.toString().toLowerCase(Locale.ROOT).endsWith(ending)) {
            throw new Usage(option + ": \"" + named + "\" must end in " + ending);
        }
        Path file = session.file(named);
        Path folder = file.toAbsolutePath().getParent();
        if (folder != null
                && !Files.isDirectory(folder)
                && !folder.equals(session.shop().reports().toAbsolutePath())) {
            throw new LedgerFailure(
                    option + ": " + file + " could not be written: there is no folder " + folder
                            + ". Make it, or name another",
                    null);
        }
        return file;
    }

    /** A report that cannot be written is status 4; none stands half written. */
    static void write(Path file, Writing writing) {
        try {
            Path folder = file.toAbsolutePath().getParent();
            if (folder != null) {
                Files.createDirectories(folder);
            }
            writing.run();
        } catch (IOException e) {
            throw failure(file, e, e);
        } catch (RuntimeException e) {
            // POI wraps what its own threads and temporary files meet.
            Throwable cause = e;
            while (cause != null && !(cause instanceof IOException)) {
                cause = cause.getCause();
            }
            throw cause == null ? e : failure(file, e, cause);
        }
    }

    private static LedgerFailure failure(Path file, Exception e, Throwable cause) {
        return new LedgerFailure(
                file + " could not be written: " + cause.getMessage()
                        + ". Check the folder's permissions and the room on the disk",
                e);
    }

    static Paper paper(Session session) {
        Settings settings = session.shop().settings();
        Path folder = session.shop().folder().toAbsolutePath().normalize().getFileName();
        return new Paper(
                folder == null ? "shop" : folder.toString(), session.today(), settings.pageSize(), settings.currency());
    }
}
