package org.salvedge.manifest;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.io.InputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SortedMap;
import java.util.TreeMap;
import java.util.stream.Stream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.MethodSource;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.grid.Grid;
import org.salvedge.manifest.grid.GridReader;
import org.salvedge.manifest.grid.Sheet;

/** Our cells are those that readers by other hands find, in every workbook and text of the corpus, and those that published cases ask for. */
class GridAgreementTest {
    private static final Path RESOURCES = Path.of("src/test/resources");

    /**
     * What only a lenient reader opens (a shared string or a sheet that is not there, a document type declaration, a torn zip, no workbook at all), or what we refuse (a sheet that
     * swells a thousandfold).
     */
    private static final Set<String> NOT_COMPARED = Set.of(
            "t70-missing-string.xlsx",
            "t75-swelling.xlsx",
            "t74-entity.xlsx",
            "h26-torn.xlsx",
            "t71-missing-sheet.xlsx",
            "t78-letter.xlsx",
            "t76-binary-workbook.xlsb",
            "t85-empty.xlsx");

    @ParameterizedTest
    @MethodSource("workbooks")
    void everyCellOfAWorkbookIsTheReferenceReadersCell(Path file) {
        Map<String, String> theirs = flat(ReferenceGrid.xlsx(file));
        Map<String, Cell> ours = flat(ours(file));
        // A formula without a stored value: a damaged cell to us, none to them.
        ours.values().removeIf(c -> c.kind() == Cell.Kind.DAMAGED && c.shown().isEmpty());

        assertThat(ours.keySet()).isEqualTo(theirs.keySet());
        theirs.forEach((place, value) -> {
            Cell own = ours.getOrDefault(place, Cell.BLANK);
            assertThat(same(own, value))
                    .as("%s: %s against %s", place, own, value)
                    .isTrue();
        });
    }

    private static <T> Map<String, T> flat(Map<String, SortedMap<Integer, SortedMap<Integer, T>>> sheets) {
        Map<String, T> flat = new TreeMap<>();
        sheets.forEach((sheet, rows) -> rows.forEach((row, cells) -> cells.forEach(
                (column, value) -> flat.put("sheet %s, row %d, column %d".formatted(sheet, row, column), value))));
        return flat;
    }

    @ParameterizedTest
    @MethodSource("texts")
    void everyFieldOfATextIsTheReferenceReadersField(Path file) {
        String text = ReferenceGrid.decode(file);
        char separator = file.getFileName().toString().contains("pipes") ? '|' : mostOf(text);
        if (text.startsWith("sep=")) {
            separator = text.charAt(4);
            text = text.substring(text.indexOf('\n') + 1); // no row of the table
        }

        assertRecords(ours(file).values().iterator().next(), ReferenceGrid.csv(text, separator), openQuote(file));
    }

    @ParameterizedTest
    @MethodSource("org.salvedge.manifest.CsvCases#all")
    void publishedCasesReadAsTheyAreMeant(CsvCases.Case c, @TempDir Path folder) throws IOException {
        Path file = Files.writeString(folder.resolve("case.csv"), c.text());

        assertRecords(ours(file).values().iterator().next(), c.records(), openQuote(file));
    }

    @Test
    void theComparisonIsOfThousandsOfCells() {
        long cells = Stream.concat(workbooks(), texts())
                .flatMap(f -> ours(f).values().stream())
                .flatMap(g -> g.values().stream())
                .mapToLong(Map::size)
                .sum();

        assertThat(workbooks()).hasSizeGreaterThan(40);
        assertThat(texts()).hasSizeGreaterThan(35);
        assertThat(cells).isGreaterThan(10_000);
    }

    /** The first row in which we found a quote that is never closed, or a number beyond all rows. */
    private static int openQuote(Path file) {
        return new GridReader()
                .read(file, () -> null).grid().notes().stream()
                        .filter(note -> note.problem().contains("not closed"))
                        .mapToInt(Grid.Note::row)
                        .min()
                        .orElse(Integer.MAX_VALUE);
    }

