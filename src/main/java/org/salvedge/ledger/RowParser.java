package org.salvedge.ledger;

import de.siegmar.fastcsv.reader.CsvRecord;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.Currency;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.function.Function;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;

/** Turns rows of one file into facts; what cannot be is told as a problem. */
final class RowParser<F extends Fact> {
    private final Table<F> table;
    private final CsvFile file;
    private final ProblemList problems;
    private final Codec codec;
    private final LocalDate today;
    private final List<@Nullable Column<F, ?>> columns =
            new ArrayList<>(); // in the order of the header; null = not read

    private RowParser(Table<F> table, CsvFile file, ProblemList problems, Codec codec, LocalDate today) {
        this.table = table;
        this.file = file;
        this.problems = problems;
        this.codec = codec;
        this.today = today;
    }

    /** Reads only those columns from now on; they must be there. */
    RowParser<F> only(Set<Column<F, ?>> wanted) {
        columns.replaceAll(column -> column != null && wanted.contains(column) ? column : null);
        return this;
    }

    /** Null, with the problems told, if the header is not one of that table. */
    static <F extends Fact> @Nullable RowParser<F> of(
            Table<F> table, CsvFile file, ProblemList problems, Codec codec, LocalDate today) {
        RowParser<F> parser = new RowParser<>(table, file, problems, codec, today);
        return parser.readHeader() ? parser : null;
    }

    private boolean readHeader() {
        if (file.isBroken()) {
            return false;
        }
        boolean good = true;
        Set<String> seen = new HashSet<>();
        for (String name : file.header()) {
            Column<F, ?> column = find(name);
            if (column == null) {
                problems.add(file.name(), 1, name, name, "is not a column of " + table.resource(), unknownAdvice());
                good = false;
            } else if (!seen.add(name)) {
                problems.add(file.name(), 1, name, name, "stands twice in the header", "Remove one of the two.");
                good = false;
            } else {
                columns.add(column);
            }
        }
        for (Column<F, ?> column : table.columns()) {
            if (column.need() != Column.Need.OPTIONAL
                    && !column.equals(Tables.EXITS.seq)
                    && !seen.contains(column.name())) {
                problems.add(
                        file.name(), 1, column.name(), null, "is missing", "Add the column \"" + column.name() + "\".");
                good = false;
            }
        }
        return good;
    }

    private @Nullable Column<F, ?> find(String name) {
        for (Column<F, ?> column : table.columns()) {
            if (column.name().equals(name)) {
                return column;
            }
        }
        return null;
    }

    private String unknownAdvice() {
        return "Remove it, or name it as one of "
                + table.columns().stream().map(Column::name).collect(Collectors.joining(", ")) + ".";
    }

    /** The values of a row that could be read; {@code money} gives the lot's currency from the cells read so far. */
    Values<F> values(CsvRecord record, Function<Values<F>, Currency> money) {
        Values<F> values = new Values<>(table.columns().size());
        int late = -1;
        for (int i = 0; i < columns.size(); i++) {
            Column<F, ?> column = columns.get(i);
            if (column == null) {
                continue;
            }
            // An amount in the lot's currency can be read only when the lot is known.
            if (column.type().equals(Types.LOT_MONEY)) {
                late = i;
                continue;
            }
            read(column, record.getField(i), codec.book(), values);
        }
        if (late >= 0) {
            Currency currency = money.apply(values);
            for (int i = 0; i <= late; i++) {
                Column<F, ?> column = columns.get(i);
                if (column != null && column.type().equals(Types.LOT_MONEY)) {
                    read(column, record.getField(i), currency, values);
                }
            }
        }
        return values;
    }

    private <V> void read(Column<F, V> column, String cell, Currency money, Values<F> values) {
        if (cell.isEmpty()) {
            if (column.need() != Column.Need.OPTIONAL && !column.equals(Tables.EXITS.seq)) {
                problem(column, null, "is empty", "Give it a value.");
                values.spoil();
            }
            return;
        }
        try {
            V value = column.type().parse(FormulaText.meant(column, cell), money, codec);
            requirePast(column, value);
            requireNotNegative(value);
            values.put(column, value);
        } catch (BadCell e) {
            problem(column, cell, e.problem(), e.advice());
            values.spoil();
        }
    }

    private void requirePast(Column<F, ?> column, Object value) {
        LocalDate day = value instanceof LocalDate date
                ? date
                : value instanceof LocalDateTime time ? time.toLocalDate() : null;
        if (day != null && day.isAfter(today) && !column.equals(Tables.UNITS.expectedOn)) {
            throw new BadCell("is in the future", "Today is " + today + "; check the date.");
        }
    }

    private void requireNotNegative(Object value) {
        boolean negative = value instanceof Money money && money.isNegative()
                || value instanceof Quantity quantity && quantity.isNegative();
        if (negative && !table.equals(Tables.BIDS)) {
            throw new BadCell("is negative", "Write 0 or more.");
        }
    }

    /** The fact of a row; null, with the problem told, if its values cannot go together. */
    @Nullable
    F fact(Values<F> values) {
        if (values.isSpoilt()) {
            return null;
        }
        try {
            return table.fact(values);
        } catch (IllegalArgumentException e) {
            String message = String.valueOf(e.getMessage());
            Column<F, ?> column = find(message.substring(0, Math.max(0, message.indexOf(' '))));
            if (column == null) {
                problem(null, null, message, "Mend the row.");
            } else {
                problem(column, found(column, values), message, "Mend the value.");
            }
            return null;
        }
    }

    private static <F extends Fact, V> @Nullable String found(Column<F, V> column, Values<F> values) {
        V value = values.get(column);
        return value == null ? null : column.type().format(value);
    }

    /** Number of the row at hand. */
    long row() {
        return file.row();
    }

    /** Tells a problem of the row at hand. */
    void problem(@Nullable Column<F, ?> column, @Nullable String found, String problem, String advice) {
        problems.add(file.name(), file.row(), column == null ? null : column.name(), found, problem, advice);
    }
}
