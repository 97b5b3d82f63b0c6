package org.salvedge.stats;

import org.apache.commons.statistics.distribution.TDistribution;

/**
 * The mean of a log-normal sample by way of its logarithms, with D. R. Cox's interval.
 *
 * <p>Sources: C. E. Land, "An evaluation of approximate confidence interval estimation methods for lognormal means", Technometrics
 * 14 (1972) 145-158 (Cox's method); U. Olsson, "Confidence intervals for the mean of a log-normal distribution", Journal of
 * Statistics Education 13(1) (2005) (modified: Student's t for the normal quantile).
 *
 * @param n size of the sample, at least 2
 * @param logMean mean of the natural logarithms
 * @param logVariance their variance, with divisor n - 1
 */
public record LogNormalMean(long n, double logMean, double logVariance) {
    public LogNormalMean {
        if (n < 2 || !(logVariance >= 0)) {
            throw new IllegalArgumentException(n + " logarithms with variance " + logVariance);
        }
    }

    /** exp(mean + variance / 2). */
    public double point() {
        return Math.exp(logMean + logVariance / 2);
    }

    public Interval cox(double level) {
        return interval(Normals.halfWidth(level));
    }

    /** Wider in small samples: what to use below some 50. */
    public Interval modifiedCox(double level) {
        return interval(TDistribution.of(n - 1.0).inverseSurvivalProbability((1 - level) / 2));
    }

    private Interval interval(double quantile) {
        double se = Math.sqrt(logVariance / n + logVariance * logVariance / (2 * (n - 1.0)));
        double factor = Math.exp(quantile * se);
        return new Interval(point() / factor, point() * factor);
    }
}
