package org.salvedge.stats;

import java.util.function.DoubleUnaryOperator;

/**
 * Selling within a number of offers that come one by one and do not come back: with n left, take one that beats the value of n - 1.
 *
 * <p>Source: L. Moser, "On a problem of Cayley", Scripta Mathematica 22 (1956) 289-292; T. S. Ferguson, "Optimal Stopping and
 * Applications", chapter 2.
 */
public final class OfferStopping {
    private OfferStopping() {}

    /**
     * Value of having 1, 2, ... offers left.
     *
     * @param offers the largest number of them
     * @param expectedMaximum of an offer and a given amount: E max(X, z)
     * @param waiting cost of each wait for another offer
     */
    public static double[] values(int offers, DoubleUnaryOperator expectedMaximum, double waiting) {
        if (offers < 1) {
            throw new IllegalArgumentException(offers + " offers");
        }
        double[] values = new double[offers];
        values[0] = expectedMaximum.applyAsDouble(Double.NEGATIVE_INFINITY);
        for (int n = 1; n < offers; n++) {
            values[n] = expectedMaximum.applyAsDouble(values[n - 1] - waiting);
        }
        return values;
    }
}
