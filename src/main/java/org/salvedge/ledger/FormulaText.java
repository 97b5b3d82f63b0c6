package org.salvedge.ledger;

import java.util.regex.Pattern;

/**
 * Text in CSV files of the package's form that a spreadsheet program would take for a formula: it is written with an apostrophe before it,
 * and the apostrophe is taken off again when it is read. Text that has such an apostrophe of its own gets another, so that every
 * text comes back as it was.
 */
final class FormulaText {
    private static final Pattern FORMULA =
            Pattern.compile("'*[\\s\\h]*[=+\\-@\t\r\uff1d\uff0b\uff0d\uff20].*", Pattern.DOTALL);

    private FormulaText() {}

    /** As it is written. */
    static String shown(Column<?, ?> column, String text) {
        return isText(column) && FORMULA.matcher(text).matches() ? "'" + text : text;
    }

    /** What a cell means. */
    static String meant(Column<?, ?> column, String cell) {
        return cell.charAt(0) == '\''
                        && isText(column)
                        && FORMULA.matcher(cell.substring(1)).matches()
                ? cell.substring(1)
                : cell;
    }

    private static boolean isText(Column<?, ?> column) {
        return column.type().schemaType().equals("string");
    }
}
