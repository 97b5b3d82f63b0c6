package org.salvedge.report;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.channels.FileChannel;
import java.nio.file.AtomicMoveNotSupportedException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.nio.file.StandardCopyOption;
import java.nio.file.StandardOpenOption;

/** Writes a file under another name beside its place and moves it there when it is whole; a failure leaves nothing behind. */
public final class WholeFile {
    private WholeFile() {}

    /** What fills the file. */
    @FunctionalInterface
    public interface Content {
        void writeTo(OutputStream out) throws IOException;
    }

    /** @throws IOException if it cannot be written; then what stood there before still stands */
    public static void write(Path file, Content content) throws IOException {
        Path folder = file.toAbsolutePath().getParent();
        Files.createDirectories(folder);
        Path part = Files.createTempFile(folder, ".salvedge-", ".part");
        try {
            try (OutputStream out = Files.newOutputStream(part)) {
                content.writeTo(out);
            }
            readableByOthers(part);
            settleOnDisk(part);
            try {
                Files.move(part, file, StandardCopyOption.ATOMIC_MOVE, StandardCopyOption.REPLACE_EXISTING);
            } catch (AtomicMoveNotSupportedException e) {
                Files.move(part, file, StandardCopyOption.REPLACE_EXISTING);
            }
        } finally {
            Files.deleteIfExists(part);
        }
    }

    /** Else a pulled plug may leave the new name with nothing in it. */
    private static void settleOnDisk(Path file) throws IOException {
        try (FileChannel channel = FileChannel.open(file, StandardOpenOption.WRITE)) {
            channel.force(true);
        }
    }

    /** Temporary files are their owner's alone; a report is not. */
    private static void readableByOthers(Path file) {
        file.toFile().setReadable(true, false);
    }
}
