package org.salvedge.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import org.apache.commons.io.output.DeferredFileOutputStream;
import org.apache.poi.xssf.streaming.SheetDataWriter;
import org.jspecify.annotations.Nullable;

/**
 * Where the rows of a streamed sheet wait until the book is packed: those of a short sheet in memory, of a long one in a passing file.
 * Written without a lock for each bit of a cell, which costs most in POI's own. For one thread.
 */
final class SheetRows extends SheetDataWriter {
    private static final int MOST_IN_MEMORY = 1 << 20;

    private final Path file;
    private final DeferredFileOutputStream rows;

    private SheetRows(Path file, DeferredFileOutputStream rows) throws IOException {
        super(new Unlocked(new OutputStreamWriter(rows, StandardCharsets.UTF_8)));
        this.file = file;
        this.rows = rows;
    }

    static SheetRows create() throws IOException {
        // Made at once, empty: only a file that is known can be taken away where the program is broken off.
        Path file = PassingFiles.make("sheet-", ".xml").toPath();
        return new SheetRows(
                file,
                DeferredFileOutputStream.builder()
                        .setThreshold(MOST_IN_MEMORY)
                        .setOutputFile(file)
                        .get());
    }

    @Override
    public InputStream getWorksheetXMLInputStream() throws IOException {
        return rows.toInputStream();
    }

    /** The passing file that holds them; null where the rows are in memory. */
    @Nullable
    Path passing() {
        return rows.isInMemory() ? null : file;
    }

    /** Takes the passing file away, used or not. */
    void forget() throws IOException {
        Files.deleteIfExists(file);
    }

    /** A buffer for one thread. */
    private static final class Unlocked extends Writer {
        private final Writer out;
        private final char[] buffer = new char[1 << 13];
        private int used;

        Unlocked(Writer out) {
            this.out = out;
        }

        @Override
        public void write(int c) throws IOException {
            fits(1);
            buffer[used++] = (char) c;
        }

        @Override
        public void write(String text) throws IOException {
            write(text, 0, text.length());
        }

        @Override
        public void write(String text, int from, int length) throws IOException {
            if (fits(length)) {
                text.getChars(from, from + length, buffer, used);
                used += length;
            } else {
                out.write(text, from, length);
            }
        }

        @Override
        public void write(char[] text, int from, int length) throws IOException {
            if (fits(length)) {
                System.arraycopy(text, from, buffer, used, length);
                used += length;
            } else {
                out.write(text, from, length);
            }
        }

        /** Makes room for so many; false if they never fit, after which the buffer is empty. */
        private boolean fits(int length) throws IOException {
            if (used + length > buffer.length) {
                empty();
            }
            return length <= buffer.length;
        }

        private void empty() throws IOException {
            out.write(buffer, 0, used);
            used = 0;
        }

        @Override
        public void flush() throws IOException {
            empty();
            out.flush();
        }

        /** Again and again without harm, as POI does. */
        @Override
        public void close() throws IOException {
            if (used > 0) {
                empty();
            }
            out.close();
        }
    }
}
