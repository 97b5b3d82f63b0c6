package org.salvedge.report;

import org.jspecify.annotations.Nullable;

/**
 * A value of a table that leads to rows of another sheet.
 *
 * @param value as it would stand without the link
 * @param sheet name of the sheet
 * @param first row of the table there, from 0
 * @param last row of the table there, included
 */
record Linked(@Nullable Object value, String sheet, int first, int last) {
    /** Where it leads, as a spreadsheet writes it. */
    String target() {
        return "'" + sheet + "'!A" + (SheetWriter.FIRST_ROW + first + 1) + ":A" + (SheetWriter.FIRST_ROW + last + 1);
    }

    @Override
    public String toString() {
        return String.valueOf(value);
    }
}
