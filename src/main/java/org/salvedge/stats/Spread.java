package org.salvedge.stats;

import java.util.Arrays;

/**
 * Proportions observed in samples of several groups, and how alike the trials of one sample are: their intra-class
 * correlation rho, one for all groups, each group having its own mean.
 *
 * <p>A sample of n trials has variance p(1-p)(1+(n-1)rho)/n, so it counts as n/(1+(n-1)rho) independent ones (L. Kish,
 * "Survey Sampling" (1965)). The estimate solves the moment equation of J. C. Kleinman, "Proportions with
 * extraneous variance: single and independent samples", JASA 68 (1973) 46-54, with those weights, pooled
 * over the groups; p(1-p) comes from pairs of trials of different samples, which is free of rho and unbiased also in small
 * groups. Samples of one trial carry no information on rho and are left out of the equation.
 */
final class Spread {
    private static final double MOST = 0.95;

    private final int groups;
    private final int size;
    private final int[] group;
    private final double[] trials;
    private final double[] count;
    private final double[] sum;
    private final double[] squares;

    private Spread(Builder b) {
        groups = b.groups;
        size = b.size;
        group = b.group;
        trials = b.trials;
        count = b.count;
        sum = b.sum;
        squares = b.squares;
    }

    /** Collects samples; those of equal size of one group may come summed. */
    static final class Builder {
        private final int groups;
        private int size;
        private int[] group = new int[16];
        private double[] trials = new double[16];
        private double[] count = new double[16];
        private double[] sum = new double[16];
        private double[] squares = new double[16];

        Builder(int groups) {
            this.groups = groups;
        }

        void add(int ofGroup, double withTrials, double samples, double sumOfMeans, double sumOfSquaredMeans) {
            if (size == group.length) {
                int more = size * 2;
                group = Arrays.copyOf(group, more);
                trials = Arrays.copyOf(trials, more);
                count = Arrays.copyOf(count, more);
                sum = Arrays.copyOf(sum, more);
                squares = Arrays.copyOf(squares, more);
            }
            group[size] = ofGroup;
            trials[size] = withTrials;
            count[size] = samples;
            sum[size] = sumOfMeans;
            squares[size] = sumOfSquaredMeans;
            size++;
        }

        void add(int ofGroup, double withTrials, double mean) {
            add(ofGroup, withTrials, 1, mean, mean * mean);
        }

        Spread build() {
            return new Spread(this);
        }
    }

    static double effective(double trials, double rho) {
        return trials <= 0 ? 0 : trials / (1 + (trials - 1) * rho);
    }

    /** Weighted means and effective numbers of trials of the groups; mean 0 where there are none. */
    static final class Means implements java.io.Serializable {
        final double[] mean;
        final double[] effective;

        Means(double[] mean, double[] effective) {
            this.mean = mean;
            this.effective = effective;
        }
    }

    Means means(double rho) {
        double[] mean = new double[groups];
        double[] total = new double[groups];
        for (int i = 0; i < size; i++) {
            double w = effective(trials[i], rho);
            mean[group[i]] += w * sum[i];
            total[group[i]] += w * count[i];
        }
        for (int g = 0; g < groups; g++) {
            if (total[g] > 0) {
                // Rounding must not carry a mean out of [0, 1].
                mean[g] = Math.min(1, mean[g] / total[g]);
            }
        }
        return new Means(mean, total);
    }

    /**
     * Correlation within samples, between 0 and 0.95, from the samples and a prior guess, each weighted by its information: a
     * sample of n trials has ((n-1)/(1+(n-1)rho))^2/2 (normal theory), the guess that of as many endless samples as stated.
     */
    double correlation(double guess, double guessSamples) {
        double[] variance = binomialVariances(guess);
        double moments = moments(variance);
        double at = (moments + guess) / 2;
        Means means = means(at);
        double information = 0;
        for (int i = 0; i < size; i++) {
            if (informative(i)) {
                double slope = (trials[i] - 1) / (1 + (trials[i] - 1) * at);
                double free = 1 - effective(trials[i], at) / means.effective[group[i]];
                information += count[i] * free * slope * slope / 2;
            }
        }
        double prior = guessSamples / (2 * guess * guess);
        return (information * moments + prior * guess) / (information + prior);
    }

    /** The root of the moment equation, 0 where the samples differ no more than by chance. */
    double moments(double[] variance) {
        double low = 0;
        double atLow = excess(low, variance);
        if (atLow <= 0) {
            return 0;
        }
        double high = MOST;
        double atHigh = excess(high, variance);
        if (atHigh >= 0) {
            return high;
        }
        // Regula falsi, Illinois variant: M. Dowell and P. Jarratt, BIT 11 (1971) 168-174.
        int side = 0;
        for (int i = 0; i < 60 && high - low > 1e-10; i++) {
            double x = (low * atHigh - high * atLow) / (atHigh - atLow);
            double y = excess(x, variance);
            if (Math.abs(y) < 1e-12 * size) {
                return x;
            }
            if (y > 0) {
                low = x;
                atLow = y;
                atHigh = side > 0 ? atHigh / 2 : atHigh;
                side = 1;
            } else {
                high = x;
                atHigh = y;
                atLow = side < 0 ? atLow / 2 : atLow;
                side = -1;
            }
        }
        return (low + high) / 2;
    }

    private double excess(double rho, double[] variance) {
        Means m = means(rho);
        double excess = 0;
        for (int i = 0; i < size; i++) {
            if (informative(i)) {
                int g = group[i];
                double w = effective(trials[i], rho);
                double p = m.mean[g];
                double free = count[i] * (1 - w / m.effective[g]);
                excess += w * (squares[i] - 2 * p * sum[i] + count[i] * p * p) - free * variance[g];
            }
        }
        return excess;
    }

    private boolean informative(int i) {
        return trials[i] > 1.5;
    }

    /** p(1-p) of each group, from pairs of trials of different samples, weighted as at the guessed correlation. */
    double[] binomialVariances(double guess) {
        double[] ones = new double[groups];
        double[] all = new double[groups];
        double[] own = new double[groups];
        double[] ownAll = new double[groups];
        for (int i = 0; i < size; i++) {
            double w = effective(trials[i], guess);
            int g = group[i];
            ones[g] += w * sum[i];
            all[g] += w * count[i];
            own[g] += w * w * (sum[i] - squares[i]);
            ownAll[g] += w * w * count[i];
        }
        double[] variance = new double[groups];
        for (int g = 0; g < groups; g++) {
            double pairs = all[g] * all[g] - ownAll[g];
            if (pairs > 1e-9 * ownAll[g]) {
                variance[g] = Math.max(0, (ones[g] * (all[g] - ones[g]) - own[g]) / pairs);
            }
        }
        return variance;
    }
}
