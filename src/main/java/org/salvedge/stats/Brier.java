package org.salvedge.stats;

import java.util.Arrays;

/**
 * Mean squared error of forecast chances, and what it is made of: score = reliability - resolution + uncertainty.
 *
 * <p>Source: A. H. Murphy, "A new vector partition of the probability score", Journal of Applied Meteorology 12 (1973) 595-600.
 *
 * @param reliability squared distance of the forecasts from how often the event came at them; 0 is best
 * @param resolution how far these frequencies lie from the overall one; large is good
 * @param uncertainty of the event itself
 */
public record Brier(double reliability, double resolution, double uncertainty) {
    public double score() {
        return reliability - resolution + uncertainty;
    }

    /** Mean squared error. */
    public static double score(double[] forecast, boolean[] came) {
        double sum = 0;
        for (int i = 0; i < forecast.length; i++) {
            double away = forecast[i] - (came[i] ? 1 : 0);
            sum += away * away;
        }
        return sum / forecast.length;
    }

    /**
     * From a table of forecast values.
     *
     * @param forecast each value used
     * @param frequency of the event when it was used
     * @param weight share of its uses; they add up to 1
     */
    public static Brier ofTable(double[] forecast, double[] frequency, double[] weight) {
        double all = Arrays.stream(weight).sum();
        if (Math.abs(all - 1) > 1e-6) {
            throw new IllegalArgumentException("weights add up to " + all + ", not to 1");
        }
        double base = 0;
        for (int i = 0; i < weight.length; i++) {
            base += weight[i] * frequency[i];
        }
        double reliability = 0;
        double resolution = 0;
        for (int i = 0; i < weight.length; i++) {
            reliability += weight[i] * Math.pow(forecast[i] - frequency[i], 2);
            resolution += weight[i] * Math.pow(frequency[i] - base, 2);
        }
        return new Brier(reliability, resolution, base * (1 - base));
    }

    /** From single forecasts, each distinct value being a class of its own. */
    public static Brier of(double[] forecast, boolean[] came) {
        double[] values = Arrays.stream(forecast).sorted().distinct().toArray();
        double[] frequency = new double[values.length];
        double[] weight = new double[values.length];
        for (int i = 0; i < forecast.length; i++) {
            int k = Arrays.binarySearch(values, forecast[i]);
            weight[k]++;
            frequency[k] += came[i] ? 1 : 0;
        }
        for (int k = 0; k < values.length; k++) {
            frequency[k] /= weight[k];
            weight[k] /= forecast.length;
        }
        return ofTable(values, frequency, weight);
    }
}
