package org.salvedge.yield;

import org.salvedge.stats.Interval;

/** A figure with its 95 % interval; not a number where undefined. */
public record Range(double value, double low, double high) {
    public static final Range UNDEFINED = new Range(Double.NaN, Double.NaN, Double.NaN);

    private static final double HALF_WIDTH = 1.959964;

    static Range normal(double value, double se) {
        return new Range(value, value - HALF_WIDTH * se, value + HALF_WIDTH * se);
    }

    static Range of(double value, Interval interval) {
        return new Range(value, interval.low(), interval.high());
    }

    public boolean known() {
        return !Double.isNaN(value);
    }

    Range times(double factor) {
        return factor >= 0
                ? new Range(value * factor, low * factor, high * factor)
                : new Range(value * factor, high * factor, low * factor);
    }
}
