package org.salvedge.stats;

import java.util.Arrays;
import java.util.SplittableRandom;

/**
 * Where a level that is observed once a month is going: a trend whose slope drifts and may once have broken, plus the season of
 * the year, plus a swing that dies away. How much of each there is, and when the slope broke, is left open:
 * every combination is followed, and counts by how well it foretold the series.
 *
 * <p>Sources: Harvey, "Forecasting, Structural Time Series Models and the Kalman Filter" (1989), sections 2.3 and 3.2; Hoeting,
 * Madigan, Raftery and Volinsky, "Bayesian model averaging", Statistical Science 14 (1999) 382-417.
 */
public final class TrendMixture implements java.io.Serializable {
    private static final int STATES = 5; // level, slope, swing, season, season a quarter turn on
    private static final double[] DAMPING = {0.75, 0.93};
    private static final double[] SHOCK = {0.004, 0.01, 0.018};
    /** Standard deviation of a season's height. */
    private static final double[] SEASON = {0.03, 0.07};

    private static final double[] SEASON_PRIOR = {0.5, 0.5};
    private static final double COS = Math.cos(Math.PI / 6);
    private static final double SIN = Math.sin(Math.PI / 6);
    private static final double[] DRIFT = {0.0003, 0.002, 0.005};
    private static final double[] DRIFT_PRIOR = {0.2, 0.4, 0.4};
    private static final double[] NOISE = {0.005, 0.015};
    private static final double SLOPE_SD = 0.015;
    private static final double BREAK_SD = 0.03;
    private static final double BREAK_CHANCE = 0.65;
    private static final double START_SD = 1;
    private static final double NEGLIGIBLE = 12;

    /** One combination after the last month. */
    private record Outlook(double weight, Filter state, double[][] factor) implements java.io.Serializable {}

    private final Outlook[] outlooks;

