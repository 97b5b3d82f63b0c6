package org.salvedge.manifest;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.grid.Cell;

/** A header row and what its columns mean. */
final class Header {
    private static final int FEWEST = 2;

    private final int row;
    private final Map<Field, List<Integer>> columns;
    private final Map<Integer, String> texts;
    private final boolean twoRows;

    private Header(int row, Map<Field, List<Integer>> columns, Map<Integer, String> texts, boolean twoRows) {
        this.row = row;
        this.columns = columns;
        this.texts = texts;
        this.twoRows = twoRows;
    }

    /**
     * Reads a row, with the one below it if that goes on with the header.
     *
     * @return null if it is no header
     */
    static @Nullable Header of(int number, Cell[] cells, Cell @Nullable [] below, ColumnWords words) {
        Header one = read(number, cells, null, words);
        if (below != null && looksLikeText(below)) {
            Header lower = read(number, below, null, words);
            Header both = read(number, cells, below, words);
            boolean lowerAdds = both != null && (one == null || both.kinds() > one.kinds()) && lowerHeads(below, words);
            if (both != null
                    && lowerAdds
                    && (one != null || lower == null || lower.kinds() < both.kinds() || hasMerge(below))) {
                return both;
            }
        }
        return one;
    }

    private static boolean hasMerge(Cell[] below) {
        for (Cell c : below) {
            if (c.origin() == Cell.Origin.ABOVE) {
                return true;
            }
        }
        return false;
    }

    private static boolean lowerHeads(Cell[] below, ColumnWords words) {
        int known = 0;
        int other = 0;
        for (Cell c : below) {
            if (c.isBlank() || c.origin() != Cell.Origin.OWN) {
                continue;
            }
            if (words.find(c.shown()) != null) {
                known++;
            } else {
                other++;
            }
        }
        return known > 0 && known >= other;
    }

    private static boolean looksLikeText(Cell[] cells) {
        for (Cell c : cells) {
            if (c.isNumber() || c.kind() == Cell.Kind.DATE) {
                return false;
            }
        }
        return true;
    }

    private static @Nullable Header read(int number, Cell[] cells, Cell @Nullable [] below, ColumnWords words) {
        Map<Field, List<Integer>> columns = new EnumMap<>(Field.class);
        Map<Integer, String> texts = new LinkedHashMap<>();
        int filled = 0;
        int numbers = 0;
        int longTexts = 0;
        for (int c = 0; c < cells.length; c++) {
            String upper = cells[c].isBlank() ? "" : flat(cells[c].shown());
            String lower =
                    below == null || c >= below.length || below[c].isBlank() || below[c].origin() == Cell.Origin.ABOVE
                            ? ""
                            : flat(below[c].shown());
            if (upper.isEmpty() && lower.isEmpty()) {
                continue;
            }
            filled++;
            numbers += cells[c].isNumber() ? 1 : 0;
            longTexts += upper.length() > 45 ? 1 : 0;
            Field f = lower.isEmpty() ? words.find(upper) : words.find(lower);
            if (!lower.isEmpty() && !upper.isEmpty()) {
                Field joined = words.find(upper + " " + lower);
                Field top = words.find(upper);
                boolean price = top != null && top.isPrice();
                f = joined != null && (f == null || f == Field.OTHER || f.isPrice() || price)
                        ? joined
                        : f == null ? top : f;
            }
            texts.put(c, lower.isEmpty() ? upper : lower);
            if (f != null && f != Field.OTHER) {
                columns.computeIfAbsent(f, k -> new ArrayList<>()).add(c);
            }
        }
        List<Integer> references = columns.remove(Field.REFERENCE);
        if (references != null
                && !columns.containsKey(Field.MODEL)
                && !columns.containsKey(Field.MAKER_MODEL)
                && !columns.containsKey(Field.DESCRIPTION)) {
            columns.put(Field.MODEL, references);
        }
        boolean enough = columns.size() >= FEWEST && (names(columns) || columns.size() >= 3);
        if (!enough
                || numbers > 0
                || longTexts > 0
                || columns.size() < 4
                        && columns.values().stream().mapToInt(List::size).sum() * 3 < filled) {
            return null;
        }
        return new Header(number, columns, texts, below != null);
    }

    private static boolean names(Map<Field, List<Integer>> columns) {
        return columns.containsKey(Field.MODEL)
                || columns.containsKey(Field.MAKER_MODEL)
                || columns.containsKey(Field.DESCRIPTION)
                || columns.containsKey(Field.MAKER);
    }

    private static String flat(String text) {
        return text.replaceAll("\\s+", " ").strip();
    }

    /** How many fields have a column. */
    int kinds() {
        return columns.size();
    }

    boolean holdsSets() {
        return names(columns);
    }

    int row() {
        return row;
    }

    /** Rows that the header takes. */
    int height() {
        return twoRows ? 2 : 1;
    }

    List<Integer> columns(Field field) {
        return columns.getOrDefault(field, List.of());
    }

    boolean has(Field field) {
        return columns.containsKey(field);
    }

    String text(int column) {
        return texts.getOrDefault(column, "");
    }

    /** A column whose heading says nothing known, or nothing needed, is taken for a field that its cells speak of. */
    void take(Field field, int column) {
        columns.computeIfAbsent(field, k -> new ArrayList<>()).add(column);
    }

    boolean isTaken(int column) {
        return columns.values().stream().anyMatch(c -> c.contains(column));
    }

    /** The same headings, so that a header met again is passed over. */
    boolean sameAs(Header other) {
        return columns.equals(other.columns);
    }

    /** Field of the answer = heading; several columns of one field are joined. */
    Map<String, String> answer() {
        Map<String, String> answer = new LinkedHashMap<>();
        for (Field f : Field.values()) {
            String name = f.answer();
            if (name == null
                    || !columns.containsKey(f)
                    || f.isPrice() && priceField() != f
                    || f.isSize() && sizeField() != f) {
                continue;
            }
            StringBuilder joined = new StringBuilder();
            for (int c : f == Field.CLAIMED ? columns(f) : columns(f).subList(0, 1)) {
                joined.append(joined.length() == 0 ? "" : " + ").append(text(c));
            }
            answer.put(name, joined.toString());
        }
        Field together = has(Field.MAKER_MODEL) ? Field.MAKER_MODEL : Field.DESCRIPTION;
        if (has(together)) {
            String heading = text(columns(together).get(0));
            answer.putIfAbsent("model", heading);
            answer.putIfAbsent("maker", heading);
            if (together == Field.DESCRIPTION) {
                answer.putIfAbsent("inches", heading);
                answer.putIfAbsent("claimed", heading);
            }
        }
        return answer;
    }

    /** What the seller asks before retail value, price of one before price of a line. */
    @Nullable
    Field priceField() {
        for (Field f : new Field[] {Field.ASKING, Field.ASKING_LINE, Field.RETAIL, Field.RETAIL_LINE}) {
            if (has(f)) {
                return f;
            }
        }
        return null;
    }

    @Nullable
    Field sizeField() {
        for (Field f : new Field[] {Field.INCHES, Field.CENTIMETRES, Field.MILLIMETRES}) {
            if (has(f)) {
                return f;
            }
        }
        return null;
    }
}
