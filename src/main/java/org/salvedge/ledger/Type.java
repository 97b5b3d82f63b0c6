package org.salvedge.ledger;

import java.sql.SQLException;
import java.util.Currency;
import java.util.List;

/**
 * How values of one type stand in the history package (text) and in the ledger (a whole number or a text).
 *
 * @param <V> the type in memory
 */
abstract class Type<V> {
    private final String schemaType;
    private final boolean text;

    /**
     * @param schemaType name of the type in a Table Schema
     * @param text whether the ledger keeps it as text, else as a whole number
     */
    Type(String schemaType, boolean text) {
        this.schemaType = schemaType;
        this.text = text;
    }

    final String schemaType() {
        return schemaType;
    }

    final boolean isText() {
        return text;
    }

    /** All the words it can be, where they are few and fixed; else empty. */
    List<String> words() {
        return List.of();
    }

    /**
     * @param cell never empty
     * @param lot the lot's currency, for amounts that are in it
     * @throws BadCell if it is not such a value
     */
    abstract V parse(String cell, Currency lot, Codec codec);

    /** As the package writes it. */
    String format(V value) {
        return value.toString();
    }

    /** For types kept as a whole number. */
    long toNumber(V value, Codec codec) throws SQLException {
        throw new IllegalStateException(schemaType + " is kept as text");
    }

    /** For types kept as text. */
    String toText(V value) {
        return value.toString();
    }

    /** The value of such a number. */
    V ofNumber(long number, Currency lot, Codec codec) throws SQLException {
        throw new IllegalStateException(schemaType + " is kept as text");
    }

    /** The value of such a text. */
    V ofText(String kept) {
        throw new IllegalStateException(schemaType + " is kept as a number");
    }
}
