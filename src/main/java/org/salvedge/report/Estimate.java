package org.salvedge.report;

/**
 * A figure with its interval: {@code 0.62 (0.48-0.74)} on the screen; in CSV and JSON three fields, KEY, KEY_low and KEY_high.
 * Not a number stands for undefined.
 */
public record Estimate(double value, double low, double high) {
    public static final Estimate UNDEFINED = new Estimate(Double.NaN, Double.NaN, Double.NaN);
}
