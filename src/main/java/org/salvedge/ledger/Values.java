package org.salvedge.ledger;

import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Fact;

/** The values of one row, by column. */
final class Values<F extends Fact> {
    private final @Nullable Object[] values;
    private boolean spoilt;

    Values(int columns) {
        values = new Object[columns];
    }

    /** Some value could not be read: no fact can come of it. */
    void spoil() {
        spoilt = true;
    }

    boolean isSpoilt() {
        return spoilt;
    }

    <V> void put(Column<F, V> column, @Nullable V value) {
        values[column.index()] = value;
    }

    @SuppressWarnings("unchecked") // put is the only way in
    <V> @Nullable V get(Column<F, V> column) {
        return (V) values[column.index()];
    }

    @Nullable
    Object at(int index) {
        return values[index];
    }

    <V> V need(Column<F, V> column) {
        V value = get(column);
        if (value == null) {
            throw new IllegalArgumentException(column.name() + " is missing");
        }
        return value;
    }

    <V> V or(Column<F, V> column, V otherwise) {
        V value = get(column);
        return value == null ? otherwise : value;
    }
}
