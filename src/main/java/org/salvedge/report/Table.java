package org.salvedge.report;

import java.util.ArrayList;
import java.util.Collections;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Rows to print, as they are in the data: values of the class that each column's {@link Kind} names, null (or not a number)
 * where a figure is undefined.
 *
 * @param title a line above the table on the screen; "" = none
 * @param notes lines below the table on the screen
 */
public record Table(String title, List<Column> columns, List<List<@Nullable Object>> rows, List<String> notes) {
    public Table {
        columns = List.copyOf(columns);
        rows = List.copyOf(rows);
        notes = List.copyOf(notes);
        for (List<@Nullable Object> row : rows) {
            if (row.size() != columns.size()) {
                throw new IllegalArgumentException(
                        "a row of " + row.size() + " values under " + columns.size() + " columns");
            }
        }
    }

    public static Builder of(Column... columns) {
        return new Builder(List.of(columns));
    }

    public static Builder of(List<Column> columns) {
        return new Builder(columns);
    }

    /** Collects rows and notes. */
    public static final class Builder {
        private final List<Column> columns;
        private final List<List<@Nullable Object>> rows = new ArrayList<>();
        private final List<String> notes = new ArrayList<>();
        private String title = "";

        private Builder(List<Column> columns) {
            this.columns = columns;
        }

        public Builder title(String text) {
            title = text;
            return this;
        }

        public Builder row(@Nullable Object... values) {
            return row(java.util.Arrays.asList(values));
        }

        public Builder row(List<? extends @Nullable Object> values) {
            rows.add(Collections.unmodifiableList(new ArrayList<>(values)));
            return this;
        }

        public Builder note(String text) {
            notes.add(text);
            return this;
        }

        public Table build() {
            return new Table(title, columns, rows, notes);
        }
    }
}
