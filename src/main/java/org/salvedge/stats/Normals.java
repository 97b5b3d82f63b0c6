package org.salvedge.stats;

import org.apache.commons.statistics.distribution.NormalDistribution;

/** The standard normal distribution. */
final class Normals {
    private static final NormalDistribution STANDARD = NormalDistribution.of(0, 1);

    private static final double FAR = 30;
    private static final double ROOT_TWO_PI = Math.sqrt(2 * Math.PI);

    private Normals() {}

    static double density(double x) {
        return STANDARD.density(x);
    }

    /** P(Z <= x). */
    static double below(double x) {
        return STANDARD.cumulativeProbability(x);
    }

    /** P(Z > x), accurate in the tail. */
    static double above(double x) {
        return STANDARD.survivalProbability(x);
    }

    static double quantile(double p) {
        return STANDARD.inverseCumulativeProbability(p);
    }

    /** The half-width, in standard deviations, of a two-sided interval of this level: 1.95996 at 0.95. */
    static double halfWidth(double level) {
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("level " + level + " is not between 0 and 1");
        }
        return STANDARD.inverseSurvivalProbability((1 - level) / 2);
    }

    /** The logarithm of P(Z > x), also where that is too small for a double. */
    static double logAbove(double x) {
        return x < FAR
                ? Math.log(above(x))
                : -x * x / 2 - Math.log(x * ROOT_TWO_PI) + Math.log1p(-1 / (x * x) * (1 - 3 / (x * x)));
    }

    /** Density at x over P(Z > x), the inverse of Mills' ratio; far out by its asymptotic series. */
    static double hazard(double x) {
        return x < FAR ? density(x) / above(x) : x / (1 - 1 / (x * x) * (1 - 3 / (x * x)));
    }
}
