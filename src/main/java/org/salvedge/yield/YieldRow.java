package org.salvedge.yield;

import java.util.Currency;
import java.util.List;
import org.salvedge.shop.Money;

/**
 * The figures of one cell, by the counting rules. Not a number stands for undefined.
 *
 * @param keys in the order asked for; "" = empty
 * @param gone sets whose final margin stands here
 * @param inProgress sets neither decided nor returned nor lost; with a key of attempts, attempts still pending
 * @param raw saved / decided
 * @param rawLow Wilson, 95 %
 * @param shrunk the yield that borrows strength and allows for what sets of one lot share
 * @param minutesMedian of the fixes, failures included
 * @param minutesPerSaved minutes of all that was decided, a saved set
 * @param marginTotal of the gone sets
 * @param marginPerSet units of the currency
 * @param marginPerHour units of the currency an hour of labour
 */
public record YieldRow(
        List<String> keys,
        int sets,
        int attempts,
        int decided,
        int saved,
        int gone,
        int inProgress,
        double raw,
        double rawLow,
        double rawHigh,
        double shrunk,
        double shrunkLow,
        double shrunkHigh,
        double firstPassYield,
        double minutesMedian,
        double minutesP90,
        double minutesPerSaved,
        Money marginTotal,
        double marginPerSet,
        double marginPerHour) {
    public YieldRow {
        keys = List.copyOf(keys);
    }

    /** A row that counts nothing. */
    static YieldRow empty(List<String> keys, Currency currency) {
        double nan = Double.NaN;
        return new YieldRow(
                keys,
                0,
                0,
                0,
                0,
                0,
                0,
                nan,
                nan,
                nan,
                nan,
                nan,
                nan,
                nan,
                nan,
                nan,
                nan,
                Money.zero(currency),
                nan,
                nan);
    }
}
