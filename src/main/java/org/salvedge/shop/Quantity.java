package org.salvedge.shop;

import java.math.BigDecimal;
import java.math.RoundingMode;

/**
 * An exact decimal that is not money, kept in whole millionths: minutes, hours, inches. The unit is that of the field it
 * stands in.
 */
public record Quantity(long millionths) implements Comparable<Quantity> {
    public static final long ONE = 1_000_000;
    private static final int DIGITS = 6;

    /** @throws ArithmeticException if the number has more than six decimals or is too large */
    public static Quantity of(BigDecimal number) {
        return new Quantity(number.movePointRight(DIGITS)
                .setScale(0, RoundingMode.UNNECESSARY)
                .longValueExact());
    }

    public static Quantity of(long whole) {
        return new Quantity(Math.multiplyExact(whole, ONE));
    }

    public static Quantity parse(String text) {
        return of(new BigDecimal(text));
    }

    public BigDecimal number() {
        return BigDecimal.valueOf(millionths, DIGITS);
    }

    public double toDouble() {
        return millionths / (double) ONE;
    }

    public boolean isNegative() {
        return millionths < 0;
    }

    @Override
    public int compareTo(Quantity other) {
        return Long.compare(millionths, other.millionths);
    }

    /** Decimal text without trailing zeros, as the history package writes it: 12.5, 55. */
    @Override
    public String toString() {
        if (millionths % ONE == 0) {
            return Long.toString(millionths / ONE);
        }
        return number().stripTrailingZeros().toPlainString();
    }
}
