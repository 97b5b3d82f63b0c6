package org.salvedge.stats;

import org.apache.commons.numbers.gamma.LogBeta;
import org.apache.commons.numbers.gamma.RegularizedBeta;

/**
 * Quantiles of the beta distribution by safeguarded Newton steps from a good start: some five evaluations of the library's
 * distribution function where its own bracketing search takes forty.
 *
 * <p>Start: M. Abramowitz and I. A. Stegun, "Handbook of Mathematical Functions" (1964), 26.5.22; in the tails the first term of
 * the power series, 26.5.4.
 */
final class BetaQuantile {
    private static final int MOST_STEPS = 100;
    /** Convergence is cubic: after a step of this size, relative, nothing is left to gain. */
    private static final double LAST_STEP = 1e-7;

    private BetaQuantile() {}

    /** x with P(X <= x) = p for X ~ Beta(a, b), to about 1e-12 relative; a and b positive. */
    static double of(double p, double a, double b) {
        if (!(p >= 0 && p <= 1 && a > 0 && b > 0)) {
            throw new IllegalArgumentException("p = " + p + ", a = " + a + ", b = " + b);
        }
        if (p == 0 || p == 1) {
            return p;
        }
        double logBeta = LogBeta.value(a, b);
        // x^a / (a B(a,b)) bounds the lower tail from below where b <= 1 and is its first term everywhere.
        double tail = Math.exp((Math.log(p) + Math.log(a) + logBeta) / a);
        if (tail < 1e-15) {
            return tail;
        }
        double low = 0;
        double high = 1;
        double x = start(p, a, b, tail);
        for (int i = 0; i < MOST_STEPS; i++) {
            double error = RegularizedBeta.value(x, a, b) - p;
            if (error == 0) {
                return x;
            }
            if (error > 0) {
                high = x;
            } else {
                low = x;
            }
            double slope = Math.exp((a - 1) * Math.log(x) + (b - 1) * Math.log1p(-x) - logBeta);
            double u = error / slope;
            // Halley's correction of the Newton step, never more than half of it: a step that is small because it was
            // cut would look
            // like the end.
            double bend = u * ((a - 1) / x - (b - 1) / (1 - x));
            double next = x - u / (1 - 0.5 * Math.max(-1, Math.min(1, bend)));
            if (!(next > low && next < high)) {
                next = low > 0 ? Math.sqrt(low) * Math.sqrt(high) : high / 2;
            } else if (Math.abs(next - x) <= LAST_STEP * Math.min(x, 1 - x)) {
                return next;
            }
            if (high - low <= 1e-15 * high) {
                return next;
            }
            x = next;
        }
        return x;
    }

    private static double start(double p, double a, double b, double tail) {
        double x;
        if (a >= 1 && b >= 1) {
            double y = Normals.quantile(1 - p);
            double lambda = (y * y - 3) / 6;
            double s = 1 / (2 * a - 1);
            double t = 1 / (2 * b - 1);
            double h = 2 / (s + t);
            double w = y * Math.sqrt(h + lambda) / h - (t - s) * (lambda + 5.0 / 6 - 2 / (3 * h));
            x = a / (a + b * Math.exp(2 * w));
        } else {
            double upper = Math.exp((Math.log1p(-p) + Math.log(b) + LogBeta.value(a, b)) / b);
            x = tail < 0.5 || tail <= upper ? tail : 1 - upper;
        }
        return Double.isNaN(x) ? a / (a + b) : Math.min(1 - 1e-12, Math.max(1e-300, x));
    }
}
