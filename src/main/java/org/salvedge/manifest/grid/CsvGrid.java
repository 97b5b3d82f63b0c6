package org.salvedge.manifest.grid;

import java.io.IOException;
import java.io.StringReader;
import java.nio.ByteBuffer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.Charset;
import java.nio.charset.CodingErrorAction;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVParser;
import org.apache.commons.csv.CSVRecord;

/** Text tables: comma, semicolon, tab or bar between fields; UTF-8, UTF-16 with its mark, else windows-1252. */
final class CsvGrid {
    private static final char[] DELIMITERS = {',', ';', '\t', '|'};
    private static final int LOOKED_AT = 40;

    private CsvGrid() {}

    static List<Sheet> read(Path file, Budget budget) throws IOException {
        byte[] bytes = Files.readAllBytes(file);
        String text = decode(bytes);
        if (text.isBlank()) {
            throw new BadFile("is empty", "Ask the seller to send it again");
        }
        SheetBuilder sheet = new SheetBuilder(null, true, false, List.of(NumberFormat.GENERAL), budget);
        char delimiter;
        int skip = 0;
        if (text.regionMatches(true, 0, "sep=", 0, 4) && text.length() > 5) {
            delimiter = text.charAt(4);
            int end = text.indexOf('\n');
            text = end < 0 ? "" : text.substring(end + 1);
            skip = 1;
        } else {
            delimiter = delimiter(text);
        }
        List<Line> records = records(text, delimiter);
        int usual = usualSize(records);
        int row = skip;
        for (Line record : records) {
            row++;
            budget.row();
            sheet.startRow(row);
            for (int c = 0; c < record.fields.length; c++) {
                String cell = record.fields[c];
                if (cell.indexOf('\0') >= 0) {
                    sheet.damaged(c, cell.replace('\0', ' '), "holds NUL bytes");
                } else {
                    sheet.text(c, cell);
                }
            }
            if (record.open) {
                sheet.damaged(record.fields.length, "", "has a quote that is never closed");
            } else if (isShifted(record.fields, usual)) {
                sheet.damaged(
                        Math.max(usual, record.fields.length),
                        String.join(String.valueOf(delimiter), record.fields),
                        "has " + record.fields.length + " fields where the others have " + usual
                                + ", so that values stand under the wrong heading");
            }
        }
        return List.of(sheet.build());
    }

    /** @param open a quote that was opened in it is never closed; it then holds its first line only */
    private record Line(String[] fields, boolean open) {}

    private static List<Line> records(String text, char delimiter) throws IOException {
        CSVFormat format = CSVFormat.DEFAULT
                .builder()
                .setDelimiter(delimiter)
                .setIgnoreEmptyLines(false)
                .setLenientEof(true)
                .setTrailingData(true)
                .get();
        List<Line> records = new java.util.ArrayList<>();
        int from = 0;
        while (from < text.length()) {
            int start = from;
            from = text.length();
            try (CSVParser parser =
                    CSVParser.parse(new StringReader(start == 0 ? text : text.substring(start)), format)) {
                for (CSVRecord record : parser) {
                    String[] fields = record.values();
                    if (swallowsRecords(fields, delimiter)) {
                        int at = start + (int) record.getCharacterPosition();
                        int end = text.indexOf('\n', at);
                        end = end < 0 ? text.length() : end + 1;
                        records.add(new Line(
                                text.substring(at, end)
                                        .replace("\"", "")
                                        .strip()
                                        .split(java.util.regex.Pattern.quote(String.valueOf(delimiter)), -1),
                                true));
                        from = end;
                        break;
                    }
                    records.add(new Line(fields, false));
                }
            }
        }
        return records;
    }

    /** A field of several lines that each hold delimiters: a quote stands open, and what follows was taken for text. */
    private static boolean swallowsRecords(String[] fields, char delimiter) {
        for (String f : fields) {
            if (f.indexOf('\n') >= 0) {
                long lines = f.lines()
                        .filter(l -> l.chars().filter(c -> c == delimiter).count() >= 2)
                        .count();
                if (lines >= 2) {
                    return true;
                }
            }
        }
        return false;
    }

    private static int usualSize(List<Line> records) {
        java.util.Map<Integer, Integer> counts = new java.util.TreeMap<>();
        for (Line r : records) {
            if (r.fields.length > 1) {
                counts.merge(r.fields.length, 1, Integer::sum);
            }
        }
        return counts.entrySet().stream()
                .max(java.util.Map.Entry.comparingByValue())
                .map(java.util.Map.Entry::getKey)
                .orElse(1);
    }

    /** More fields than usual with something in them, or fewer where enough are filled to be a set. */
    private static boolean isShifted(String[] fields, int usual) {
        int filled = 0;
        boolean beyond = false;
        for (int c = 0; c < fields.length; c++) {
            boolean blank = fields[c].isBlank();
            filled += blank ? 0 : 1;
            beyond |= c >= usual && !blank;
        }
        return filled >= 3 && (beyond || fields.length < usual);
    }

    private static String decode(byte[] b) {
        if (b.length >= 3 && (b[0] & 0xff) == 0xEF && (b[1] & 0xff) == 0xBB && (b[2] & 0xff) == 0xBF) {
            return new String(b, 3, b.length - 3, StandardCharsets.UTF_8);
        }
        if (b.length >= 2 && (b[0] & 0xff) == 0xFF && (b[1] & 0xff) == 0xFE) {
            return new String(b, 2, b.length - 2, StandardCharsets.UTF_16LE);
        }
        if (b.length >= 2 && (b[0] & 0xff) == 0xFE && (b[1] & 0xff) == 0xFF) {
            return new String(b, 2, b.length - 2, StandardCharsets.UTF_16BE);
        }
        try {
            return StandardCharsets.UTF_8
                    .newDecoder()
                    .onMalformedInput(CodingErrorAction.REPORT)
                    .decode(ByteBuffer.wrap(b))
                    .toString();
        } catch (CharacterCodingException e) {
            return new String(b, Charset.forName("windows-1252"));
        }
    }

    /** The delimiter that cuts most lines into the same number of fields, more than one. */
    private static char delimiter(String text) {
        String[] lines = text.lines().filter(l -> !l.isBlank()).limit(LOOKED_AT).toArray(String[]::new);
        char best = ',';
        double most = 0;
        for (char d : DELIMITERS) {
            java.util.Map<Integer, Integer> counts = new java.util.HashMap<>();
            for (String line : lines) {
                counts.merge(fields(line, d), 1, Integer::sum);
            }
            double score = 0;
            for (var e : counts.entrySet()) {
                if (e.getKey() > 1) {
                    score = Math.max(score, e.getValue() * (1 + e.getKey() / 100.0));
                }
            }
            if (score > most) {
                most = score;
                best = d;
            }
        }
        return best;
    }

    private static int fields(String line, char d) {
        int n = 1;
        boolean quoted = false;
        for (int i = 0; i < line.length(); i++) {
            char c = line.charAt(i);
            quoted ^= c == '"';
            n += c == d && !quoted ? 1 : 0;
        }
        return n;
    }
}
