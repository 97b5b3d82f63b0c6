package org.salvedge.stats;

/** Tails of the standard normal distribution. */
public final class Gaussian {
    private Gaussian() {}

    /** Chance of a value above z. */
    public static double above(double z) {
        return Normals.above(z);
    }

    /** The value that so large a share lies below. */
    public static double quantile(double p) {
        return Normals.quantile(p);
    }
}
