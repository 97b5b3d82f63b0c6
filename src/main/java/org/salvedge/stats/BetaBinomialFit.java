package org.salvedge.stats;

import org.apache.commons.numbers.combinatorics.LogBinomialCoefficient;
import org.apache.commons.numbers.gamma.Digamma;
import org.apache.commons.numbers.gamma.LogBeta;
import org.apache.commons.numbers.gamma.Trigamma;

/**
 * Fits of a beta distribution of chances to successes in samples.
 *
 * <p>Sources: J. G. Skellam, JRSS B 10 (1948) 257-261 (moments and maximum likelihood); R. C. Tripathi, R. C. Gupta and
 * J. Gurland, "Estimation of parameters in the beta binomial model", Annals of the Institute of Statistical Mathematics 46 (1994)
 * 317-331. Maximum likelihood by Newton's method on the logarithms of the mean's odds and of alpha + beta, with halved steps, since
 * the likelihood is a ridge along alpha + beta.
 *
 * @param chance the fitted distribution
 * @param logLikelihood with the binomial coefficients
 * @param interior whether the maximum is a true one; false where the samples differ no more than by chance, so that alpha + beta
 *     stands at its bound of 1e8
 */
public record BetaBinomialFit(Beta chance, double logLikelihood, boolean interior) {
    private static final double MOST_LOG_SIZE = Math.log(1e8);
    private static final int MOST_STEPS = 200;

    /** The mean of the fitted distribution. */
    public double mean() {
        return chance.mean();
    }

    /** Correlation of two trials of one sample. */
    public double correlation() {
        return 1 / (chance.alpha() + chance.beta() + 1);
    }

    /** With two parameters. */
    public double aic() {
        return 4 - 2 * logLikelihood;
    }

    /**
     * Moments of samples of one size; frequency[k] samples had k successes in frequency.length - 1 trials.
     *
     * @throws IllegalArgumentException where the samples differ no more than by chance
     */
    public static Beta moments(double... frequency) {
        int n = frequency.length - 1;
        double all = 0;
        double first = 0;
        double second = 0;
        for (int k = 0; k <= n; k++) {
            all += frequency[k];
            first += frequency[k] * k;
            second += frequency[k] * k * k;
        }
        double m1 = first / all;
        double m2 = second / all;
        double divisor = n * (m2 / m1 - m1 - 1) + m1;
        if (!(divisor > 0)) {
            throw new IllegalArgumentException("the samples differ no more than by chance: no beta distribution fits");
        }
        return new Beta((n * m1 - m2) / divisor, (n - m1) * (n - m2 / m1) / divisor);
    }

    /** Maximum likelihood, each sample once. */
    public static BetaBinomialFit of(int[] successes, int[] trials) {
        double[] once = new double[trials.length];
        java.util.Arrays.fill(once, 1);
        return of(successes, trials, once);
    }

    /**
     * Maximum likelihood.
     *
     * @param times how often each row of successes and trials occurred
     * @throws IllegalArgumentException where all trials went the same way, or none were made
     */
    public static BetaBinomialFit of(int[] successes, int[] trials, double[] times) {
        double ones = 0;
        double all = 0;
        double coefficients = 0;
        for (int i = 0; i < trials.length; i++) {
            ones += times[i] * successes[i];
            all += times[i] * trials[i];
            coefficients += times[i] * LogBinomialCoefficient.value(trials[i], successes[i]);
        }
        if (!(ones > 0 && ones < all)) {
            throw new IllegalArgumentException(ones + " successes in " + all + " trials: no likelihood to maximise");
        }
        Point at = new Point(successes, trials, times, Math.log(ones / (all - ones)), Math.log(20));
        for (int i = 0; i < MOST_STEPS; i++) {
            Point next = at.newton();
            boolean done = Math.abs(next.logOdds - at.logOdds) < 1e-12 && Math.abs(next.logSize - at.logSize) < 1e-10;
            at = next;
            if (done) {
                break;
            }
        }
        return new BetaBinomialFit(at.beta(), at.value + coefficients, at.logSize < MOST_LOG_SIZE);
    }

    /** Log-likelihood, gradient and curvature at one mean and size. */
    private static final class Point {
        final int[] y;
        final int[] n;
        final double[] times;
        final double logOdds;
        final double logSize;
        final double value;
        final double[] gradient = new double[2];
        double curvatureOdds;
        double curvatureMixed;
        double curvatureSize;

        Point(int[] y, int[] n, double[] times, double logOdds, double logSize) {
            this.y = y;
            this.n = n;
            this.times = times;
            this.logOdds = logOdds;
            this.logSize = logSize;
            double a = beta().alpha();
            double b = beta().beta();
            double base = LogBeta.value(a, b);
            double sum = 0;
            double ga = 0;
            double gb = 0;
            double haa = 0;
            double hbb = 0;
            double hab = 0;
            for (int i = 0; i < y.length; i++) {
                double t = times[i];
                double both = Digamma.value(a + b) - Digamma.value(n[i] + a + b);
                double bothSlope = Trigamma.value(a + b) - Trigamma.value(n[i] + a + b);
                sum += t * (LogBeta.value(y[i] + a, n[i] - y[i] + b) - base);
                ga += t * (Digamma.value(y[i] + a) - Digamma.value(a) + both);
                gb += t * (Digamma.value(n[i] - y[i] + b) - Digamma.value(b) + both);
                haa += t * (Trigamma.value(y[i] + a) - Trigamma.value(a) + bothSlope);
                hbb += t * (Trigamma.value(n[i] - y[i] + b) - Trigamma.value(b) + bothSlope);
                hab += t * bothSlope;
            }
            value = sum;
            // a = size * mean, b = size * (1 - mean), in log odds and log size.
            double size = a + b;
            double p = a / size;
            double q = b / size;
            double slope = size * p * q;
            gradient[0] = slope * (ga - gb);
            gradient[1] = a * ga + b * gb;
            curvatureOdds = slope * slope * (haa - 2 * hab + hbb) + slope * (q - p) * (ga - gb);
            curvatureMixed = slope * (a * (haa - hab) + b * (hab - hbb)) + slope * (ga - gb);
            curvatureSize = a * a * haa + 2 * a * b * hab + b * b * hbb + gradient[1];
        }

        Beta beta() {
            double size = Math.exp(logSize);
            double p = 1 / (1 + Math.exp(-logOdds));
            return new Beta(size * p, size / (1 + Math.exp(logOdds)));
        }

        Point newton() {
            double determinant = curvatureOdds * curvatureSize - curvatureMixed * curvatureMixed;
            double stepOdds;
            double stepSize;
            if (curvatureOdds < 0 && determinant > 0) {
                stepOdds = -(curvatureSize * gradient[0] - curvatureMixed * gradient[1]) / determinant;
                stepSize = -(curvatureOdds * gradient[1] - curvatureMixed * gradient[0]) / determinant;
            } else {
                stepOdds = gradient[0] / Math.max(1e-9, Math.abs(curvatureOdds));
                stepSize = Math.signum(gradient[1]);
            }
            stepSize = Math.max(-2, Math.min(2, stepSize));
            for (double share = 1; share > 1e-9; share /= 2) {
                double to = Math.min(MOST_LOG_SIZE, logSize + share * stepSize);
                Point next = new Point(y, n, times, logOdds + share * stepOdds, to);
                if (next.value >= value) {
                    return next;
                }
            }
            return this;
        }
    }
}
