package org.salvedge.shop;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * A set leaves the shop, or a part of it brings money. Amounts are in the book's currency, without tax that is passed on.
 *
 * @param seq tells apart several on one day, from 1
 * @param gone false: takings for a part of it, the set itself stays; null = true
 * @param gross takings; 0 for recycling; a seller's credit for {@link ExitKind#RETURNED}
 * @param shipping outbound, paid by the shop
 * @param tax tax that stays a cost of the shop
 * @param minutes minutes on stripping, packing or listing
 * @param grade grade it was sold at
 * @param disclosed the buyer was told of a workaround
 * @param unmetReason why it was sold with a release check unmet
 */
public record Exit(
        UnitId unit,
        LocalDate on,
        int seq,
        ExitKind kind,
        @Nullable Boolean gone,
        Money gross,
        @Nullable Money fees,
        @Nullable Money shipping,
        @Nullable Money tax,
        @Nullable Quantity minutes,
        @Nullable String channel,
        @Nullable Grade grade,
        @Nullable Boolean disclosed,
        @Nullable String unmetReason)
        implements Fact {

    public Exit {
        if (seq < 1) {
            throw new IllegalArgumentException("seq must be at least 1, not " + seq);
        }
        Amounts.requireNotNegative("gross", gross);
        Amounts.requireNotNegative("fees", fees);
        Amounts.requireNotNegative("shipping", shipping);
        Amounts.requireNotNegative("tax", tax);
        Amounts.requireNotNegative("minutes", minutes);
        Amounts.requireCurrency(gross.currency(), fees, shipping, tax);
    }

    /** Whether the set itself went. */
    public boolean leaves() {
        return !Boolean.FALSE.equals(gone);
    }

    /** gross - fees - shipping - tax. */
    public Money net() {
        Money net = gross;
        for (Money cost : new Money[] {fees, shipping, tax}) {
            net = cost == null ? net : net.minus(cost);
        }
        return net;
    }

    /** The same with what the buyer was told of a workaround, and why a release check was left unmet. */
    public Exit released(@Nullable Boolean told, @Nullable String reason) {
        return new Exit(unit, on, seq, kind, gone, gross, fees, shipping, tax, minutes, channel, grade, told, reason);
    }
}
