package org.salvedge.manifest;

import org.jspecify.annotations.Nullable;

/**
 * How one column of a table was understood, and why.
 *
 * @param letter of the column, as a spreadsheet program shows it
 * @param heading as written; "" = none
 * @param field key of the field it is read as; null = not needed
 * @param score how sure: 1 is a heading known word for word that its cells agree with
 * @param words of the heading that were recognised; "" where the cells alone decided
 */
public record ColumnReading(
        String letter, String heading, @Nullable String field, double score, String words) {}
