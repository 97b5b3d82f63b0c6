package org.salvedge.worth;

import java.math.BigDecimal;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.ListedSet;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Quantity;

/**
 * One set of a lot on offer, as the seller lists it. Null = not said.
 *
 * @param line row of its sheet, from 1; several sets may share it
 * @param inches screen diagonal, inches
 * @param asking the seller's stated value of one set, in the lot's currency
 */
public record Candidate(
        @Nullable String sheet,
        @Nullable Integer line,
        @Nullable String maker,
        @Nullable String model,
        @Nullable Double inches,
        Claim claimed,
        @Nullable BigDecimal asking) {

    public static Candidate of(ListedSet set) {
        Quantity diagonal = set.inches();
        return new Candidate(
                set.sheet(),
                set.line(),
                set.maker(),
                set.model(),
                diagonal == null ? null : diagonal.toDouble(),
                set.claimed(),
                set.asking());
    }
}
