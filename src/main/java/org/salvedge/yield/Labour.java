package org.salvedge.yield;

import java.math.BigDecimal;
import java.math.BigInteger;
import java.util.Currency;

/** What bench time costs, exactly: rate x minutes / 60, half up to the minor unit of the currency. */
final class Labour {
    private static final BigInteger MICROS_AN_HOUR = BigInteger.valueOf(60_000_000);

    private final BigInteger numerator;
    private final BigInteger denominator;
    /** The same as whole numbers, where twice the product fits; else 0. */
    private final long factor;

    private final long divisor;
    private final long mostMicros;

    /** @param rate per hour, in units of the currency */
    Labour(BigDecimal rate, Currency currency) {
        BigDecimal minor = rate.movePointRight(Math.max(0, currency.getDefaultFractionDigits()));
        BigDecimal whole = minor.scale() < 0 ? minor.setScale(0) : minor;
        BigInteger top = whole.unscaledValue();
        BigInteger bottom = MICROS_AN_HOUR.multiply(BigInteger.TEN.pow(whole.scale()));
        BigInteger common = top.signum() == 0 ? bottom : top.gcd(bottom);
        numerator = top.divide(common);
        denominator = bottom.divide(common);
        boolean small = numerator.bitLength() < Integer.SIZE && denominator.bitLength() < Long.SIZE - 3;
        factor = small ? numerator.longValue() : 0;
        divisor = small ? denominator.longValue() : 1;
        mostMicros = (Long.MAX_VALUE / 4) / Math.max(1, factor);
    }

    /**
     * @param micros millionths of a minute, not negative
     * @return minor units
     */
    long minor(long micros) {
        if (micros <= mostMicros && (factor > 0 || numerator.signum() == 0)) {
            return (2 * factor * micros + divisor) / (2 * divisor);
        }
        BigInteger two = BigInteger.TWO;
        return numerator
                .multiply(two)
                .multiply(BigInteger.valueOf(micros))
                .add(denominator)
                .divide(denominator.multiply(two))
                .longValueExact();
    }
}
