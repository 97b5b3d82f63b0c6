package org.salvedge.stats;

import java.util.Arrays;

/**
 * A level in several dimensions that stays as it is from one observation to the next, but at each step may with a small chance
 * be drawn anew: what is known of it after a sequence of noisy observations.
 *
 * <p>Method: Adams and MacKay, "Bayesian online changepoint detection" (2007), arXiv 0710.3742, with normal levels of known
 * variance. All dimensions change together.
 */
public final class ChangePoints {
    private static final int MOST_RUNS = 60;

    private final double hazard;
    private final double[] variance;
    private final int dimensions;
    private int runs;
    private double[] weight = new double[MOST_RUNS + 2];
    private final double[][] mean;
    private final double[][] precision;
    private double logLikelihood;

    /**
     * @param hazard chance of a change before each observation but the first
     * @param variance of the first level, by dimension; its mean is 0
     * @param variesAnew the same of a level after a change
     */
    public ChangePoints(double hazard, double[] variance, double[] variesAnew) {
        this.hazard = hazard;
        this.variance = variesAnew.clone();
        dimensions = variance.length;
        mean = new double[MOST_RUNS + 2][dimensions];
        precision = new double[MOST_RUNS + 2][dimensions];
        open(0, 1);
        for (int d = 0; d < dimensions; d++) {
            precision[0][d] = 1 / variance[d];
        }
        runs = 1;
    }

    private void open(int run, double w) {
        weight[run] = w;
        for (int d = 0; d < dimensions; d++) {
            mean[run][d] = 0;
            precision[run][d] = 1 / variance[d];
        }
    }

    /**
     * Takes an observation.
     *
     * @param observed by dimension
     * @param noise its variance by dimension; infinite where nothing was observed
     */
    public void observe(double[] observed, double[] noise) {
        double total = 0;
        double[] log = new double[runs];
        double highest = Double.NEGATIVE_INFINITY;
        for (int r = 0; r < runs; r++) {
            double sum = Math.log(weight[r]);
            for (int d = 0; d < dimensions; d++) {
                if (noise[d] < Double.POSITIVE_INFINITY) {
                    double v = noise[d] + 1 / precision[r][d];
                    double e = observed[d] - mean[r][d];
                    sum -= 0.5 * (Math.log(2 * Math.PI * v) + e * e / v);
                    double p = 1 / noise[d];
                    mean[r][d] = (mean[r][d] * precision[r][d] + observed[d] * p) / (precision[r][d] + p);
                    precision[r][d] += p;
                }
            }
            log[r] = sum;
            highest = Math.max(highest, sum);
        }
        for (int r = 0; r < runs; r++) {
            weight[r] = Math.exp(log[r] - highest);
            total += weight[r];
        }
        logLikelihood += highest + Math.log(total);
        for (int r = 0; r < runs; r++) {
            weight[r] = Math.max(weight[r] / total, 1e-300);
        }
        if (runs > MOST_RUNS) {
            forget();
        }
        if (hazard > 0) {
            for (int r = 0; r < runs; r++) {
                weight[r] *= 1 - hazard;
            }
            open(runs, hazard);
            runs++;
        }
    }

    /** Gives the least likely run's weight to the likeliest. */
    private void forget() {
        int least = 0;
        int most = 0;
        for (int r = 1; r < runs; r++) {
            if (weight[r] < weight[least]) {
                least = r;
            }
            if (weight[r] > weight[most]) {
                most = r;
            }
        }
        weight[most] += weight[least];
        int last = runs - 1;
        for (int r = least; r < last; r++) {
            weight[r] = weight[r + 1];
            double[] m = mean[r];
            mean[r] = mean[r + 1];
            mean[r + 1] = m;
            double[] p = precision[r];
            precision[r] = precision[r + 1];
            precision[r + 1] = p;
        }
        runs--;
    }

    /** Log density of all observations so far. */
    public double logLikelihood() {
        return logLikelihood;
    }

    /** Number of hypotheses about when the level last changed. */
    public int hypotheses() {
        return runs;
    }

    /** Chance of a hypothesis, for the level at the next observation. */
    public double weight(int hypothesis) {
        return weight[hypothesis];
    }

    /** Expected level under a hypothesis. */
    public double mean(int hypothesis, int dimension) {
        return mean[hypothesis][dimension];
    }

    /** Variance of the level under a hypothesis. */
    public double variance(int hypothesis, int dimension) {
        return 1 / precision[hypothesis][dimension];
    }

    /** Expected level at the next observation. */
    public double mean(int dimension) {
        double sum = 0;
        for (int r = 0; r < runs; r++) {
            sum += weight[r] * mean[r][dimension];
        }
        return sum;
    }

    /** Chances of the hypotheses, in the order in which their runs began. */
    public double[] weights() {
        return Arrays.copyOf(weight, runs);
    }
}
