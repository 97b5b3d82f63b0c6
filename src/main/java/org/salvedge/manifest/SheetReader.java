package org.salvedge.manifest;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.grid.Sheet;
import org.salvedge.manifest.words.Field;

/** Reads the tables of one sheet, each under its own header. */
final class SheetReader {
    private final Sheet sheet;
    private final Readers readers;
    private final Findings findings;
    private final TablePlanner planner;
    private final List<Table> tables = new ArrayList<>();
    private final List<Integer> setsBefore = new ArrayList<>();

    SheetReader(Sheet sheet, Readers readers, Findings findings) {
        this.sheet = sheet;
        this.readers = readers;
        this.findings = findings;
        this.planner = new TablePlanner(readers);
    }

    /** Reads the sheet from top to bottom. */
    void read() {
        findings.startSheet(sheet.name());
        @Nullable Table table = null;
        @Nullable RowReader rows = null;
        for (int i = 0; i < sheet.size(); i++) {
            Cell[] row = sheet.row(i);
            Header header = table != null && holdsCode(table, row)
                    ? null
                    : readers.headers().at(sheet, i);
            if (header != null) {
                i = header.lastIndex();
                if (table == null || !table.header().repeats(header)) {
                    table = planner.plan(sheet, header);
                    rows = isManifest(table) ? new RowReader(table, readers, findings) : null;
                    if (rows != null) {
                        tables.add(table);
                        setsBefore.add(findings.setCount());
                    }
                }
            } else if (rows != null) {
                rows.read(row, sheet.number(i), sheet.fields(i));
            }
        }
    }

    /** A later table that says of each set no more than its model is a summary of the first. */
    private boolean isManifest(Table table) {
        return table.isManifest() && (tables.isEmpty() || !table.saysLittle());
    }

    /** Model numbers hold digits, headings do not. */
    private static boolean holdsCode(Table table, Cell[] row) {
        int column = table.has(Field.MODEL) ? table.column(Field.MODEL) : table.column(Field.DESCRIPTION);
        return column != Table.ABSENT
                && row[column].origin() == Cell.Origin.OWN
                && row[column].shown().chars().anyMatch(c -> c >= '0' && c <= '9');
    }

    /** The tables that are lists of sets, in order. */
    List<Table> tables() {
        return tables;
    }

    /** How the tables were understood. */
    List<TableReading> readings() {
        List<TableReading> readings = new ArrayList<>();
        for (int i = 0; i < tables.size(); i++) {
            Table table = tables.get(i);
            int end = i + 1 < tables.size() ? setsBefore.get(i + 1) : findings.setCount();
            List<ColumnReading> columns = new ArrayList<>();
            for (Table.Column column : table.columns()) {
                String field =
                        column.field() == Field.NONE ? null : column.field().key();
                columns.add(new ColumnReading(
                        letters(column.index()), column.heading(), field, column.score(), column.words()));
            }
            readings.add(
                    new TableReading(findings.sheetName(), table.header().row(), columns, end - setsBefore.get(i)));
        }
        return readings;
    }

    private static String letters(int column) {
        StringBuilder letters = new StringBuilder();
        for (int c = column + 1; c > 0; c = (c - 1) / 26) {
            letters.insert(0, (char) ('A' + (c - 1) % 26));
        }
        return letters.toString();
    }
}
