package org.salvedge.manifest;

import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.reader.FieldMismatchStrategy;
import java.io.File;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.regex.Pattern;
import java.util.stream.Stream;
import org.dhatim.fastexcel.reader.Cell;
import org.dhatim.fastexcel.reader.CellType;
import org.dhatim.fastexcel.reader.ReadableWorkbook;
import org.dhatim.fastexcel.reader.Row;
import org.dhatim.fastexcel.reader.Sheet;
import org.dhatim.fastexcel.reader.SheetVisibility;

/** What readers by other hands find in a file: sheet, then row from 1, then column from 0, then the raw value. Blank cells are left out. */
final class ReferenceGrid {
    private static final Pattern ESCAPE = Pattern.compile("_x([0-9A-Fa-f]{4})_");

    private ReferenceGrid() {}

    /** Visible sheets of an XLSX by fastexcel-reader: numbers as stored, texts with the format's own escapes (_x001B_) undone, formulas by their stored value. */
    static Map<String, SortedMap<Integer, SortedMap<Integer, String>>> xlsx(Path file) {
        Map<String, SortedMap<Integer, SortedMap<Integer, String>>> sheets = new LinkedHashMap<>();
        try (ReadableWorkbook book = new ReadableWorkbook(new File(file.toString()))) {
            for (Sheet sheet : book.getSheets()
                    .filter(s -> s.getVisibility() == SheetVisibility.VISIBLE)
                    .toList()) {
                try (Stream<Row> rows = sheet.openStream()) {
                    SortedMap<Integer, SortedMap<Integer, String>> grid = new TreeMap<>();
                    rows.forEach(row -> {
                        SortedMap<Integer, String> cells = new TreeMap<>();
                        for (Cell cell : row) {
                            String value = cell == null ? "" : raw(cell);
                            if (!value.isBlank()) {
                                cells.put(cell.getColumnIndex(), value);
                            }
                        }
                        if (!cells.isEmpty()) {
                            grid.put(row.getRowNum(), cells);
                        }
                    });
                    sheets.put(sheet.getName(), grid);
                }
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return sheets;
    }

    private static String raw(Cell cell) {
        String raw = cell.getType() == CellType.STRING ? cell.asString() : cell.getRawValue();
        return raw == null
                ? ""
                : ESCAPE.matcher(raw)
                        .replaceAll(m -> Character.toString(Integer.parseInt(m.group(1), 16))
                                .replace("\\", "\\\\")
                                .replace("$", "\\$"));
    }

    /** Delimited text by FastCSV; every record counts, also a blank one. */
    static List<List<String>> csv(String text, char separator) {
        List<List<String>> records = new ArrayList<>();
        try (CsvReader<CsvRecord> reader = CsvReader.builder()
                .fieldSeparator(separator)
                .skipEmptyLines(false)
                .extraFieldStrategy(FieldMismatchStrategy.IGNORE)
                .missingFieldStrategy(FieldMismatchStrategy.IGNORE)
                .allowUnclosedQuote(true)
                .ofCsvRecord(text)) {
            reader.forEach(r -> records.add(List.copyOf(r.getFields())));
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        return records;
    }

    /** The text of a file by its byte order mark, else UTF-8, else windows-1252. */
    static String decode(Path file) {
        try {
            byte[] bytes = Files.readAllBytes(file);
            if (starts(bytes, 0xFF, 0xFE)) {
                return new String(bytes, 2, bytes.length - 2, StandardCharsets.UTF_16LE);
            }
            if (starts(bytes, 0xFE, 0xFF)) {
                return new String(bytes, 2, bytes.length - 2, StandardCharsets.UTF_16BE);
            }
            if (starts(bytes, 0xEF, 0xBB, 0xBF)) {
                return new String(bytes, 3, bytes.length - 3, StandardCharsets.UTF_8);
            }
            try {
                return StandardCharsets.UTF_8
                        .newDecoder()
                        .decode(ByteBuffer.wrap(bytes))
                        .toString();
            } catch (CharacterCodingException e) {
                return new String(bytes, Charset.forName("windows-1252"));
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static boolean starts(byte[] bytes, int... head) {
        if (bytes.length < head.length) {
            return false;
        }
        for (int i = 0; i < head.length; i++) {
            if ((bytes[i] & 0xFF) != head[i]) {
                return false;
            }
        }
        return true;
    }
}
