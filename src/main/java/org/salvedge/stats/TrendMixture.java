package org.salvedge.stats;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * Where a level that is observed once a period is going: a trend whose slope drifts and may once have broken, plus a swing about
 * it that dies away. How much of each there is, and when the slope broke, is left open: every combination is followed, and
 * counts by how well it foretold the series.
 *
 * <p>Sources: Harvey, "Forecasting, Structural Time Series Models and the Kalman Filter" (1989), sections 2.3 and 3.2; Hoeting,
 * Madigan, Raftery and Volinsky, "Bayesian model averaging", Statistical Science 14 (1999) 382-417.
 */
public final class TrendMixture {
    private static final double[] PERSISTENCE = {0.75, 0.92};
    private static final double[] SWING = {0.006, 0.018, 0.035};
    private static final double[] DRIFT = {0.0003, 0.002, 0.005};
    private static final double[] NOISE = {0.008, 0.025};
    private static final double[] DRIFT_PRIOR = {0.45, 0.35, 0.2};
    private static final double SLOPE_SD = 0.012;
    private static final double BREAK_SD = 0.03;
    private static final double BREAK_CHANCE = 0.35;
    private static final double START_SD = 1;
    private static final int NEGLIGIBLE = 14;

    /** One combination after the last period: level, slope and swing with their covariance. */
    private record Outlook(
            double weight, double[] mean, double[][] covariance, double persistence, double swing, double drift) {}

    private final Outlook[] outlooks;

    /**
     * @param level one a period, oldest first; NaN where none was observed
     * @param variance of the error of each
     */
    public TrendMixture(double[] level, double[] variance) {
        int n = level.length;
        int breaks = Math.max(0, n - 2);
        Outlook[] found = new Outlook[PERSISTENCE.length * SWING.length * DRIFT.length * NOISE.length * (breaks + 1)];
        double[] log = new double[found.length];
        int count = 0;
        for (double persistence : PERSISTENCE) {
            for (double swing : SWING) {
                for (int d = 0; d < DRIFT.length; d++) {
                    for (double noise : NOISE) {
                        for (int b = 0; b <= breaks; b++) {
                            Filter f = new Filter(persistence, swing, DRIFT[d]);
                            for (int t = 0; t < n; t++) {
                                f.next(t > 0, b > 0 && t == b + 1);
                                if (!Double.isNaN(level[t])) {
                                    f.observe(level[t], variance[t] + noise * noise);
                                }
                            }
                            double prior = DRIFT_PRIOR[d]
                                    * (b == 0 ? breaks == 0 ? 1 : 1 - BREAK_CHANCE : BREAK_CHANCE / breaks);
                            log[count] = f.logLikelihood + Math.log(prior);
                            found[count] = new Outlook(0, f.m, f.p, persistence, swing, DRIFT[d]);
                            count++;
                        }
                    }
                }
            }
        }
        double highest = Arrays.stream(log).max().orElse(0);
        double total = 0;
        for (double l : log) {
            total += l < highest - NEGLIGIBLE ? 0 : Math.exp(l - highest);
        }
        Outlook[] kept = new Outlook[count];
        int k = 0;
        for (int i = 0; i < count; i++) {
            if (log[i] >= highest - NEGLIGIBLE) {
                Outlook o = found[i];
                kept[k++] = new Outlook(
                        Math.exp(log[i] - highest) / total, o.mean, o.covariance, o.persistence, o.swing, o.drift);
            }
        }
        outlooks = Arrays.copyOf(kept, k);
    }

    private static final class Filter {
        private final double persistence;
        private final double swingVariance;
        private final double driftVariance;
        private final double[] m = new double[3];
        private final double[][] p = new double[3][3];
        private double logLikelihood;

