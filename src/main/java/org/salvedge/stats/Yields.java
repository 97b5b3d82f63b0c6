package org.salvedge.stats;

/**
 * Yields of steps in a row, and defects per million opportunities.
 *
 * <p>Source: T. Pyzdek and P. Keller, "The Six Sigma Handbook", 3rd ed. (2010), chapters 2 and 5 (rolled throughput yield, DPMO,
 * the shift of 1.5 standard deviations).
 */
public final class Yields {
    private static final double SHIFT = 1.5;
    private static final double MILLION = 1e6;

    private Yields() {}

    /** The product of the steps' yields: the chance to pass all of them at first try if they are independent. */
    public static double rolled(double... yields) {
        double product = 1;
        for (double y : yields) {
            if (!(y >= 0 && y <= 1)) {
                throw new IllegalArgumentException("yield " + y + " is not between 0 and 1");
            }
            product *= y;
        }
        return product;
    }

    /** Defects per million opportunities. */
    public static double dpmo(long defects, long units, int opportunitiesPerUnit) {
        return MILLION * defects / ((double) units * opportunitiesPerUnit);
    }

    /** The yield of a step with this many defects per million opportunities and one opportunity a unit. */
    public static double ofDpmo(double dpmo) {
        return 1 - dpmo / MILLION;
    }

    /** The share of units without a defect when a unit has this many on average, scattered as Poisson. */
    public static double ofDefectsPerUnit(double defectsPerUnit) {
        return Math.exp(-defectsPerUnit);
    }

    /** Defects per million at a sigma level, by the convention of a mean that drifts 1.5 standard deviations. */
    public static double dpmoAtSigma(double sigmaLevel) {
        return MILLION * Normals.above(sigmaLevel - SHIFT);
    }
}
