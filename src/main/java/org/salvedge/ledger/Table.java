package org.salvedge.ledger;

import java.sql.PreparedStatement;
import java.sql.ResultSet;
import java.sql.SQLException;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Comparator;
import java.util.Currency;
import java.util.List;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Column.Need;
import org.salvedge.shop.Fact;

/** One kind of fact: its table in the ledger, its file in the package, its columns in the package's order. */
abstract class Table<F extends Fact> {
    private final String name;
    private final char mark;
    private final Class<F> kind;
    private final List<Column<F, ?>> columns = new ArrayList<>();

    /** @param mark goes into the checksums, so that a row is of its table */
    Table(String name, char mark, Class<F> kind) {
        this.name = name;
        this.mark = mark;
        this.kind = kind;
    }

    final <V> Column<F, V> key(String column, Type<V> type, String title, Function<F, @Nullable V> get) {
        return add(column, type, Need.KEY, title, get);
    }

    final <V> Column<F, V> required(String column, Type<V> type, String title, Function<F, @Nullable V> get) {
        return add(column, type, Need.REQUIRED, title, get);
    }

    final <V> Column<F, V> optional(String column, Type<V> type, String title, Function<F, @Nullable V> get) {
        return add(column, type, Need.OPTIONAL, title, get);
    }

    private <V> Column<F, V> add(String column, Type<V> type, Need need, String title, Function<F, @Nullable V> get) {
        Column<F, V> added = new Column<>(columns.size(), column, type, need, title, get, null);
        columns.add(added);
        return added;
    }

    /**
     * Marks a column that a script after the first added to the table; without the mark audit finds every older row damaged.
     *
     * @param before the script's DEFAULT, {@link Cells.Cell#EMPTY} where it has none
     */
    final <V> Column<F, V> later(Column<F, V> column, Cells.Cell before) {
        Column<F, V> marked = new Column<>(
                column.index(), column.name(), column.type(), column.need(), column.title(), column.get(), before);
        columns.set(column.index(), marked);
        return marked;
    }

    /** The package's order of rows. */
    final Comparator<F> byKey() {
        return columns.stream()
                .filter(Column::isKey)
                .map(Column::order)
                .reduce(Comparator::thenComparing)
                .orElseThrow();
    }

    /** Name in SQL. */
    final String name() {
        return name;
    }

    /** Name of its resource in the package. */
    final String resource() {
        return name + "s";
    }

    /** Name of its file in the package, unless the package says otherwise. */
    final String file() {
        return resource() + ".csv";
    }

    final char mark() {
        return mark;
    }

    final Class<F> kind() {
        return kind;
    }

    final List<Column<F, ?>> columns() {
        return Collections.unmodifiableList(columns);
    }

    /** @throws IllegalArgumentException if the values cannot go together */
    abstract F fact(Values<F> values);

    /** The day it happened; for a set the day is its lot's. */
    abstract LocalDate day(F fact);

    /** Names it in a sentence: {@code exit of L0042-007 on 2026-03-14}. */
    abstract String describe(F fact);

    /** Currency of a row's amounts; the book's unless said otherwise. */
    Currency money(ResultSet row, Codec codec) throws SQLException {
        return codec.book();
    }

    final String insert() {
        String marks = ", ?".repeat(columns.size());
        return "INSERT INTO " + name + " (entry, " + columnList() + ", crc) VALUES (?" + marks + ", ?)";
    }

    /** Selects entry, the columns in order, crc; to be followed by a condition. */
    final String select() {
        return "SELECT entry, " + columnList() + ", crc FROM " + name;
    }

    private String columnList() {
        return columns.stream().map(Column::quoted).collect(Collectors.joining(", "));
    }

    final Cells newCells(int rows) {
        return new Cells(rows, columns);
    }

    final void encode(F fact, Cells cells, int row, Codec codec) throws SQLException {
        for (Column<F, ?> column : columns) {
            encode(column, fact, cells, row, codec);
        }
    }

    private <V> void encode(Column<F, V> column, F fact, Cells cells, int row, Codec codec) throws SQLException {
        V value = column.of(fact);
        Type<V> type = column.type();
        if (type.isText()) {
            String text = value == null ? null : type.toText(value);
            cells.text(row, column.index(), text == null || text.isEmpty() ? null : text);
        } else {
            cells.number(row, column.index(), value == null ? Cells.NULL : type.toNumber(value, codec));
        }
    }

    /** Sets all parameters of {@link #insert}. */
    final void bind(PreparedStatement insert, long entry, Cells cells, int row, int crc) throws SQLException {
        insert.setLong(1, entry);
        cells.bind(insert, 2, row);
        insert.setInt(columns.size() + 2, crc);
    }

    /** The fact in a row of {@link #select}. */
    final F read(ResultSet row, Codec codec) throws SQLException {
        Currency money = money(row, codec);
        Values<F> values = new Values<>(columns.size());
        for (Column<F, ?> column : columns) {
            read(column, row, money, values, codec);
        }
        return fact(values);
    }

    private <V> void read(Column<F, V> column, ResultSet row, Currency money, Values<F> values, Codec codec)
            throws SQLException {
        int at = column.index() + 2;
        if (column.type().isText()) {
            String text = row.getString(at);
            if (text != null) {
                values.put(column, column.type().ofText(text));
            }
            return;
        }
        long number = row.getLong(at);
        if (number != 0 || !row.wasNull()) {
            values.put(column, column.type().ofNumber(number, money, codec));
        }
    }

    /** The cells of a row of {@link #select}, as they stand. */
    final void readCells(ResultSet row, Cells cells, int into) throws SQLException {
        for (Column<F, ?> column : columns) {
            int at = column.index() + 2;
            if (column.type().isText()) {
                cells.text(into, column.index(), row.getString(at));
            } else {
                long value = row.getLong(at);
                cells.number(into, column.index(), row.wasNull() ? Cells.NULL : value);
            }
        }
    }
}
