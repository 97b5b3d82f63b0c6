package org.salvedge.worth;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Currency;
import java.util.Optional;
import org.salvedge.shop.Money;

/**
 * Terms of a sale: what is paid beside the price. Amounts are in the book currency.
 *
 * @param premiumPct buyer's premium, percent of the price
 * @param freight transport in
 * @param other unrecoverable tax, pallets
 */
public record Terms(BigDecimal premiumPct, Money freight, Money other) {
    private static final BigDecimal HUNDRED = new BigDecimal(100);

    public Terms {
        if (premiumPct.signum() < 0 || freight.isNegative() || other.isNegative()) {
            throw new IllegalArgumentException("premium, freight and other cost must not be negative");
        }
    }

    public static Terms none(Currency currency) {
        return new Terms(BigDecimal.ZERO, Money.zero(currency), Money.zero(currency));
    }

    /** All that leaves the shop's purse at this price, the premium rounded half up. */
    public Money outlay(Money price) {
        Money premium = price.times(premiumPct.movePointLeft(2), RoundingMode.HALF_UP);
        return price.plus(premium).plus(freight).plus(other);
    }

    /**
     * The largest price, in whole minor units, at which the outlay plus the return asked on it is reached with at least this
     * chance; empty where not even a price of 0 does.
     *
     * @param confidence between 0 and 1, both excluded
     * @param targetReturn profit asked for as a fraction of the outlay, more than -1
     */
    public Optional<Money> highestBid(Predictive recovery, double confidence, double targetReturn) {
        if (!(confidence > 0 && confidence < 1)) {
            throw new IllegalArgumentException("confidence must lie between 0 and 1, not " + confidence);
        }
        if (!(targetReturn > -1 && targetReturn < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("target return must be more than -1, not " + targetReturn);
        }
        return largestPrice(recovery.reachedWith(confidence) / (1 + targetReturn));
    }

    /** The largest price at which the mean profit is not below 0; empty where there is none. */
    public Optional<Money> breakEven(Predictive recovery) {
        return largestPrice(recovery.mean());
    }

    /** The largest price whose outlay is at most the amount. */
    private Optional<Money> largestPrice(double amount) {
        Currency currency = freight.currency();
        int digits = Math.max(0, currency.getDefaultFractionDigits());
        double left = amount - freight.plus(other).toDoubleForStatistics();
        if (!(left >= 0)) {
            return Optional.empty();
        }
        double factor = 1 + premiumPct.doubleValue() / HUNDRED.doubleValue();
        long minor = (long) Math.floor(left / factor * Math.pow(10, digits)) + 1;
        while (minor >= 0 && outlay(new Money(minor, currency)).toDoubleForStatistics() > amount) {
            minor--;
        }
        return minor < 0 ? Optional.empty() : Optional.of(new Money(minor, currency));
    }
}
