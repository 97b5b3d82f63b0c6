package org.salvedge.manifest.grid;

import java.util.List;

/**
 * A file as sheets of cells.
 *
 * @param format in words: "an XLSX workbook"
 * @param notes damage that belongs to no cell of its own
 */
public record Grid(String format, List<Sheet> sheets, List<Note> notes) {

    /** @param row from 1; 0 = the whole file */
    public record Note(int row, String found, String problem, String advice) {}

    public Grid {
        sheets = List.copyOf(sheets);
        notes = List.copyOf(notes);
    }

    static Grid of(String format, List<Sheet> sheets) {
        return new Grid(format, sheets, List.of());
    }
}
