package org.salvedge.manifest;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.grid.Sheet;
import org.salvedge.manifest.words.Field;

/** Reads the tables of one sheet, each under its own header. */
final class SheetReader {
    private static final int FEWEST_ROWS = 2;

    private final Sheet sheet;
    private final Readers readers;
    private final Findings findings;
    private final TablePlanner planner;
    private final List<Table> tables = new ArrayList<>();
    private final List<Integer> setsOf = new ArrayList<>();
    private List<Part> parts = List.of();
    private List<Header> headers = List.of();

    SheetReader(Sheet sheet, Readers readers, Findings findings) {
        this.sheet = sheet;
        this.readers = readers;
        this.findings = findings;
        this.planner = new TablePlanner(readers);
    }

    /** A table being read; several where tables stand side by side. */
    private record Part(Table table, RowReader rows, int number) {}

    /** Reads the sheet from top to bottom. */
    void read() {
        findings.startSheet(sheet.name());
        for (int i = 0; i < sheet.size(); i++) {
            Cell[] row = sheet.row(i);
            Header header = holdsCode(row) ? null : readers.headers().at(sheet, i);
            if (header != null && begins(header, i)) {
                i = header.lastIndex();
            } else {
                readRow(row, i);
            }
        }
    }

    /** Takes up a new header; false where it is none after all. */
    private boolean begins(Header header, int i) {
        List<Header> found = header.sideBySide();
        if (!headers.isEmpty()
                && headers.size() == found.size()
                && headers.get(0).repeats(found.get(0))) {
            return true;
        }
        List<Table> planned =
                found.stream().map(part -> planner.plan(sheet, part)).toList();
        boolean manifest = planned.stream().anyMatch(this::isManifest);
        if (!manifest && !parts.isEmpty() && sheet.number(i) == sheet.number(i - 1) + 1 && !header.isSure()) {
            return false;
        }
        headers = found;
        parts = new ArrayList<>();
        for (Table table : planned) {
            if (isManifest(table)) {
                parts.add(new Part(table, new RowReader(table, readers, findings), tables.size()));
                tables.add(table);
                setsOf.add(0);
            }
        }
        return true;
    }

    private void readRow(Cell[] row, int i) {
        for (Part part : parts) {
            int before = findings.setCount();
            Cell[] own = parts.size() == 1 ? row : within(row, part.table.header());
            part.rows.read(own, sheet.number(i), sheet.fields(i));
            setsOf.set(part.number, setsOf.get(part.number) + findings.setCount() - before);
        }
    }

    private static Cell[] within(Cell[] row, Header header) {
        Cell[] own = row.clone();
        Arrays.fill(own, 0, Math.min(header.firstColumn(), own.length), Cell.BLANK);
        if (header.endColumn() < own.length) {
            Arrays.fill(own, header.endColumn(), own.length, Cell.BLANK);
        }
        return own;
    }

    /** A later table that says of each set no more than its model is a summary of the first. */
    private boolean isManifest(Table table) {
        return table.isManifest() && (tables.isEmpty() || !table.saysLittle());
    }

    /** Model numbers hold digits, headings do not. */
    private boolean holdsCode(Cell[] row) {
        for (Part part : parts) {
            Table table = part.table;
            int column = table.has(Field.MODEL) ? table.column(Field.MODEL) : table.column(Field.DESCRIPTION);
            if (column != Table.ABSENT
                    && row[column].origin() == Cell.Origin.OWN
                    && row[column].shown().chars().anyMatch(c -> c >= '0' && c <= '9')) {
                return true;
            }
        }
        return false;
    }

    /** Reads a sheet without a header as the continuation of a table on the sheet before; false where it is none. */
    boolean readAsContinuation(Table before) {
        RowSorter sorter = new RowSorter(before, readers);
        int sets = 0;
        for (int i = 0; i < sheet.size(); i++) {
            Cell[] row = Arrays.copyOf(sheet.row(i), Math.max(sheet.width(), before.width()));
            Arrays.fill(row, sheet.width(), row.length, Cell.BLANK);
            sets += sorter.sort(row) == RowSorter.Kind.SET && sorter.misfits(row) == 0 ? 1 : 0;
        }
        if (sets < FEWEST_ROWS || sets * 5 < sheet.size() * 4) {
            return false;
        }
        findings.startSheet(sheet.name());
        findings.problem(
                sheet.number(0),
                null,
                null,
                "begins a sheet without a header",
                "It is read with the columns of the sheet before");
        RowReader rows = new RowReader(before, readers, findings);
        for (int i = 0; i < sheet.size(); i++) {
            Cell[] row = Arrays.copyOf(sheet.row(i), Math.max(sheet.width(), before.width()));
            Arrays.fill(row, sheet.width(), row.length, Cell.BLANK);
            rows.read(row, sheet.number(i), -1);
        }
        return true;
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
            List<ColumnReading> columns = new ArrayList<>();
            for (Table.Column column : table.columns()) {
                String field =
                        column.field() == Field.NONE ? null : column.field().key();
                columns.add(new ColumnReading(
                        letters(column.index()), column.heading(), field, column.score(), column.words()));
            }
            readings.add(new TableReading(findings.sheetName(), table.header().row(), columns, setsOf.get(i)));
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
