package org.salvedge.shop;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import org.salvedge.stats.LargestRemainder;

/**
 * An exact amount: whole minor units of one currency (ISO 4217: JPY none, EUR 2 digits, KWD 3). Never a binary fraction; what
 * is smaller than a minor unit is refused, and rounding happens only where a rounding mode is passed.
 */
public record Money(long minor, Currency currency) implements Comparable<Money> {

    /** @throws IllegalArgumentException for a currency without minor units, as XAU */
    public Money {
        if (currency.getDefaultFractionDigits() < 0) {
            throw new IllegalArgumentException(currency + " is not a currency that amounts are kept in");
        }
    }

    public static Money zero(Currency currency) {
        return new Money(0, currency);
    }

    /** @throws ArithmeticException if the amount has more digits than the currency */
    public static Money of(BigDecimal amount, Currency currency) {
        return of(amount, currency, RoundingMode.UNNECESSARY);
    }

    public static Money of(BigDecimal amount, Currency currency, RoundingMode rounding) {
        int digits = Math.max(0, currency.getDefaultFractionDigits());
        return new Money(amount.movePointRight(digits).setScale(0, rounding).longValueExact(), currency);
    }

    /** From decimal text such as {@code 12.50}, as in the history package. */
    public static Money parse(String text, Currency currency) {
        return of(new BigDecimal(text), currency);
    }

    public Money plus(Money other) {
        return new Money(Math.addExact(minor, same(other).minor), currency);
    }

    public Money minus(Money other) {
        return new Money(Math.subtractExact(minor, same(other).minor), currency);
    }

    public Money negated() {
        return new Money(Math.negateExact(minor), currency);
    }

    public Money times(BigDecimal factor, RoundingMode rounding) {
        return of(amount().multiply(factor), currency, rounding);
    }

    /** Shares in proportion to the weights, by largest remainder, earlier ones first; they add up to this exactly. */
    public List<Money> allocate(BigInteger... weights) {
        List<Money> shares = new ArrayList<>(weights.length);
        for (long share : LargestRemainder.shares(minor, weights)) {
            shares.add(new Money(share, currency));
        }
        return shares;
    }

    /** The amount with all the digits of its currency: 12.50, never 12.5. */
    public BigDecimal amount() {
        return BigDecimal.valueOf(minor, Math.max(0, currency.getDefaultFractionDigits()));
    }

    /** For statistics only: the last step before an estimate, never back into a ledger. */
    public double toDoubleForStatistics() {
        return amount().doubleValue();
    }

    public boolean isNegative() {
        return minor < 0;
    }

    public boolean isZero() {
        return minor == 0;
    }

    private Money same(Money other) {
        if (!currency.equals(other.currency)) {
            throw new IllegalArgumentException("cannot mix " + currency + " and " + other.currency);
        }
        return other;
    }

    @Override
    public int compareTo(Money other) {
        return Long.compare(minor, same(other).minor);
    }

    /** Plain decimal text without the currency, as the history package writes it. */
    @Override
    public String toString() {
        return amount().toPlainString();
    }
}
