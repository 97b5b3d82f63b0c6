package org.salvedge.stats;

import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.sampling.distribution.AhrensDieterMarsagliaTsangGammaSampler;
import org.apache.commons.rng.sampling.distribution.TSampler;
import org.apache.commons.rng.sampling.distribution.ZigguratSampler;

/**
 * Random draws from one stream. Chances with tiny parameters are drawn by way of logarithms, where the plain ratio of gamma draws is
 * 0/0.
 *
 * <p>Sources: L. Devroye, "Non-Uniform Random Variate Generation" (1986), chapters IX.3 (gamma below shape 1 by that of shape + 1), IX.4
 * (beta by gamma) and XI.4 (Dirichlet); the generators are those of Apache Commons RNG.
 */
public final class Draws {
    private final UniformRandomProvider random;
    private final ZigguratSampler.NormalizedGaussian normal;

    public Draws(UniformRandomProvider random) {
        this.random = random;
        normal = ZigguratSampler.NormalizedGaussian.of(random);
    }

    /** From 0 to 1, not including 1. */
    public double uniform() {
        return random.nextDouble();
    }

    /** From 0 to bound - 1. */
    public int index(int bound) {
        return random.nextInt(bound);
    }

    public boolean happens(double chance) {
        return random.nextDouble() < chance;
    }

    /** Standard normal. */
    public double normal() {
        return normal.sample();
    }

    public double logNormal(double mu, double sigma) {
        return Math.exp(mu + sigma * normal());
    }

    /** Student's t. */
    public double studentT(double degreesOfFreedom) {
        return TSampler.of(random, degreesOfFreedom).sample();
    }

    /** Gamma with scale 1. */
    public double gamma(double shape) {
        return AhrensDieterMarsagliaTsangGammaSampler.of(random, shape, 1).sample();
    }

    private double logGamma(double shape) {
        if (shape >= 1) {
            return Math.log(gamma(shape));
        }
        // 1 - uniform is never 0.
        return Math.log(gamma(shape + 1)) + Math.log(1 - random.nextDouble()) / shape;
    }

    /** A chance from a beta distribution. */
    public double beta(double alpha, double beta) {
        if (alpha >= 1 && beta >= 1) {
            double a = gamma(alpha);
            return a / (a + gamma(beta));
        }
        return 1 / (1 + Math.exp(logGamma(beta) - logGamma(alpha)));
    }

    /**
     * Chances of categories that add up to 1.
     *
     * @param alphas above 0
     * @param chances where they are put; may be the same array
     */
    public void dirichlet(double[] alphas, double[] chances) {
        double most = Double.NEGATIVE_INFINITY;
        for (int k = 0; k < alphas.length; k++) {
            chances[k] = logGamma(alphas[k]);
            most = Math.max(most, chances[k]);
        }
        double sum = 0;
        for (int k = 0; k < chances.length; k++) {
            chances[k] = Math.exp(chances[k] - most);
            sum += chances[k];
        }
        for (int k = 0; k < chances.length; k++) {
            chances[k] /= sum;
        }
    }

    /** A category with these chances, which add up to 1. */
    public int category(double[] chances) {
        double u = random.nextDouble();
        for (int k = 0; k < chances.length - 1; k++) {
            u -= chances[k];
            if (u < 0) {
                return k;
            }
        }
        return chances.length - 1;
    }

    /** Successes in n trials of this chance. */
    public int binomial(int n, double chance) {
        int k = 0;
        for (int i = 0; i < n; i++) {
            k += random.nextDouble() < chance ? 1 : 0;
        }
        return k;
    }
}
