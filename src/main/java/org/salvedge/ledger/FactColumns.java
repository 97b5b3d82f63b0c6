package org.salvedge.ledger;

import java.util.Currency;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Lot;
import org.salvedge.shop.Refused;

/** A fact by the names and texts of the history package's columns. */
public final class FactColumns {
    private FactColumns() {}

    /** All columns in the package's order, each with its text; "" = not known. */
    public static Map<String, String> of(Fact fact) {
        return cells(fact);
    }

    /** As {@link #of}, as a CSV file of the package's form has it: no text that a spreadsheet program takes for a formula. */
    public static Map<String, String> inFile(Fact fact) {
        Map<String, String> cells = of(fact);
        for (Column<?, ?> column : Tables.of(fact).columns()) {
            cells.computeIfPresent(column.name(), (name, text) -> FormulaText.shown(column, text));
        }
        return cells;
    }

    /** What the cells of such a file mean, by the columns of facts like this one; columns it does not have stay as they are. */
    public static Map<String, String> fromFile(Fact like, Map<String, String> cells) {
        Map<String, String> meant = new LinkedHashMap<>(cells);
        for (Column<?, ?> column : Tables.of(like).columns()) {
            meant.computeIfPresent(
                    column.name(), (name, cell) -> cell.isEmpty() ? cell : FormulaText.meant(column, cell));
        }
        return meant;
    }

    private static <F extends Fact> Map<String, String> cells(F fact) {
        Map<String, String> cells = new LinkedHashMap<>();
        for (Column<F, ?> column : Tables.of(fact).columns()) {
            cells.put(column.name(), column.format(fact));
        }
        return cells;
    }

    /** @param lot currency of the lot of a set; for other facts it does not matter */
    static <F extends Fact> F with(F fact, Map<String, String> changes, Currency lot, Codec codec) {
        Table<F> table = Tables.of(fact);
        Map<String, String> cells = cells(fact);
        for (String name : changes.keySet()) {
            if (!cells.containsKey(name)) {
                throw new Refused("a row of " + table.resource() + " has no column \"" + name + "\"; columns: "
                        + String.join(", ", cells.keySet()));
            }
        }
        cells.putAll(changes);
        Currency money = fact instanceof Lot ? Parse.currency(cells.getOrDefault("currency", "")) : lot;
        Values<F> values = new Values<>(table.columns().size());
        List<String> missing = table.columns().stream()
                .filter(c -> c.need() != Column.Need.OPTIONAL
                        && cells.getOrDefault(c.name(), "").isEmpty())
                .map(Column::name)
                .toList();
        if (!missing.isEmpty()) {
            throw new Refused("a row of " + table.resource() + " cannot be without " + String.join(", ", missing));
        }
        for (Column<F, ?> column : table.columns()) {
            put(column, cells.get(column.name()), money, codec, values);
        }
        try {
            return table.fact(values);
        } catch (IllegalArgumentException e) {
            throw new Refused(String.valueOf(e.getMessage()));
        }
    }

    private static <F extends Fact, V> void put(
            Column<F, V> column, @Nullable String cell, Currency money, Codec codec, Values<F> values) {
        if (cell == null || cell.isEmpty()) {
            return;
        }
        try {
            values.put(column, column.type().parse(word(column, cell), money, codec));
        } catch (BadCell e) {
            throw new Refused(column.name() + ": \"" + cell + "\" " + e.problem() + ". " + e.advice());
        }
    }

    /** On the command line yes and no are what true and false are in the package. */
    private static String word(Column<?, ?> column, String cell) {
        if (column.type() == Types.YES_NO) {
            return cell.equals("yes") ? "true" : cell.equals("no") ? "false" : cell;
        }
        return cell;
    }
}
