package org.salvedge.manifest.grid;

import it.unimi.dsi.fastutil.doubles.DoubleArrayList;
import it.unimi.dsi.fastutil.ints.IntArrayList;
import it.unimi.dsi.fastutil.longs.LongArrayList;
import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import org.jspecify.annotations.Nullable;

/** Takes the cells of a sheet as a reader meets them and makes a {@link Sheet}. */
final class SheetBuilder {
    private static final int MOST_FORMATS = 0x3fff;
    private static final int RECENT = 1 << 12;

    private final @Nullable String name;
    private boolean visible;
    private final boolean from1904;
    private final List<NumberFormat> formats;
    private final Budget budget;
    private final IntArrayList numbers = new IntArrayList();
    private final IntArrayList fieldCounts = new IntArrayList();
    private final List<long[]> rows = new ArrayList<>();
    private final List<String> texts = new ArrayList<>();
    private final DoubleArrayList values = new DoubleArrayList();
    private final LongArrayList row = new LongArrayList();
    private final Merges merges = new Merges();
    private final int[] recent = new int[RECENT];
    private int rowNumber;
    private int fields = -1;
    private int width;
    private boolean inOrder = true;

    SheetBuilder(@Nullable String name, boolean visible, boolean from1904, List<NumberFormat> formats, Budget budget) {
        this.name = name;
        this.visible = visible;
        this.from1904 = from1904;
        this.formats = formats.size() > MOST_FORMATS ? formats.subList(0, MOST_FORMATS) : formats;
        this.budget = budget;
        Arrays.fill(recent, -1);
    }

    /** @param number from 1 */
    void startRow(int number) {
        endRow();
        rowNumber = number;
        fields = -1;
    }

    /** How many fields the record of this row has, blank ones too. */
    void fields(int count) {
        fields = count;
    }

    void hide() {
        visible = false;
    }

    /** A text; control characters become spaces, outer spaces go, blank text is no cell. */
    void text(int column, String text) {
        String clean = CellText.clean(text, budget.limits().textLength());
        if (!clean.isEmpty()) {
            add(column, Sheet.TEXT, 0, intern(clean));
        }
    }

    /** A text that has been cleaned before, as shared strings are. */
    void cleanText(int column, String clean) {
        if (!clean.isEmpty()) {
            add(column, Sheet.TEXT, 0, texts.size());
            texts.add(clean);
            budget.cell();
        }
    }

    void number(int column, double value, int style) {
        if (Double.isFinite(value)) {
            add(column, Sheet.NUMBER, style >= 0 && style < formats.size() ? style : 0, values.size());
            values.add(value);
            budget.number();
        } else {
            damaged(column, Double.toString(value), "is not a finite number");
        }
    }

    void error(int column, String shown) {
        add(column, Sheet.ERROR, 0, intern(CellText.clean(shown, 40)));
    }

    void damaged(int column, String found, String why) {
        add(column, Sheet.DAMAGED, 0, intern(CellText.clean(found, 200) + '\0' + why));
    }

    void merge(int firstRow, int firstColumn, int lastRow, int lastColumn) {
        merges.add(firstRow, firstColumn, lastRow, lastColumn);
    }

    Sheet build() {
        endRow();
        if (!inOrder) {
            sortRows();
        }
        merges.sort();
        return new Sheet(name, visible, from1904, formats, numbers, fieldCounts, rows, texts, values, merges, width);
    }

    private void add(int column, int kind, int style, int index) {
        if (column >= 0 && column < budget.limits().columns()) {
            row.add(Sheet.pack(column, kind, style, index));
            width = Math.max(width, column + 1);
        }
    }

    private int intern(String text) {
        int slot = text.hashCode() & (RECENT - 1);
        int known = recent[slot];
        if (known >= 0 && texts.get(known).equals(text)) {
            budget.cell();
            return known;
        }
        recent[slot] = texts.size();
        texts.add(text);
        budget.text(text);
        return texts.size() - 1;
    }

    private void endRow() {
        if (!row.isEmpty()) {
            inOrder &= numbers.isEmpty() || rowNumber > numbers.getInt(numbers.size() - 1);
            numbers.add(rowNumber);
            fieldCounts.add(fields);
            rows.add(row.toLongArray());
            row.clear();
            budget.row();
        }
    }

    /** Brings rows into order; what a file spreads over several rows of one number becomes one row. */
    private void sortRows() {
        Integer[] order = new Integer[rows.size()];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, (a, b) -> Integer.compare(numbers.getInt(a), numbers.getInt(b)));
        IntArrayList sortedNumbers = new IntArrayList(order.length);
        IntArrayList sortedCounts = new IntArrayList(order.length);
        List<long[]> sortedRows = new ArrayList<>(order.length);
        for (int i : order) {
            int last = sortedNumbers.size() - 1;
            if (last >= 0 && sortedNumbers.getInt(last) == numbers.getInt(i)) {
                sortedRows.set(last, concat(sortedRows.get(last), rows.get(i)));
            } else {
                sortedNumbers.add(numbers.getInt(i));
                sortedCounts.add(fieldCounts.getInt(i));
                sortedRows.add(rows.get(i));
            }
        }
        numbers.clear();
        numbers.addAll(sortedNumbers);
        fieldCounts.clear();
        fieldCounts.addAll(sortedCounts);
        rows.clear();
        rows.addAll(sortedRows);
    }

    private static long[] concat(long[] first, long[] second) {
        long[] both = Arrays.copyOf(first, first.length + second.length);
        System.arraycopy(second, 0, both, first.length, second.length);
        return both;
    }
}
