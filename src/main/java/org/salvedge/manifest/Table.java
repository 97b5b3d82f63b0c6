package org.salvedge.manifest;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.salvedge.manifest.words.Field;

/** A table under its header: which column holds which field. */
final class Table {
    static final int ABSENT = -1;

    /** A column and what it was taken for. */
    record Column(int index, String heading, Field field, double score, String words) {}

    private final Header header;
    private final List<Column> columns;
    private final Prices prices;
    private final SizeReader.Unit unit;
    private final int[] byField = new int[Field.values().length];
    private final int[] claims;
    private boolean modelHoldsMaker;
    private boolean descriptionHoldsClaims;
    private boolean descriptionHoldsSizes;

    Table(Header header, List<Column> columns, Prices prices, SizeReader.Unit unit) {
        this.header = header;
        this.columns = List.copyOf(columns);
        this.prices = prices;
        this.unit = unit;
        java.util.Arrays.fill(byField, ABSENT);
        List<Integer> claimColumns = new ArrayList<>();
        for (Column column : columns) {
            if (column.field == Field.CLAIM) {
                claimColumns.add(column.index);
            } else if (column.field != Field.NONE) {
                byField[column.field.ordinal()] = column.index;
            }
        }
        claims = claimColumns.stream().mapToInt(Integer::intValue).toArray();
    }

    Table with(boolean makerInModel, boolean claimsInDescription, boolean sizesInDescription) {
        modelHoldsMaker = makerInModel;
        descriptionHoldsClaims = claimsInDescription;
        descriptionHoldsSizes = sizesInDescription;
        return this;
    }

    /** Columns up to the last one read. */
    int width() {
        return columns.stream().mapToInt(Column::index).max().orElse(-1) + 1;
    }

    Header header() {
        return header;
    }

    List<Column> columns() {
        return columns;
    }

    Prices prices() {
        return prices;
    }

    SizeReader.Unit unit() {
        return unit;
    }

    /** Index of the column that holds a field, or {@link #ABSENT}. */
    int column(Field field) {
        return byField[field.ordinal()];
    }

    boolean has(Field field) {
        return column(field) != ABSENT;
    }

    int[] claimColumns() {
        return claims.clone();
    }

    boolean hasClaims() {
        return claims.length > 0;
    }

    /** Whether the model's column holds the maker too. */
    boolean modelHoldsMaker() {
        return modelHoldsMaker;
    }

    /** Whether descriptions hold sizes, so that one without is worth a word. */
    boolean descriptionHoldsSizes() {
        return descriptionHoldsSizes;
    }

    String heading(int column) {
        for (Column c : columns) {
            if (c.index == column) {
                return c.heading;
            }
        }
        return "";
    }

    /** Whether such a table can be a list of sets, by its columns. */
    boolean isManifest() {
        boolean sets = has(Field.MODEL) || has(Field.DESCRIPTION);
        boolean described = has(Field.INCHES) || hasClaims() || has(Field.SERIAL);
        return sets
                || has(Field.MAKER) && has(Field.INCHES) && (hasClaims() || has(Field.SERIAL))
                || has(Field.SERIAL) && described;
    }

    /** Whether it says of each set no more than a summary does: a model and how many. */
    boolean saysLittle() {
        return !has(Field.MAKER) && !has(Field.INCHES) && !has(Field.SERIAL) && !hasClaims() && !has(Field.DESCRIPTION);
    }

    /** Field key = heading, several joined by {@code +}. */
    Map<String, String> headings() {
        Map<String, String> headings = new LinkedHashMap<>();
        put(headings, "maker", maker());
        put(headings, "model", has(Field.MODEL) ? column(Field.MODEL) : column(Field.DESCRIPTION));
        put(
                headings,
                "inches",
                has(Field.INCHES) ? column(Field.INCHES) : descriptionHoldsSizes ? column(Field.DESCRIPTION) : ABSENT);
        put(headings, "serial", column(Field.SERIAL));
        put(headings, "quantity", column(Field.QUANTITY));
        if (hasClaims()) {
            List<String> texts = new ArrayList<>();
            for (int column : claims) {
                texts.add(heading(column));
            }
            headings.put("claimed", String.join(" + ", texts));
        } else if (descriptionHoldsClaims) {
            put(headings, "claimed", column(Field.DESCRIPTION));
        }
        put(headings, "asking", prices.shownColumn());
        return headings;
    }

    private int maker() {
        if (has(Field.MAKER)) {
            return column(Field.MAKER);
        }
        return has(Field.MODEL) && modelHoldsMaker ? column(Field.MODEL) : column(Field.DESCRIPTION);
    }

    private void put(Map<String, String> headings, String key, int column) {
        if (column != ABSENT) {
            headings.put(key, heading(column));
        }
    }
}
