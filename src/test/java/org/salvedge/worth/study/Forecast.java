package org.salvedge.worth.study;

import java.util.Arrays;
import org.apache.commons.statistics.distribution.NormalDistribution;

/** A predictive distribution of net recovery, in whole currency units, as equally likely values in order. */
final class Forecast {
    private static final int NORMAL_POINTS = 1000;

    private final double[] values;
    private final double mean;

    private Forecast(double[] sorted, double mean) {
        this.values = sorted;
        this.mean = mean;
    }

    static Forecast ofDraws(double[] draws) {
        double[] sorted = draws.clone();
        Arrays.sort(sorted);
        return new Forecast(sorted, Arrays.stream(sorted).average().orElseThrow());
    }

    static Forecast normal(double mean, double sd) {
        NormalDistribution law = NormalDistribution.of(mean, Math.max(sd, 1e-6));
        double[] values = new double[NORMAL_POINTS];
        for (int i = 0; i < NORMAL_POINTS; i++) {
            values[i] = law.inverseCumulativeProbability((i + 0.5) / NORMAL_POINTS);
        }
        return new Forecast(values, mean);
    }

    double mean() {
        return mean;
    }

    /** Hyndman and Fan (1996), The American Statistician 50, 361-365, type 5: the i-th of n values stands for (i - 1/2) / n. */
    double quantile(double p) {
        double at = p * values.length - 0.5;
        int low = (int) Math.max(0, Math.min(values.length - 1, Math.floor(at)));
        int high = Math.min(values.length - 1, low + 1);
        double part = Math.max(0, Math.min(1, at - low));
        return values[low] + part * (values[high] - values[low]);
    }

    /** P(value < x). */
    double below(double x) {
        int at = Arrays.binarySearch(values, x);
        if (at < 0) {
            return -(at + 1) / (double) values.length;
        }
        while (at > 0 && values[at - 1] == x) {
            at--;
        }
        return at / (double) values.length;
    }

    /**
     * Continuous ranked probability score of what came, as the quantile score over all values: Gneiting and Raftery (2007),
     * JASA 102, 359-378, section 4.2, for an empirical distribution.
     */
    double crps(double outcome) {
        double n = values.length;
        double away = 0;
        double spread = 0;
        for (int i = 0; i < values.length; i++) {
            away += Math.abs(values[i] - outcome);
            spread += values[i] * (2 * i + 1 - n);
        }
        return away / n - spread / (n * n);
    }
}
