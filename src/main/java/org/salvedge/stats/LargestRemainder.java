package org.salvedge.stats;

import java.math.BigInteger;

/**
 * Shares of a whole number in proportion to exact weights, adding up to it exactly.
 *
 * <p>Method: largest remainder with the Hare quota (Hamilton). Balinski and Young, "Fair Representation" (1982), chapter 2.
 */
public final class LargestRemainder {
    private LargestRemainder() {}

    /**
     * @param total what is shared out; may be negative, then the shares of its absolute value change sign
     * @param weights at least one, none negative; all zero counts as all equal
     * @return one share for each weight, in order; equal remainders go to the earlier one
     */
    public static long[] shares(long total, BigInteger[] weights) {
        if (weights.length == 0) {
            throw new IllegalArgumentException("nobody to share with");
        }
        BigInteger sum = BigInteger.ZERO;
        for (BigInteger w : weights) {
            if (w.signum() < 0) {
                throw new IllegalArgumentException("negative weight " + w);
            }
            sum = sum.add(w);
        }
        boolean equal = sum.signum() == 0;
        BigInteger whole = equal ? BigInteger.valueOf(weights.length) : sum;
        BigInteger amount = BigInteger.valueOf(total).abs();
        int n = weights.length;
        long[] shares = new long[n];
        BigInteger[] remainders = new BigInteger[n];
        long given = 0;
        for (int i = 0; i < n; i++) {
            BigInteger[] qr =
                    amount.multiply(equal ? BigInteger.ONE : weights[i]).divideAndRemainder(whole);
            shares[i] = qr[0].longValueExact();
            remainders[i] = qr[1];
            given += shares[i];
        }
        Integer[] order = new Integer[n];
        for (int i = 0; i < n; i++) {
            order[i] = i;
        }
        java.util.Arrays.sort(order, (a, b) -> remainders[b].compareTo(remainders[a]));
        long left = amount.longValueExact() - given;
        for (int i = 0; i < left; i++) {
            shares[order[i]]++;
        }
        if (total < 0) {
            for (int i = 0; i < n; i++) {
                shares[i] = -shares[i];
            }
        }
        return shares;
    }

    /** As {@link #shares(long, BigInteger[])} for weights that fit a long. */
    public static long[] shares(long total, long... weights) {
        BigInteger[] exact = new BigInteger[weights.length];
        for (int i = 0; i < weights.length; i++) {
            exact[i] = BigInteger.valueOf(weights[i]);
        }
        return shares(total, exact);
    }
}
