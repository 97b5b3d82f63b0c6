package org.salvedge.stats;

/**
 * A beta distribution: what is believed of a chance. Successes and failures seen add to its parameters.
 *
 * <p>Source: A. Gelman et al., "Bayesian Data Analysis", 3rd ed. (2013), section 2.4.
 */
public record Beta(double alpha, double beta) {
    public Beta {
        if (!(alpha > 0 && beta > 0 && alpha < Double.POSITIVE_INFINITY && beta < Double.POSITIVE_INFINITY)) {
            throw new IllegalArgumentException("beta distribution with parameters " + alpha + ", " + beta);
        }
    }

    public static Beta ofMean(double mean, double size) {
        return new Beta(mean * size, (1 - mean) * size);
    }

    /** The belief after this many more successes and failures. */
    public Beta after(double successes, double failures) {
        return new Beta(alpha + successes, beta + failures);
    }

    public double mean() {
        return alpha / (alpha + beta);
    }

    public double variance() {
        return mean() * (1 - mean()) / (alpha + beta + 1);
    }

    public double quantile(double p) {
        return BetaQuantile.of(p, alpha, beta);
    }

    /** With equal tails. */
    public Interval interval(double level) {
        double tail = (1 - level) / 2;
        return new Interval(quantile(tail), 1 - BetaQuantile.of(tail, beta, alpha));
    }
}
