package org.salvedge.ledger;

import java.time.LocalDate;
import java.util.Comparator;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Text;

/**
 * One column of a kind of fact, the same in the ledger and in the history package.
 *
 * @param index place among the columns of its table, from 0
 * @param name as in the package, and in the ledger's table
 * @param need whether the package must have it
 * @param title what it means, for the package's schema
 * @param before of a column that a later script added: what that script gave the rows that were there; null if the first had it
 */
record Column<F extends Fact, V>(
        int index,
        String name,
        Type<V> type,
        Need need,
        String title,
        Function<F, @Nullable V> get,
        Cells.@Nullable Cell before) {
    enum Need {
        KEY,
        REQUIRED,
        OPTIONAL
    }

    @Nullable
    V of(F fact) {
        return get.apply(fact);
    }

    boolean isKey() {
        return need == Need.KEY;
    }

    String format(F fact) {
        V value = of(fact);
        return value == null ? "" : type.format(value);
    }

    /** As in SQL, where some names are words of the language. */
    String quoted() {
        return '"' + name + '"';
    }

    /** The package's order of this column: numbers and days by value, text by code point. */
    Comparator<F> order() {
        return (a, b) -> compare(of(a), of(b));
    }

    @SuppressWarnings("unchecked") // numbers and days compare with their own kind
    private int compare(@Nullable V a, @Nullable V b) {
        if (a == null || b == null) {
            return a == null ? b == null ? 0 : -1 : 1;
        }
        boolean byValue = a instanceof Integer || a instanceof LocalDate;
        return byValue ? ((Comparable<V>) a).compareTo(b) : Text.CODE_POINTS.compare(type.format(a), type.format(b));
    }
}
