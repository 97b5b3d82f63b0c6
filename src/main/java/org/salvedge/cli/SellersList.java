package org.salvedge.cli;

import java.nio.file.Path;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.ListedSet;
import org.salvedge.manifest.Manifest;
import org.salvedge.manifest.ManifestReader;

/** Reads a seller's list for a command; whoever sits at the keyboard is asked for the password of a protected one. */
final class SellersList {
    private final Session session;
    private final ManifestReader reader;

    SellersList(Session session) {
        this.session = session;
        this.reader = new ManifestReader(session.shop().settings());
    }

    static Manifest read(Session session, Path file, @Nullable String password) {
        return new SellersList(session).read(file, password).manifest();
    }

    /** @param password as given on the command line, or null */
    ManifestReader.WithSheets read(Path file, @Nullable String password) {
        return reader.readWithSheets(session.file(file), () -> password == null ? ask(file) : password);
    }

    ManifestReader reader() {
        return reader;
    }

    /** The file, and which of its sheets hold sets. */
    static String place(Manifest manifest) {
        List<String> sheets = manifest.sets().stream()
                .map(ListedSet::sheet)
                .filter(sheet -> !sheet.isEmpty())
                .distinct()
                .toList();
        if (sheets.size() < 2) {
            return (manifest.sheet().isEmpty() ? "" : "sheet \"" + manifest.sheet() + "\" of ") + manifest.file();
        }
        return sheets.size() + " sheets, \"" + sheets.get(0) + "\" to \"" + sheets.get(sheets.size() - 1) + "\", of "
                + manifest.file();
    }

    private @Nullable String ask(Path file) {
        Terminal terminal = session.terminal();
        Path name = file.getFileName();
        return terminal.asks() ? terminal.secret("Password of " + name + ": ") : null;
    }
}
