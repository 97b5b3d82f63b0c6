package org.salvedge.ledger;

import org.salvedge.shop.FormulaGuard;

/** Text in CSV files of the package's form: what a spreadsheet program would take for a formula is marked, and comes back as it was. */
final class FormulaText {
    private FormulaText() {}

    /** As it is written. */
    static String shown(Column<?, ?> column, String text) {
        return isText(column) ? FormulaGuard.shown(text) : text;
    }

    /** What a cell means. */
    static String meant(Column<?, ?> column, String cell) {
        return isText(column) ? FormulaGuard.meant(cell) : cell;
    }

    private static boolean isText(Column<?, ?> column) {
        return column.type().schemaType().equals("string");
    }
}
