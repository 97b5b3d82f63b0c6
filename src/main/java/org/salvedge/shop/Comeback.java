package org.salvedge.shop;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A sold set comes back. Amounts in the book's currency.
 *
 * @param cost transport and handling
 * @param restocked true: it is on the bench again; false: the buyer keeps it, or it is written off
 */
public record Comeback(
        UnitId unit,
        LocalDate on,
        @Nullable Fault fault,
        @Nullable Money refund,
        @Nullable Money cost,
        boolean restocked)
        implements Fact {
    public Comeback {
        Amounts.requireNotNegative("refund", refund);
        Amounts.requireNotNegative("cost", cost);
    }
}