        Filter(double persistence, double swing, double drift) {
            this.persistence = persistence;
            swingVariance = swing * swing;
            driftVariance = drift * drift;
            p[0][0] = START_SD * START_SD;
            p[1][1] = SLOPE_SD * SLOPE_SD;
            p[2][2] = swingVariance / (1 - persistence * persistence);
        }

        void next(boolean move, boolean broken) {
            if (!move) {
                return;
            }
            m[0] += m[1];
            m[2] *= persistence;
            double p00 = p[0][0] + 2 * p[0][1] + p[1][1];
            double p01 = p[0][1] + p[1][1];
            double p02 = persistence * (p[0][2] + p[1][2]);
            double p12 = persistence * p[1][2];
            p[0][0] = p00;
            p[0][1] = p01;
            p[0][2] = p02;
            p[1][1] += driftVariance + (broken ? BREAK_SD * BREAK_SD : 0);
            p[1][2] = p12;
            p[2][2] = persistence * persistence * p[2][2] + swingVariance;
        }

        /** The upper triangle is kept. */
        void observe(double y, double r) {
            double h0 = p[0][0] + p[0][2];
            double h1 = p[0][1] + p[1][2];
            double h2 = p[0][2] + p[2][2];
            double s = h0 + h2 + r;
            double e = y - m[0] - m[2];
            logLikelihood -= 0.5 * (Math.log(2 * Math.PI * s) + e * e / s);
            m[0] += h0 / s * e;
            m[1] += h1 / s * e;
            m[2] += h2 / s * e;
            p[0][0] -= h0 * h0 / s;
            p[0][1] -= h0 * h1 / s;
            p[0][2] -= h0 * h2 / s;
            p[1][1] -= h1 * h1 / s;
            p[1][2] -= h1 * h2 / s;
            p[2][2] -= h2 * h2 / s;
        }
    }

    /** Expected level so many periods after the last one. */
    public double mean(double periods) {
        double sum = 0;
        for (Outlook o : outlooks) {
            sum += o.weight
                    * (o.mean[0] + o.mean[1] * periods + o.mean[2] * Math.pow(o.persistence, Math.max(0, periods)));
        }
        return sum;
    }

    /** Expected slope at the last period. */
    public double slope() {
        double sum = 0;
        for (Outlook o : outlooks) {
            sum += o.weight * o.mean[1];
        }
        return sum;
    }

    /**
     * Levels at several times to come, drawn from what is known; one path, so that they move together.
     *
     * @param periods after the last observed one
     */
    public double[] draw(double[] periods, SplittableRandom random) {
        double u = random.nextDouble();
        int i = 0;
        while (i < outlooks.length - 1 && u > outlooks[i].weight) {
            u -= outlooks[i].weight;
            i++;
        }
        Outlook o = outlooks[i];
        double[][] c = o.covariance;
        double a = Math.sqrt(Math.max(1e-12, c[0][0]));
        double b = c[0][1] / a;
        double d = Math.sqrt(Math.max(1e-12, c[1][1] - b * b));
        double e = c[0][2] / a;
        double f = (c[1][2] - b * e) / d;
        double g = Math.sqrt(Math.max(0, c[2][2] - e * e - f * f));
        double z0 = random.nextGaussian();
        double z1 = random.nextGaussian();
        double level = o.mean[0] + a * z0;
        double slope = o.mean[1] + b * z0 + d * z1;
        double swing = o.mean[2] + e * z0 + f * z1 + g * random.nextGaussian();
        double bend = random.nextGaussian() * o.drift / Math.sqrt(3);
        double turn = random.nextGaussian() * o.swing;
        double[] out = new double[periods.length];
        for (int k = 0; k < out.length; k++) {
            double t = Math.max(0, periods[k]);
            double kept = Math.pow(o.persistence, t);
            double spread = Math.sqrt((1 - kept * kept) / (1 - o.persistence * o.persistence));
            out[k] = level + slope * periods[k] + bend * Math.pow(t, 1.5) + swing * kept + turn * spread;
        }
        return out;
    }
}
