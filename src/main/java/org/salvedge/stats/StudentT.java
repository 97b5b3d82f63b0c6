package org.salvedge.stats;

import org.apache.commons.statistics.distribution.TDistribution;

/** Student's t distribution. Source: Student, "The probable error of a mean", Biometrika 6 (1908) 1-25. */
public final class StudentT {
    private StudentT() {}

    /** Chance of a value at least this far from 0 on either side. */
    public static double twoSided(double t, double degreesOfFreedom) {
        return Math.min(1, 2 * TDistribution.of(degreesOfFreedom).survivalProbability(Math.abs(t)));
    }

    /** Half-width, in standard errors, of a two-sided interval of this level. */
    public static double halfWidth(double level, double degreesOfFreedom) {
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("level " + level + " is not between 0 and 1");
        }
        return TDistribution.of(degreesOfFreedom).inverseSurvivalProbability((1 - level) / 2);
    }
}
