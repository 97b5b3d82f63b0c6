package org.salvedge.stats;

/**
 * Expected gain of looking before a choice between taking an uncertain sum and leaving it, where what is seen moves the expected
 * sum by a normal amount.
 *
 * <p>Source: H. Raiffa and R. Schlaifer, "Applied Statistical Decision Theory" (1961), sections 5.4 and 5.5 (two-action problems
 * with linear values; unit normal linear-loss integral).
 */
public final class LookGain {
    private LookGain() {}

    /** L(d) = density(d) - d x P(Z > d). */
    public static double unitLoss(double d) {
        return Normals.density(d) - d * Normals.above(d);
    }

    /**
     * @param mean expected sum, less its price, before looking
     * @param sd standard deviation of the expected sum after looking, seen from before
     * @return never negative
     */
    public static double of(double mean, double sd) {
        return sd > 0 ? sd * unitLoss(Math.abs(mean) / sd) : 0;
    }
}
