package org.salvedge.shop;

import org.jspecify.annotations.Nullable;

/**
 * Something in a file that a person must look at: where it stands, the text found, what is wrong, what to do.
 *
 * @param file name of the file, without its folder
 * @param sheet null where the file has no sheets
 * @param row as a spreadsheet program shows it, from 1; 0 = the whole file
 * @param column the heading as written, or its letter; null = the whole row
 * @param found the offending text; null = nothing to quote
 */
public record Problem(
        String file,
        @Nullable String sheet,
        int row,
        @Nullable String column,
        @Nullable String found,
        String problem,
        String advice) {

    /** One line in the form of every message: file, sheet, row, column, text found, what is wrong; then what to do. */
    @Override
    public String toString() {
        StringBuilder s = new StringBuilder(file);
        if (sheet != null) {
            s.append(", sheet \"").append(sheet).append('"');
        }
        if (row > 0) {
            s.append(", row ").append(row);
        }
        if (column != null) {
            s.append(", column \"").append(column).append('"');
        }
        s.append(": ");
        if (found != null) {
            s.append('"').append(found).append("\" ");
        }
        s.append(problem);
        return advice.isEmpty() ? s.toString() : s.append(". ").append(advice).toString();
    }
}
