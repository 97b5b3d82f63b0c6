package org.salvedge.stats;

/**
 * How far the last of a series is from what those before foretell: an exponentially weighted mean and the mean step so far. The
 * errors that the same rule made on the earlier values say how far is far.
 *
 * <p>Source: R. J. Hyndman and G. Athanasopoulos, "Forecasting: Principles and Practice", 3rd ed. (2021), sections 5.2 (drift), 5.4
 * (one-step errors) and 8.1 (simple exponential smoothing).
 *
 * @param error of the last value, as value less forecast
 * @param sd of the errors before
 * @param freedom how many errors that rests on
 */
public record OneStep(double error, double sd, int freedom) {
    private static final double WEIGHT = 0.6;
    private static final int WARM_UP = 2;

    /**
     * @param values in order of time, at least four
     * @param errors standard error of each value, not negative: the spread is never taken as less than that
     */
    public static OneStep last(double[] values, double[] errors) {
        int n = values.length;
        if (n <= WARM_UP + 1) {
            throw new IllegalArgumentException(n + " values do not show how far forecasts are off");
        }
        double level = values[0];
        double squares = 0;
        double least = 0;
        double error = 0;
        for (int i = 1; i < n; i++) {
            double drift = i > 1 ? (values[i - 1] - values[0]) / (i - 1) : 0;
            error = values[i] - level - drift;
            if (i > WARM_UP && i < n - 1) {
                squares += error * error;
                least += errors[i] * errors[i];
            }
            level = level + drift + WEIGHT * error;
        }
        int seen = n - 2 - WARM_UP;
        double noise = errors[n - 1] * errors[n - 1] + WEIGHT / (2 - WEIGHT) * least / Math.max(1, seen);
        double variance = seen < 1 ? Double.NaN : squares / seen;
        return new OneStep(error, Math.sqrt(Math.max(variance, noise)), seen);
    }

    /** The last error in standard deviations. */
    public double t() {
        return sd == 0 ? 0 : error / sd;
    }
}
