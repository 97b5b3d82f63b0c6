package org.salvedge.report;

import java.io.File;
import java.io.FileOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import org.apache.commons.compress.archivers.zip.ZipArchiveOutputStream;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.streaming.SheetDataWriter;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * Streams long sheets without what costs most there: a lock for each bit of a cell, and the last few percent of packing, which take
 * longer than the rest.
 */
final class QuickBook extends SXSSFWorkbook {
    private static final int ROWS_IN_MEMORY = 200;
    private static final int LEVEL = 2;

    QuickBook(XSSFWorkbook book) {
        super(book, ROWS_IN_MEMORY);
    }

    @Override
    protected SheetDataWriter createSheetDataWriter() throws IOException {
        return new SheetDataWriter() {
            @Override
            public Writer createWriter(File file) throws IOException {
                return new Unlocked(new OutputStreamWriter(new FileOutputStream(file), StandardCharsets.UTF_8));
            }
        };
    }

    @Override
    protected ZipArchiveOutputStream createArchiveOutputStream(OutputStream out) {
        ZipArchiveOutputStream zip = super.createArchiveOutputStream(out);
        zip.setLevel(LEVEL);
        return zip;
    }

    /** A buffer for one thread. */
    private static final class Unlocked extends Writer {
        private final Writer out;
        private final char[] buffer = new char[1 << 14];
        private int used;

        Unlocked(Writer out) {
            this.out = out;
        }

        @Override
        public void write(int c) throws IOException {
            makeRoom(1);
            buffer[used++] = (char) c;
        }

        @Override
        public void write(String text, int from, int length) throws IOException {
            if (makeRoom(length)) {
                text.getChars(from, from + length, buffer, used);
                used += length;
            } else {
                out.write(text, from, length);
            }
        }

        @Override
        public void write(String text) throws IOException {
            write(text, 0, text.length());
        }

        @Override
        public void write(char[] text, int from, int length) throws IOException {
            if (makeRoom(length)) {
                System.arraycopy(text, from, buffer, used, length);
                used += length;
            } else {
                out.write(text, from, length);
            }
        }

        /** Empties the buffer where it is too full; false if that many never fit. */
        private boolean makeRoom(int length) throws IOException {
            if (used + length > buffer.length) {
                out.write(buffer, 0, used);
                used = 0;
            }
            return length <= buffer.length;
        }

        @Override
        public void flush() throws IOException {
            makeRoom(buffer.length);
            out.flush();
        }

        @Override
        public void close() throws IOException {
            try (out) {
                makeRoom(buffer.length);
            }
        }
    }
}
