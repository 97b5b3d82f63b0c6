package org.salvedge.stats;

import org.apache.commons.numbers.combinatorics.LogBinomialCoefficient;
import org.apache.commons.numbers.gamma.LogBeta;

/**
 * Successes in n trials whose chance is itself drawn from a beta distribution.
 *
 * <p>Source: J. G. Skellam, "A probability distribution derived from the binomial distribution by regarding the probability of
 * success as variable between the sets of trials", JRSS B 10 (1948) 257-261.
 */
public record BetaBinomial(int n, Beta chance) {
    public BetaBinomial {
        if (n < 0) {
            throw new IllegalArgumentException(n + " trials");
        }
    }

    public double mean() {
        return n * chance.mean();
    }

    /** Correlation of two trials of one set: 1 / (alpha + beta + 1). */
    public double correlation() {
        return 1 / (chance.alpha() + chance.beta() + 1);
    }

    public double variance() {
        return n * chance.mean() * (1 - chance.mean()) * (1 + (n - 1) * correlation());
    }

    /** P(X = k). */
    public double probability(int k) {
        return Math.exp(logProbability(k));
    }

    public double logProbability(int k) {
        if (k < 0 || k > n) {
            return Double.NEGATIVE_INFINITY;
        }
        double a = chance.alpha();
        double b = chance.beta();
        return LogBinomialCoefficient.value(n, k) + LogBeta.value(k + a, n - k + b) - LogBeta.value(a, b);
    }

    /** P(X >= k). */
    public double atLeast(int k) {
        double sum = 0;
        for (int j = n; j >= Math.max(0, k); j--) {
            sum += probability(j);
        }
        return Math.min(1, sum);
    }
}
