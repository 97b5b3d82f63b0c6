package org.salvedge.manifest.grid;

import it.unimi.dsi.fastutil.doubles.DoubleArrayList;
import it.unimi.dsi.fastutil.ints.IntArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** One sheet, kept compactly: only cells that hold something, eight bytes each beside their texts and numbers. */
public final class Sheet {
    static final int TEXT = 0;
    static final int NUMBER = 1;
    static final int ERROR = 2;
    static final int DAMAGED = 3;

    private final @Nullable String name;
    private final boolean visible;
    private final boolean from1904;
    private final List<NumberFormat> formats;
    private final IntArrayList numbers;
    private final IntArrayList fieldCounts;
    private final List<long[]> rows;
    private final List<String> texts;
    private final DoubleArrayList values;
    private final Merges merges;
    private final int width;

    Sheet(
            @Nullable String name,
            boolean visible,
            boolean from1904,
            List<NumberFormat> formats,
            IntArrayList numbers,
            IntArrayList fieldCounts,
            List<long[]> rows,
            List<String> texts,
            DoubleArrayList values,
            Merges merges,
            int width) {
        this.name = name;
        this.visible = visible;
        this.from1904 = from1904;
        this.formats = formats;
        this.numbers = numbers;
        this.fieldCounts = fieldCounts;
        this.rows = rows;
        this.texts = texts;
        this.values = values;
        this.merges = merges;
        this.width = width;
    }

    /** Null in formats that have no sheets. */
    public @Nullable String name() {
        return name;
    }

    public boolean isVisible() {
        return visible;
    }

    /** Rows that hold something. */
    public int size() {
        return rows.size();
    }

    /** Columns up to the last that holds something. */
    public int width() {
        return width;
    }

    /** Row number of the i-th row that holds something, from 1, as a spreadsheet program shows it. */
    public int number(int i) {
        return numbers.getInt(i);
    }

    /** How many fields the record of the i-th row has, blank ones too; -1 in formats that have no records. */
    public int fields(int i) {
        return fieldCounts.getInt(i);
    }

    /** Cells of the i-th row that holds something, as wide as the sheet; a merged cell fills all that it covers. */
    public Cell[] row(int i) {
        Cell[] cells = ownCells(i);
        merges.fill(this, numbers.getInt(i), cells);
        return cells;
    }

    Cell[] ownCells(int i) {
        Cell[] cells = new Cell[width];
        java.util.Arrays.fill(cells, Cell.BLANK);
        for (long packed : rows.get(i)) {
            cells[column(packed)] = cell(packed);
        }
        return cells;
    }

    /** The cell at a row number and column (from 0); blank where there is none. */
    Cell at(int rowNumber, int column) {
        int i = search(rowNumber);
        if (i >= 0) {
            for (long packed : rows.get(i)) {
                if (column(packed) == column) {
                    return cell(packed);
                }
            }
        }
        return Cell.BLANK;
    }

    private int search(int rowNumber) {
        int low = 0;
        int high = numbers.size() - 1;
        while (low <= high) {
            int mid = (low + high) >>> 1;
            int at = numbers.getInt(mid);
            if (at == rowNumber) {
                return mid;
            }
            if (at < rowNumber) {
                low = mid + 1;
            } else {
                high = mid - 1;
            }
        }
        return -1;
    }

    private Cell cell(long packed) {
        int index = (int) packed;
        return switch (kind(packed)) {
            case TEXT -> Cell.text(texts.get(index));
            case NUMBER -> Cell.number(values.getDouble(index), formats.get(style(packed)), from1904);
            case ERROR -> Cell.error(texts.get(index));
            default -> damaged(texts.get(index));
        };
    }

    private static Cell damaged(String foundAndWhy) {
        int cut = foundAndWhy.indexOf('\0');
        return Cell.damaged(foundAndWhy.substring(0, cut), foundAndWhy.substring(cut + 1));
    }

    static long pack(int column, int kind, int style, int index) {
        return (long) column << 50 | (long) kind << 46 | (long) style << 32 | index;
    }

    static int column(long packed) {
        return (int) (packed >>> 50);
    }

    private static int kind(long packed) {
        return (int) (packed >>> 46) & 0xf;
    }

    private static int style(long packed) {
        return (int) (packed >>> 32) & 0x3fff;
    }
}
