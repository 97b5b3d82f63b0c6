package org.salvedge.ledger;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.AccessDeniedException;
import java.nio.file.FileSystemException;

/** Failures of files in words. */
final class Failures {
    private Failures() {}

    static String reason(UncheckedIOException e) {
        IOException cause = e.getCause();
        if (cause instanceof AccessDeniedException denied) {
            return "no permission for " + denied.getFile();
        }
        if (cause instanceof FileSystemException file && file.getReason() != null) {
            return file.getFile() + ": " + file.getReason();
        }
        return cause == null ? "" : String.valueOf(cause.getMessage());
    }
}
