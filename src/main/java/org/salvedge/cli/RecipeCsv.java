package org.salvedge.cli;

import de.siegmar.fastcsv.reader.CsvParseException;
import de.siegmar.fastcsv.reader.CsvReader;
import de.siegmar.fastcsv.reader.CsvRecord;
import de.siegmar.fastcsv.writer.CsvWriter;
import de.siegmar.fastcsv.writer.LineDelimiter;
import java.io.IOException;
import java.io.UncheckedIOException;
import java.io.Writer;
import java.nio.charset.CharacterCodingException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.salvedge.ledger.FactColumns;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.Plural;
import org.salvedge.shop.Problem;
import org.salvedge.shop.Recipe;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Side;

/** Recipes as a CSV file by RFC 4180, in the columns of the history package. */
final class RecipeCsv {
    private static final Recipe BLANK = new Recipe("panel", Side.LEFT, "1", null, null, null, null, null, null);
    private static final List<String> COLUMNS =
            List.copyOf(FactColumns.of(BLANK).keySet());
    private static final long LARGEST = 20_000_000;

    private RecipeCsv() {}

    static void write(List<Recipe> recipes, Writer to) {
        CsvWriter csv = CsvWriter.builder().lineDelimiter(LineDelimiter.CRLF).build(to);
        csv.writeRecord(COLUMNS);
        for (Recipe r : recipes) {
            csv.writeRecord(FactColumns.inFile(r).values());
        }
        try {
            csv.flush();
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    /** @throws Refused listing every row that cannot be, with file, row and what to do */
    static List<Recipe> read(Path file, Ledger ledger) {
        String name = String.valueOf(file.getFileName());
        List<CsvRecord> rows = rows(file, name);
        if (rows.isEmpty()) {
            throw new Refused(name + " is empty; the first row names the columns: " + String.join(",", COLUMNS));
        }
        List<String> header = rows.get(0).getFields();
        List<Problem> problems = new ArrayList<>();
        for (String column : header) {
            if (!COLUMNS.contains(column)) {
                problems.add(new Problem(
                        name,
                        null,
                        1,
                        null,
                        column,
                        "is not a column of recipes",
                        "Take it out; columns: " + String.join(", ", COLUMNS)));
            }
        }
        List<Recipe> recipes = new ArrayList<>();
        for (CsvRecord row : problems.isEmpty() ? rows.subList(1, rows.size()) : List.<CsvRecord>of()) {
            try {
                recipes.add(recipe(header, row.getFields(), ledger));
            } catch (Refused e) {
                problems.add(new Problem(
                        name, null, (int) row.getStartingLineNumber(), null, null, String.valueOf(e.getMessage()), ""));
            }
        }
        if (!problems.isEmpty()) {
            throw new Refused(name + " was not taken: " + Plural.of(problems.size(), "row") + " to mend", problems);
        }
        return recipes;
    }

    private static List<CsvRecord> rows(Path file, String name) {
        try {
            if (Files.isRegularFile(file) && Files.size(file) > LARGEST) {
                throw new Refused(name + " is too large for a recipe book");
            }
            try (CsvReader<CsvRecord> csv = CsvReader.builder()
                    .detectBomHeader(true)
                    .ofCsvRecord(Files.newBufferedReader(file, StandardCharsets.UTF_8))) {
                return csv.stream().toList();
            }
        } catch (CsvParseException e) {
            throw new Refused(name + " cannot be read as CSV: " + e.getMessage());
        } catch (UncheckedIOException e) {
            throw failure(name, e.getCause() == null ? new IOException(e) : e.getCause());
        } catch (IOException e) {
            throw failure(name, e);
        }
    }

    /** The library's stream wraps what the disk or the letters did under a message of its own. */
    private static RuntimeException failure(String name, IOException e) {
        for (Throwable cause = e; cause != null; cause = cause.getCause()) {
            if (cause instanceof CharacterCodingException) {
                return new Refused(name + " is not UTF-8 text. Save it as CSV in UTF-8");
            }
        }
        return new UncheckedIOException(e);
    }

    private static Recipe recipe(List<String> header, List<String> fields, Ledger ledger) {
        if (fields.size() > header.size()) {
            throw new Refused("has " + fields.size() + " fields under " + header.size() + " columns");
        }
        Map<String, String> cells = new LinkedHashMap<>();
        COLUMNS.forEach(c -> cells.put(c, ""));
        for (int i = 0; i < fields.size(); i++) {
            cells.put(header.get(i), fields.get(i));
        }
        return (Recipe) ledger.changed(BLANK, FactColumns.fromFile(BLANK, cells));
    }
}
