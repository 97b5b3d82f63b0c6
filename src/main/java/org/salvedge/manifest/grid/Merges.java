package org.salvedge.manifest.grid;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/** The merged ranges of a sheet. A range may claim a million rows: it costs nothing where no row holds anything. */
final class Merges {
    /** More than any sheet made by a person has; the rest is not looked at. */
    private static final int MOST = 200_000;

    private static final int MOST_AT_ONCE = 2_000;

    record Range(int firstRow, int firstColumn, int lastRow, int lastColumn) {}

    private final List<Range> ranges = new ArrayList<>();
    private final List<Range> open = new ArrayList<>();
    private int next;
    private int lastAsked;

    void add(int firstRow, int firstColumn, int lastRow, int lastColumn) {
        if (ranges.size() < MOST
                && firstRow >= 1
                && firstColumn >= 0
                && lastRow >= firstRow
                && lastColumn >= firstColumn
                && (lastRow > firstRow || lastColumn > firstColumn)) {
            ranges.add(new Range(firstRow, firstColumn, lastRow, lastColumn));
        }
    }

    void sort() {
        ranges.sort(Comparator.comparingInt(Range::firstRow).thenComparingInt(Range::firstColumn));
    }

    /** Fills the blank cells of a row that a merge covers. Rows are best asked for in order. */
    void fill(Sheet sheet, int row, Cell[] cells) {
        if (ranges.isEmpty()) {
            return;
        }
        moveTo(row);
        for (Range range : open) {
            if (range.lastRow < row || range.firstColumn >= cells.length) {
                continue;
            }
            Cell corner =
                    range.firstRow == row ? cells[range.firstColumn] : sheet.at(range.firstRow, range.firstColumn);
            if (corner.isBlank()) {
                continue;
            }
            Cell.Origin way = range.firstRow == row ? Cell.Origin.LEFT : Cell.Origin.ABOVE;
            Cell copy = corner.by(way);
            int last = Math.min(range.lastColumn, cells.length - 1);
            for (int c = range.firstColumn; c <= last; c++) {
                if (cells[c].isBlank()) {
                    cells[c] = copy;
                }
            }
        }
    }

    private void moveTo(int row) {
        if (row < lastAsked) {
            next = 0;
            open.clear();
        }
        lastAsked = row;
        open.removeIf(range -> range.lastRow < row);
        while (next < ranges.size() && ranges.get(next).firstRow <= row) {
            Range range = ranges.get(next++);
            if (range.lastRow >= row && open.size() < MOST_AT_ONCE) {
                open.add(range);
            }
        }
    }
}
