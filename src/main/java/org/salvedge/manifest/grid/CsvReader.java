package org.salvedge.manifest.grid;

import java.io.IOException;
import java.io.Reader;
import java.util.ArrayList;
import java.util.List;

/** Delimited text: finds the delimiter, reads the records, marks those that are damaged. */
final class CsvReader {
    private static final int SAMPLE = 1 << 16;
    private static final int MOST_NOTES = 1_000;

    private CsvReader() {}

    static Grid read(TextFile file, Budget budget) throws IOException {
        String sample = file.head(SAMPLE);
        boolean declared = sample.length() > 4
                && sample.regionMatches(true, 0, "sep=", 0, 4)
                && (sample.length() == 5 || sample.charAt(5) == '\n' || sample.charAt(5) == '\r');
        Delimiter delimiter = declared ? Delimiter.given(sample.charAt(4), sample) : Delimiter.guess(sample);
        SheetBuilder sheet = new SheetBuilder(null, true, false, List.of(NumberFormat.GENERAL), budget);
        List<Grid.Note> notes = new ArrayList<>();
        try (Reader reader = file.open()) {
            Records records = new Records(new TextWindow(reader), delimiter.character(), delimiter.usualFields());
            if (declared) {
                records.next(); // a word to the spreadsheet program, which does not show it
            }
            for (int row = 1; records.next(); row++) {
                sheet.startRow(row);
                addFields(records, row, sheet, notes);
                budget.row();
            }
        }
        return new Grid("delimited text", List.of(sheet.build()), notes);
    }

    private static void addFields(Records records, int row, SheetBuilder sheet, List<Grid.Note> notes) {
        List<String> fields = records.fields();
        sheet.fields(fields.size());
        for (int column = 0; column < fields.size(); column++) {
            String text = fields.get(column);
            if (text.indexOf('\0') >= 0) {
                note(notes, row, text, "holds NUL bytes", "Compare the row with the seller's file");
                text = text.replace("\0", "");
            }
            if (records.isDamaged() && text.startsWith("\"")) {
                note(
                        notes,
                        row,
                        text,
                        "begins with a quote that is not closed",
                        "Compare the row with the seller's file");
                text = text.substring(1);
            }
            sheet.text(column, text);
        }
    }

    private static void note(List<Grid.Note> notes, int row, String found, String problem, String advice) {
        if (notes.size() < MOST_NOTES) {
            notes.add(new Grid.Note(row, CellText.clean(found, 60), problem, advice));
        }
    }
}
