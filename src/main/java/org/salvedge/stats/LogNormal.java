package org.salvedge.stats;

/**
 * The log-normal distribution: the natural logarithm is normal with mean mu and standard deviation sigma.
 *
 * <p>Source: N. L. Johnson, S. Kotz and N. Balakrishnan, "Continuous Univariate Distributions", vol. 1, 2nd ed. (1994), chapter 14.
 */
public record LogNormal(double mu, double sigma) implements java.io.Serializable {
    public LogNormal {
        if (!(sigma >= 0) || Double.isNaN(mu)) {
            throw new IllegalArgumentException("log-normal with mu = " + mu + ", sigma = " + sigma);
        }
    }

    public double mean() {
        return Math.exp(mu + sigma * sigma / 2);
    }

    public double median() {
        return Math.exp(mu);
    }

    public double mode() {
        return Math.exp(mu - sigma * sigma);
    }

    /** Standard deviation over mean. */
    public double variation() {
        return Math.sqrt(Math.expm1(sigma * sigma));
    }

    public double sd() {
        return mean() * variation();
    }

    public double quantile(double p) {
        return Math.exp(mu + sigma * Normals.quantile(p));
    }

    /** P(X <= x). */
    public double below(double x) {
        if (x <= 0) {
            return 0;
        }
        return sigma == 0 ? (Math.log(x) >= mu ? 1 : 0) : Normals.below((Math.log(x) - mu) / sigma);
    }

    /** Mean of min(X, limit): the minutes spent if one stops at the limit. */
    public double limitedMean(double limit) {
        if (limit <= 0) {
            return 0;
        }
        double z = sigma == 0
                ? (Math.log(limit) >= mu ? Double.POSITIVE_INFINITY : Double.NEGATIVE_INFINITY)
                : (Math.log(limit) - mu) / sigma;
        return mean() * Normals.below(z - sigma) + limit * Normals.above(z);
    }
}
