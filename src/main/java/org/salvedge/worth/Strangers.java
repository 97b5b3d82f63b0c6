package org.salvedge.worth;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * Families of a lot that the history does not know for certain: how many there may be, what their asking prices say of them, and
 * what sets without a model may be.
 *
 * @param count families that may never have been seen
 * @param priceMean by such a family: log price beyond what maker and size let expect
 * @param priceShare of the variance of that, the part that asking prices leave open
 * @param mixtures what a set without a model may be
 */
record Strangers(int count, double[] priceMean, double[] priceShare, Families.Shares[] mixtures) {
    static final Strangers NONE = new Strangers(0, new double[0], new double[0], new Families.Shares[0]);
    static final int EFFECTS = 5;

    /** Whether each is as it was guessed: an even number between 0 and 1, to be held against the chance; drawn anew. */
    double[] chances(SplittableRandom random) {
        double[] u = new double[count];
        Arrays.setAll(u, i -> random.nextDouble());
        return u;
    }

    /** Effects of each in standard units: damage, price, maker, success, success with one fault; drawn anew. */
    double[][] effects(SplittableRandom random) {
        double[][] z = new double[count][EFFECTS];
        for (double[] of : z) {
            Arrays.setAll(of, i -> random.nextGaussian());
        }
        return z;
    }
}
