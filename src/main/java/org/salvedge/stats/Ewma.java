package org.salvedge.stats;

/**
 * Exponentially weighted moving average with control limits: sees small lasting shifts sooner than single points do.
 *
 * <p>Sources: S. W. Roberts, Technometrics 1 (1959) 239-250; NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.4.
 *
 * @param target centre, and value before the first point
 * @param sigma standard deviation of a single value
 * @param weight of the newest value, above 0 and at most 1
 * @param width of the limits in standard deviations of the average, as 3
 */
public record Ewma(double target, double sigma, double weight, double width) {
    public Ewma {
        if (!(weight > 0 && weight <= 1 && sigma >= 0 && width > 0)) {
            throw new IllegalArgumentException("weight " + weight + ", sigma " + sigma + ", width " + width);
        }
    }

    /** The average after each value. */
    public double[] of(double... values) {
        double[] averages = new double[values.length];
        double average = target;
        for (int i = 0; i < values.length; i++) {
            average += weight * (values[i] - average);
            averages[i] = average;
        }
        return averages;
    }

    /** Limits after many values. */
    public Interval limits() {
        return around(weight / (2 - weight));
    }

    /** Limits after this many values, narrower at first. */
    public Interval limitsAfter(int values) {
        return around(weight / (2 - weight) * -Math.expm1(2.0 * values * Math.log1p(-weight)));
    }

    private Interval around(double variance) {
        double half = width * sigma * Math.sqrt(variance);
        return new Interval(target - half, target + half);
    }
}
