package org.salvedge.manifest;

import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.grid.Grid;
import org.salvedge.manifest.grid.GridReader;
import org.salvedge.manifest.grid.Sheet;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;

/** Reads a seller's spreadsheet: bytes, grid, header, fields, sets and problems. */
public final class ManifestReader {
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
        GridReader.Result result = new GridReader().read(file, password);
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
