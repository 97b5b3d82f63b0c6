package org.salvedge.shop;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A part that came out of a set, or was bought.
 *
 * @param part the shop's label on the part
 * @param fromUnit the set it came out of; null = bought
 * @param number the number printed on the part
 * @param on taken out, or bought
 * @param value transfer price (harvested) or purchase price (bought), book currency
 * @param attempt number of the attempt it was used in
 * @param goneOn sold or thrown away on that day
 */
public record Part(
        String part,
        @Nullable UnitId fromUnit,
        PartKind kind,
        @Nullable String number,
        LocalDate on,
        Money value,
        @Nullable PartTest tested,
        @Nullable Integer attempt,
        @Nullable LocalDate goneOn)
        implements Fact {
    public Part {
        Text.requireLabel(part);
        Amounts.requireNotNegative("value", value);
        if (goneOn != null && goneOn.isBefore(on)) {
            throw new IllegalArgumentException("gone on " + goneOn + ", before it was had on " + on);
        }
    }
}
