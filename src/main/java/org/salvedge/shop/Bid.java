package org.salvedge.shop;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A lot that was judged, bought or not. Amounts in the book's currency.
 *
 * @param number the bid's own number, from 1
 * @param manifest SHA-256 of the file, lower-case hexadecimal
 * @param sets sets on the manifest
 * @param limit the most the shop would pay
 * @param mean what {@code worth} said of the lot's recovery: mean and quantiles
 * @param won null = not decided
 * @param hammer what it went for, where known
 * @param lot the lot it became
 */
public record Bid(
        int number,
        LocalDate on,
        @Nullable String supplier,
        @Nullable String manifest,
        @Nullable Integer sets,
        @Nullable Money limit,
        @Nullable Money mean,
        @Nullable Money p10,
        @Nullable Money p50,
        @Nullable Money p90,
        @Nullable Boolean won,
        @Nullable Money hammer,
        @Nullable LotId lot)
        implements Fact {
    public Bid {
        if (number < 1) {
            throw new IllegalArgumentException("bid must be at least 1, not " + number);
        }
        Amounts.requireNotNegative("limit", limit);
        Amounts.requireNotNegative("hammer", hammer);
    }
}