    /** Fields one by one; the rest of a text after a quote that is never closed is anybody's guess and not compared. */
    private static void assertRecords(
            SortedMap<Integer, SortedMap<Integer, Cell>> ours, List<List<String>> theirs, int openQuote) {
        int row = 0;
        for (List<String> record : theirs) {
            row++;
            if (row >= openQuote) {
                return;
            }
            SortedMap<Integer, Cell> own = ours.getOrDefault(row, new TreeMap<>());
            for (int c = 0; c < record.size(); c++) {
                Cell cell = own.getOrDefault(c, Cell.BLANK);
                assertThat(plain(cell.shown())).as("row %d, field %d", row, c).isEqualTo(plain(record.get(c)));
            }
            assertThat(own.tailMap(record.size()))
                    .as("fields of row %d beyond the last", row)
                    .isEmpty();
        }
        assertThat(ours.tailMap(row + 1)).as("rows beyond the last").isEmpty();
    }

    /** @param theirs as stored: a truth value is 0 or 1 */
    private static boolean same(Cell ours, String theirs) {
        return switch (ours.kind()) {
            case NUMBER, DATE -> ours.number() == Double.parseDouble(theirs);
            case DAMAGED -> Double.isInfinite(Double.parseDouble(theirs));
            default ->
                plain(ours.shown()).equals(plain(theirs))
                        || ours.shown().equals("TRUE") && theirs.equals("1")
                        || ours.shown().equals("FALSE") && theirs.equals("0");
        };
    }

    /** Our grid shows no control sequences, control characters, marks without width or outer spaces: what is left when they go. */
    private static String plain(String text) {
        return text.replaceAll("\\x1B\\[[ -?]*[@-~]|\\x1B|\\x00", "")
                .replace("\r\n", "\n")
                .replace('\r', '\n')
                .replaceAll("[\\u00AD\\u200B-\\u200F\\u202A-\\u202E\\u2060-\\u206F\\uFEFF]", "")
                .replaceAll("[\\p{Cc}&&[^\\n]]|\\p{Z}", " ")
                .strip();
    }

    /** Cells that stand in the file themselves, not those that a merged cell covers. */
    private static Map<String, SortedMap<Integer, SortedMap<Integer, Cell>>> ours(Path file) {
        Map<String, SortedMap<Integer, SortedMap<Integer, Cell>>> sheets = new LinkedHashMap<>();
        for (Sheet sheet : new GridReader().read(file, () -> null).grid().sheets()) {
            if (!sheet.isVisible()) {
                continue;
            }
            SortedMap<Integer, SortedMap<Integer, Cell>> grid = new TreeMap<>();
            for (int i = 0; i < sheet.size(); i++) {
                Cell[] row = sheet.row(i);
                SortedMap<Integer, Cell> cells = new TreeMap<>();
                for (int c = 0; c < row.length; c++) {
                    if (!row[c].isBlank() && row[c].origin() == Cell.Origin.OWN) {
                        cells.put(c, row[c]);
                    }
                }
                grid.put(sheet.number(i), cells);
            }
            sheets.put(String.valueOf(sheet.name()), grid);
        }
        return sheets;
    }

    private static char mostOf(String text) {
        String head = text.lines().limit(3).reduce("", String::concat);
        char best = ',';
        for (char c : new char[] {';', '\t', '|'}) {
            if (count(head, c) > count(head, best)) {
                best = c;
            }
        }
        return best;
    }

    private static long count(String text, char c) {
        return text.chars().filter(x -> x == c).count();
    }

    static Stream<Path> workbooks() {
        return files().filter(f -> startsWith(f, "PK"));
    }

    static Stream<Path> texts() {
        return files().filter(
                        f -> f.toString().matches(".*(csv|tsv|txt|h10-tabs.xls|t59-tabs-french.xls|t81-text.xlsx)"))
                .filter(f -> !startsWith(f, "PK") && !f.toString().contains("chance") && size(f) > 3);
    }

    private static Stream<Path> files() {
        List<Path> all = new ArrayList<>();
        for (String folder : List.of("manifests", "corpus/heldout", "corpus/tuning")) {
            try (Stream<Path> files = Files.list(RESOURCES.resolve(folder))) {
                files.filter(f ->
                                !f.toString().endsWith(".json") && !f.toString().endsWith(".ods"))
                        .filter(f -> !NOT_COMPARED.contains(f.getFileName().toString()))
                        .sorted()
                        .forEach(all::add);
            } catch (IOException e) {
                throw new java.io.UncheckedIOException(e);
            }
        }
        return all.stream();
    }

    private static boolean startsWith(Path file, String head) {
        try (InputStream in = Files.newInputStream(file)) {
            return new String(in.readNBytes(head.length()), java.nio.charset.StandardCharsets.ISO_8859_1).equals(head);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static long size(Path file) {
        try {
            return Files.size(file);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
