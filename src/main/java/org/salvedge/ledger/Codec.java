package org.salvedge.ledger;

import java.sql.SQLException;
import java.util.Currency;
import org.salvedge.shop.Codes;

/**
 * What turning values into numbers and back needs: the dictionaries, the book's currency, each lot's currency by the number of
 * its label, and the codes in force.
 */
record Codec(
        Dictionary words, Dictionary lots, Dictionary units, Currency book, LotCurrencies lotCurrencies, Codes codes) {
    interface LotCurrencies {
        Currency of(int lot) throws SQLException;
    }
}
