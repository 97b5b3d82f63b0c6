package org.salvedge.ledger;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.FilterInputStream;
import java.io.IOException;
import java.io.InputStream;
import java.io.InputStreamReader;
import java.io.UncheckedIOException;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Iterator;
import java.util.List;
import java.util.function.LongConsumer;
import org.jspecify.annotations.Nullable;

/** A CSV file by RFC 4180, read row by row, rows counted as a spreadsheet shows them: the header is row 1. */
final class CsvFile implements AutoCloseable {
    private static final String BYTE_ORDER_MARK = "\uFEFF";

    private final String name;
    private final CsvReader<CsvRecord> reader;
    private final Iterator<CsvRecord> records;
    private final ProblemList problems;
    private final List<String> header;
    private long row;
    private boolean broken;

    private CsvFile(Path file, ProblemList problems, LongConsumer bytesRead) throws IOException {
        this.name = String.valueOf(file.getFileName());
        this.problems = problems;
        InputStream in = new Counted(Files.newInputStream(file), bytesRead);
        reader = CsvReader.builder()
                .skipEmptyLines(false)
                .allowUnclosedQuote(false)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .ofCsvRecord(new InputStreamReader(
                        in,
                        StandardCharsets.UTF_8
                                .newDecoder()
                                .onMalformedInput(CodingErrorAction.REPORT)
                                .onUnmappableCharacter(CodingErrorAction.REPORT)));
        records = reader.iterator();
        CsvRecord first = step();
        row = 1;
        header = new ArrayList<>(first == null ? List.of() : first.getFields());
        if (!header.isEmpty() && header.get(0).startsWith(BYTE_ORDER_MARK)) {
            header.set(0, header.get(0).substring(1));
        }
    }

    /** @param bytesRead told how many bytes more were read */
    static CsvFile open(Path file, ProblemList problems, LongConsumer bytesRead) {
        try {
            return new CsvFile(file, problems, bytesRead);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    String name() {
        return name;
    }

    /** Empty if the file is. */
    List<String> header() {
        return header;
    }

    /** Whether some of it could not be read, which was told. */
    boolean isBroken() {
        return broken;
    }

    /** Number of the row that {@link #next} gave last. */
    long row() {
        return row;
    }

    /** The next row that is not blank and has as many fields as the header; null at the end. Others are told as problems. */
    @Nullable
    CsvRecord next() {
        for (CsvRecord record = step(); record != null; record = step()) {
            row++;
            if (record.getFieldCount() == 1 && record.getField(0).isEmpty()) {
                continue; // a blank line
            }
            if (record.getFieldCount() == header.size()) {
                return record;
            }
            problems.add(
                    name,
                    row,
                    null,
                    null,
                    "has " + record.getFieldCount() + " fields where the header has " + header.size(),
                    "Put fields that hold a comma, a quote or a line break in quotes.");
        }
        return null;
    }

    /** The next record; null at the end, or where the file cannot be read on. */
    private @Nullable CsvRecord step() {
        try {
            return records.hasNext() ? records.next() : null;
        } catch (CsvParseException e) {
            broken = true;
            problems.add(
                    name,
                    row + 1,
                    null,
                    null,
                    "is not CSV from here on: a quote is wrong",
                    "Double each quote inside a quoted field, and close it.");
            return null;
        } catch (UncheckedIOException e) {
            if (!(e.getCause() instanceof CharacterCodingException)) {
                throw e;
            }
            broken = true;
            problems.add(
                    name,
                    row + 1,
                    null,
                    null,
                    "is not in UTF-8, in this row or soon after",
                    "Save the file as CSV in UTF-8.");
            return null;
        }
    }

    @Override
    public void close() {
        try {
            reader.close();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static final class Counted extends FilterInputStream {
        private final LongConsumer count;

        Counted(InputStream in, LongConsumer count) {
            super(in);
            this.count = count;
        }

        @Override
        public int read(byte[] b, int off, int len) throws IOException {
            int n = super.read(b, off, len);
            if (n > 0) {
                count.accept(n);
            }
            return n;
        }
    }
}
