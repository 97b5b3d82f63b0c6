package org.salvedge.shop;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/** A set's price is set. Book currency. */
public record Offer(
        UnitId unit, LocalDate on, Money price, @Nullable String channel) implements Fact {
    public Offer {
        Amounts.requireNotNegative("price", price);
    }
}
