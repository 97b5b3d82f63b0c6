package org.salvedge.stats;

import java.util.Arrays;

/**
 * Maximum likelihood fit of a log-normal distribution, complete or censored on the right.
 *
 * <p>Source: W. Nelson, "Applied Life Data Analysis" (1982), chapter 8; J. F. Lawless, "Statistical Models and Methods
 * for Lifetime Data", 2nd ed. (2003), chapter 5. Newton's method on (mu, log sigma) with halved steps.
 *
 * @param varianceMu large-sample variance of mu, from the observed information
 * @param covariance of mu and sigma
 * @param varianceSigma of sigma
 * @param logLikelihood of the times themselves (not of their logarithms)
 */
public record LogNormalFit(
        LogNormal distribution, double varianceMu, double covariance, double varianceSigma, double logLikelihood) {

    private static final int MOST_STEPS = 200;

    /** Fit to times that are all known. */
    public static LogNormalFit complete(double... times) {
        boolean[] ended = new boolean[times.length];
        Arrays.fill(ended, true);
        return censored(times, ended);
    }

    /**
     * @param times all above 0
     * @param ended whether each time is that of the event; else the event comes later
     * @throws IllegalArgumentException where no estimate exists: fewer than two events, or all times alike
     */
    public static LogNormalFit censored(double[] times, boolean[] ended) {
        int n = times.length;
        double[] y = new double[n];
        int events = 0;
        double jacobian = 0;
        Moments known = Moments.NONE;
        for (int i = 0; i < n; i++) {
            if (!(times[i] > 0 && times[i] < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("time " + times[i] + " is not above 0");
            }
            y[i] = Math.log(times[i]);
            known = known.with(y[i]);
            if (ended[i]) {
                events++;
                jacobian += y[i];
            }
        }
        if (events < 2 || !(known.squares() > 0)) {
            throw new IllegalArgumentException(
                    events + " events among " + n + " times, spread " + known.squares() + ": no log-normal fits");
        }
        Sums at = new Sums(y, ended, known.mean(), Math.log(Math.sqrt(known.squares() / n)));
        for (int step = 0; step < MOST_STEPS; step++) {
            Sums next = at.newton();
            boolean done = Math.abs(next.mu - at.mu) < 1e-12 * Math.exp(at.logSigma)
                    && Math.abs(next.logSigma - at.logSigma) < 1e-12;
            at = next;
            if (done) {
                break;
            }
        }
        double sigma = Math.exp(at.logSigma);
        double determinant = at.mm * at.ss - at.ms * at.ms;
        return new LogNormalFit(
                new LogNormal(at.mu, sigma),
                at.ss / determinant,
                -at.ms / determinant * sigma,
                at.mm / determinant * sigma * sigma,
                at.logLikelihood - jacobian);
    }

    /** Log-likelihood, its gradient and the observed information at one point. */
    private static final class Sums {
        private static final double HALF_LOG_TWO_PI = 0.5 * Math.log(2 * Math.PI);

        final double[] y;
        final boolean[] ended;
        final double mu;
        final double logSigma;
        double logLikelihood;
        double dm;
        double ds;
        double mm;
        double ms;
        double ss;

        Sums(double[] y, boolean[] ended, double mu, double logSigma) {
            this.y = y;
            this.ended = ended;
            this.mu = mu;
            this.logSigma = logSigma;
            double sigma = Math.exp(logSigma);
            for (int i = 0; i < y.length; i++) {
                double z = (y[i] - mu) / sigma;
                if (ended[i]) {
                    logLikelihood -= HALF_LOG_TWO_PI + logSigma + z * z / 2;
                    add(z, z, 1, -1);
                } else {
                    logLikelihood += Normals.logAbove(z);
                    double hazard = Normals.hazard(z);
                    add(z, hazard, hazard * (hazard - z), 0);
                }
            }
            dm /= sigma;
            mm /= sigma * sigma;
            ms /= sigma;
        }

        /** g = minus the derivative by z of this term, h = the derivative of g, c = its own derivative by log sigma. */
        private void add(double z, double g, double h, double c) {
            dm += g;
            ds += z * g + c;
            mm += h;
            ms += g + z * h;
            ss += z * g + z * z * h;
        }

        Sums newton() {
            double determinant = mm * ss - ms * ms;
            double stepMu;
            double stepSigma;
            if (mm > 0 && determinant > 0) {
                stepMu = (ss * dm - ms * ds) / determinant;
                stepSigma = (mm * ds - ms * dm) / determinant;
            } else {
                stepMu = dm / Math.max(mm, 1e-3);
                stepSigma = ds / Math.max(Math.abs(ss), 1);
            }
            for (double share = 1; share > 1e-10; share /= 2) {
                Sums next = new Sums(y, ended, mu + share * stepMu, logSigma + share * stepSigma);
                if (next.logLikelihood >= logLikelihood) {
                    return next;
                }
            }
            return this;
        }
    }
}
