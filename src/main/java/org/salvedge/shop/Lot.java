package org.salvedge.shop;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.time.LocalDate;
import java.util.Currency;
import org.jspecify.annotations.Nullable;

/**
 * One purchase. Amounts are in the lot's own currency; {@code rate} is book-currency units for one unit of it (null: 1). Null
 * means not known.
 *
 * @param minutes labour on the lot as a whole: unloading, counting, sorting
 */
public record Lot(
        LotId lot,
        String supplier,
        LocalDate boughtOn,
        Currency currency,
        @Nullable BigDecimal rate,
        Money price,
        @Nullable Money premium,
        @Nullable Money freight,
        @Nullable Money otherCost,
        @Nullable Quantity minutes,
        @Nullable LocalDate receivedOn,
        @Nullable Basis basis,
        @Nullable String note)
        implements Fact {

    public Lot {
        if (supplier.isBlank()) {
            throw new IllegalArgumentException("a lot needs a supplier");
        }
        if (rate != null && rate.signum() <= 0) {
            throw new IllegalArgumentException("a rate of exchange must be above 0, not " + rate);
        }
        rate = rate == null ? null : plain(rate);
        Amounts.requireCurrency(currency, price, premium, freight, otherCost);
        Amounts.requireNotNegative("price", price);
        Amounts.requireNotNegative("premium", premium);
        Amounts.requireNotNegative("freight", freight);
        Amounts.requireNotNegative("other_cost", otherCost);
        Amounts.requireNotNegative("minutes", minutes);
        if (receivedOn != null && receivedOn.isBefore(boughtOn)) {
            throw new IllegalArgumentException("received on " + receivedOn + ", before it was bought on " + boughtOn);
        }
    }

    public Lot withBasis(Basis other) {
        return new Lot(
                lot,
                supplier,
                boughtOn,
                currency,
                rate,
                price,
                premium,
                freight,
                otherCost,
                minutes,
                receivedOn,
                other,
                note);
    }

    /** One form for each number, so that equal rates are equal: 0.92 for 0.9200. */
    private static BigDecimal plain(BigDecimal number) {
        BigDecimal stripped = number.stripTrailingZeros();
        return stripped.scale() < 0 ? stripped.setScale(0) : stripped;
    }

    /** The day its sets can first be worked on: received, else bought. */
    public LocalDate arrivalDay() {
        return receivedOn == null ? boughtOn : receivedOn;
    }

    /** (price + premium + freight + other cost) x rate, half up to the minor unit of the book currency. */
    public Money landedCost(Currency book) {
        BigDecimal sum = price.amount()
                .add(Amounts.orZero(premium))
                .add(Amounts.orZero(freight))
                .add(Amounts.orZero(otherCost));
        return Money.of(rate == null ? sum : sum.multiply(rate), book, RoundingMode.HALF_UP);
    }
}
