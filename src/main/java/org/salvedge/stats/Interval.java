package org.salvedge.stats;

/** The ends of an interval; both belong to it. */
public record Interval(double low, double high) {
    /** @throws IllegalArgumentException if the ends are in the wrong order or not numbers */
    public Interval {
        if (!(low <= high)) {
            throw new IllegalArgumentException("interval from " + low + " to " + high);
        }
    }

    public boolean contains(double x) {
        return low <= x && x <= high;
    }

    public double width() {
        return high - low;
    }
}
