package org.salvedge.ledger;

import java.sql.SQLException;
import org.salvedge.shop.Fact;

/** What the rows of one file must keep to beyond their own cells. */
interface RowCheck<F extends Fact> {
    /** Fills in what the row leaves out, before a fact is made of it. */
    default void fill(Values<F> values) throws SQLException {}

    /** A row that could not be read whole: others that speak of it are not to blame. */
    default void spoilt(Values<F> values) throws SQLException {}

    /** @return whether the row is to be written; if it is bad, it has told why */
    boolean keep(F fact, RowParser<F> row) throws SQLException;

    /** A key that stands twice in a file, or that the shop holds already; tells it. */
    static <F extends Fact, V> boolean isNew(
            boolean inFile, boolean inShop, Column<F, V> column, V value, RowParser<F> row) {
        if (inFile) {
            row.problem(column, column.type().format(value), "stands there already", "Remove one of the two rows.");
        } else if (inShop) {
            row.problem(
                    column,
                    column.type().format(value),
                    "is on record in this shop already",
                    "Import into an empty shop, or take the row out of the package.");
        }
        return !inFile && !inShop;
    }
}