    /**
     * @param level one a month, oldest first; NaN where none was observed
     * @param variance of the error of each
     * @param usualSlope the slope a month that is expected of such a series beforehand
     */
    public TrendMixture(double[] level, double[] variance, double usualSlope) {
        int breaks = Math.max(0, level.length - 2);
        int all = DAMPING.length * SHOCK.length * SEASON.length * DRIFT.length * NOISE.length * (breaks + 1);
        Filter[] found = new Filter[all];
        double[] log = new double[all];
        int count = 0;
        for (double damping : DAMPING) {
            for (double shock : SHOCK) {
                for (int c = 0; c < SEASON.length; c++) {
                    for (int d = 0; d < DRIFT.length; d++) {
                        for (double noise : NOISE) {
                            for (int b = 0; b <= breaks; b++) {
                                Filter f = new Filter(damping, shock, SEASON[c], DRIFT[d], usualSlope);
                                f.run(level, variance, noise, b == 0 ? -1 : b + 1);
                                double broken = b > 0 ? BREAK_CHANCE / breaks : breaks == 0 ? 1 : 1 - BREAK_CHANCE;
                                log[count] = f.logLikelihood + Math.log(broken * SEASON_PRIOR[c] * DRIFT_PRIOR[d]);
                                found[count++] = f;
                            }
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
        Outlook[] kept = new Outlook[all];
        int k = 0;
        for (int i = 0; i < all; i++) {
            if (log[i] >= highest - NEGLIGIBLE) {
                kept[k++] = new Outlook(Math.exp(log[i] - highest) / total, found[i], found[i].factor());
            }
        }
        outlooks = Arrays.copyOf(kept, k);
    }

    private static final class Filter implements java.io.Serializable {
        private final double damping;
        private final double shock;
        private final double drift;
        private final double[] m = new double[STATES];
        private final double[][] p = new double[STATES][STATES];
        private final double[][] q = new double[STATES][STATES];
        private final double[] h = new double[STATES];
        private double logLikelihood;

        Filter(double damping, double shock, double season, double drift, double usualSlope) {
            this.damping = damping;
            this.shock = shock;
            this.drift = drift;
            m[1] = usualSlope;
            p[0][0] = START_SD * START_SD;
            p[1][1] = SLOPE_SD * SLOPE_SD;
            p[2][2] = shock * shock / (1 - damping * damping);
            p[3][3] = season * season;
            p[4][4] = season * season;
        }

        void run(double[] level, double[] variance, double noise, int brokenAt) {
            for (int t = 0; t < level.length; t++) {
                if (t > 0) {
                    next(t == brokenAt);
                }
                if (!Double.isNaN(level[t])) {
                    observe(level[t], variance[t] + noise * noise);
                }
            }
        }

        private void next(boolean broken) {
            m[0] += m[1];
            m[2] *= damping;
            double turned = COS * m[3] + SIN * m[4];
            m[4] = COS * m[4] - SIN * m[3];
            m[3] = turned;
            for (int i = 0; i < STATES; i++) { // rows by the transition
                double[] pi = p[i];
                double[] qi = q[i];
                qi[0] = pi[0] + pi[1];
                qi[1] = pi[1];
                qi[2] = damping * pi[2];
                qi[3] = COS * pi[3] + SIN * pi[4];
                qi[4] = COS * pi[4] - SIN * pi[3];
            }
            for (int j = 0; j < STATES; j++) { // columns
                p[0][j] = q[0][j] + q[1][j];
                p[1][j] = q[1][j];
                p[2][j] = damping * q[2][j];
                p[3][j] = COS * q[3][j] + SIN * q[4][j];
                p[4][j] = COS * q[4][j] - SIN * q[3][j];
            }
            p[1][1] += drift * drift + (broken ? BREAK_SD * BREAK_SD : 0);
            p[2][2] += shock * shock;
        }

        private void observe(double y, double r) {
            for (int i = 0; i < STATES; i++) {
                h[i] = p[i][0] + p[i][2] + p[i][3];
            }
            double s = h[0] + h[2] + h[3] + r;
            double e = y - m[0] - m[2] - m[3];
            logLikelihood -= 0.5 * (Math.log(2 * Math.PI * s) + e * e / s);
            for (int i = 0; i < STATES; i++) {
                m[i] += h[i] / s * e;
            }
            for (int i = 0; i < STATES; i++) {
                for (int j = 0; j < STATES; j++) {
                    p[i][j] -= h[i] * h[j] / s;
                }
            }
        }

        double[][] factor() {
            double[][] a = new double[STATES][];
            for (int i = 0; i < STATES; i++) {
                a[i] = Arrays.copyOf(p[i], i + 1);
                a[i][i] += 1e-10;
            }
            return Cholesky.inPlace(a).factor();
        }

        double level(double[] state, double months) {
            double angle = Math.PI / 6 * months;
            return state[0]
                    + state[1] * months
                    + Math.pow(damping, Math.max(0, months)) * state[2]
                    + Math.cos(angle) * state[3]
                    + Math.sin(angle) * state[4];
        }
    }

    /** Expected level so many months after the last one. */
    public double mean(double months) {
        double sum = 0;
        for (Outlook o : outlooks) {
            sum += o.weight * o.state.level(o.state.m, months);
        }
        return sum;
    }

    /** Expected slope at the last month, the swing left out. */
    public double slope() {
        double sum = 0;
        for (Outlook o : outlooks) {
            sum += o.weight * o.state.m[1];
        }
        return sum;
    }

    /**
     * Levels at several times to come, drawn from what is known; one path, so that they move together.
     *
     * @param months after the last observed one
     */
    public double[] draw(double[] months, SplittableRandom random) {
        double u = random.nextDouble();
        int i = 0;
        while (i < outlooks.length - 1 && u > outlooks[i].weight) {
            u -= outlooks[i].weight;
            i++;
        }
        Filter f = outlooks[i].state;
        double[][] l = outlooks[i].factor;
        double[] z = new double[STATES];
        double[] state = new double[STATES];
        for (int a = 0; a < STATES; a++) {
            z[a] = random.nextGaussian();
            state[a] = f.m[a];
            for (int b = 0; b <= a; b++) {
                state[a] += l[a][b] * z[b];
            }
        }
        double bend = random.nextGaussian() * f.drift / Math.sqrt(3);
        double turn = random.nextGaussian() * f.shock;
        double[] out = new double[months.length];
        for (int k = 0; k < out.length; k++) {
            double t = Math.max(0, months[k]);
            double kept = Math.pow(f.damping, t);
            double spread = Math.sqrt((1 - kept * kept) / (1 - f.damping * f.damping));
            out[k] = f.level(state, months[k]) + bend * Math.pow(t, 1.5) + turn * spread;
        }
        return out;
    }
}
