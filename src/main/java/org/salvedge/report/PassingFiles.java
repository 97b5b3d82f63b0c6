package org.salvedge.report;

import java.io.File;
import java.io.IOException;
import java.nio.file.Files;
import org.apache.poi.util.TempFile;
import org.apache.poi.util.TempFileCreationStrategy;

/**
 * Files of the moment while a workbook is written: each its owner's alone and under a name that nobody can foretell. POI's own way
 * is one folder for all users of a machine, which belongs to whoever came first.
 */
final class PassingFiles implements TempFileCreationStrategy {
    private PassingFiles() {}

    static void use() {
        TempFile.setTempFileCreationStrategy(new PassingFiles());
    }

    @Override
    public File createTempFile(String prefix, String suffix) throws IOException {
        return make(prefix, suffix);
    }

    /** An empty one; gone at the latest when the program ends. */
    static File make(String prefix, String suffix) throws IOException {
        File file = Files.createTempFile(prefix, suffix).toFile();
        file.deleteOnExit();
        return file;
    }

    @Override
    public File createTempDirectory(String prefix) throws IOException {
        File folder = Files.createTempDirectory(prefix).toFile();
        folder.deleteOnExit();
        return folder;
    }
}
