package org.salvedge.report;

import java.io.IOException;
import java.io.OutputStream;
import java.io.UncheckedIOException;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;

/** Writes a file whole or not at all: beside its place under another name, then moved. */
final class WholeFile {
    private WholeFile() {}

    interface Writer {
        void to(OutputStream out) throws IOException;
    }

    /** @throws UncheckedIOException if it cannot be written; then nothing stands under its name that did not before */
    static void write(Path file, Writer writer) {
        Path folder = file.toAbsolutePath().getParent();
        Path part = null;
        try {
            part = Files.createTempFile(folder, "." + file.getFileName() + ".", ".part");
            try (OutputStream out = Files.newOutputStream(part)) {
                writer.to(out);
            }
            try {
                Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(file + " could not be written: " + e.getMessage(), e);
        } finally {
            deleteQuietly(part);
        }
    }

    private static void deleteQuietly(@org.jspecify.annotations.Nullable Path part) {
        if (part != null) {
            try {
                Files.deleteIfExists(part);
            } catch (IOException e) {
                // The failure that led here is told; a leftover .part file harms nothing.
            }
        }
    }
}
