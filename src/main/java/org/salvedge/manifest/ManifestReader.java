package org.salvedge.manifest;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.Supplier;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.grid.Grid;
import org.salvedge.manifest.grid.GridReader;
import org.salvedge.manifest.grid.Sheet;
import org.salvedge.manifest.words.ClaimReader;
import org.salvedge.manifest.words.HeadingWords;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;

/** Reads a seller's spreadsheet: bytes, grid, header, fields, sets and problems. */
public final class ManifestReader {
    /** What {@code [columns]} in shop.toml may call a column. */
    public static final String FIELDS = HeadingWords.FIELDS;

    private final Settings settings;

    /** @param settings the shop's own header words ([columns]) and symptom words ([symptoms]) */
    public ManifestReader(Settings settings) {
        this.settings = settings;
    }

    /**
     * @param password for a protected workbook, or null
     * @throws Refused if the file is no table that can be read, naming the file and the reason
     */
    public Manifest read(Path file, @Nullable String password) {
        return readWithSheets(file, () -> password).manifest();
    }

    /**
     * A list and the sheets that it was read from.
     *
     * @param sheets all of the file, hidden ones too
     */
    public record WithSheets(Manifest manifest, List<Sheet> sheets) {}

    /**
     * @param password asked for a protected workbook only; null = none is known
     * @throws Refused if the file is no table that can be read, naming the file and the reason
     */
    public WithSheets readWithSheets(Path file, Supplier<@Nullable String> password) {
        GridReader.Result result = new GridReader().read(file, password);
        try {
            return new WithSheets(understand(file, result), result.grid().sheets());
        } catch (OutOfMemoryError e) {
            throw new Refused(GridReader.shownName(file)
                    + " holds more sets than can be read with the memory at hand. Split the list into smaller files.");
        }
    }

    private Manifest understand(Path file, GridReader.Result result) {
        String name = GridReader.shownName(file);
        Findings findings = new Findings(name);
        Readers readers = Readers.of(settings);
        List<Table> tables = new ArrayList<>();
        List<String> sheetOfTable = new ArrayList<>();
        List<TableReading> readings = new ArrayList<>();
        Grid grid = result.grid();
        for (Sheet sheet : grid.sheets()) {
            if (sheet.isVisible()) {
                SheetReader reader = new SheetReader(sheet, readers, findings);
                reader.read();
                Table before = tables.isEmpty() ? null : tables.get(tables.size() - 1);
                if (reader.tables().isEmpty() && before != null) {
                    reader.readAsContinuation(before);
                }
                for (Table table : reader.tables()) {
                    tables.add(table);
                    sheetOfTable.add(findings.sheetName());
                }
                readings.addAll(reader.readings());
            }
        }
        findings.startSheet(grid.sheets().size() == 1 ? grid.sheets().get(0).name() : null);
        for (Grid.Note note : grid.notes()) {
            findings.problem(note.row(), null, note.found(), note.problem(), note.advice());
        }
        if (tables.isEmpty()) {
            throw new Refused(name + " holds no header of a list of sets. "
                    + "Look for a row that names model, size and fault; add its words to [columns] in shop.toml.");
        }
        int main = mainTable(readings);
        if (findings.isEmpty()) {
            findings.startSheet(sheetOfTable.get(main).isEmpty() ? null : sheetOfTable.get(main));
            findings.problem(
                    tables.get(main).header().row(),
                    null,
                    null,
                    "is a header with no set under it",
                    "Ask the seller for the list");
        }
        return new Manifest(
                name,
                result.sha256(),
                sheetOfTable.get(main),
                tables.get(main).header().row(),
                tables.get(main).headings(),
                findings.sets(),
                findings.problems(),
                readings);
    }

    /** How the sellers' words in a list were understood, the least sure first. */
    public List<ClaimWords> words(Manifest manifest) {
        ClaimReader claims = new ClaimReader(settings.symptoms());
        Map<String, Integer> sets = new TreeMap<>();
        for (ListedSet set : manifest.sets()) {
            if (set.claimedText() != null) {
                sets.merge(set.claimedText(), 1, Integer::sum);
            }
        }
        List<ClaimWords> words = new ArrayList<>();
        sets.forEach((text, count) -> {
            ClaimReader.Reading r = claims.read(text);
            words.add(new ClaimWords(text, r.claim(), r.sureness(), r.matched(), r.others(), count));
        });
        words.sort(Comparator.comparingDouble(ClaimWords::sureness));
        return words;
    }

    /** The first table that gave sets, or the first. */
    private static int mainTable(List<TableReading> readings) {
        for (int i = 0; i < readings.size(); i++) {
            if (readings.get(i).sets() > 0) {
                return i;
            }
        }
        return 0;
    }
}
