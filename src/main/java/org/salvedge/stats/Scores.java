package org.salvedge.stats;

/** Scores of quantiles, intervals and ordered classes; smaller is better in all. */
public final class Scores {
    private Scores() {}

    /**
     * Score of a forecast quantile, with the factor 2 that makes its mean over all p the CRPS.
     *
     * <p>Source: R. J. Hyndman and G. Athanasopoulos, "Forecasting: Principles and Practice", 3rd ed. (2021), section 5.9.
     *
     * @param forecast of the p-quantile
     */
    public static double pinball(double forecast, double p, double y) {
        return y < forecast ? 2 * (1 - p) * (forecast - y) : 2 * p * (y - forecast);
    }

    /**
     * Width of a forecast interval plus a penalty for what falls outside.
     *
     * <p>Source: R. L. Winkler, JASA 67 (1972) 187-191; Gneiting and Raftery, JASA 102 (2007), section 6.2.
     *
     * @param level share that should fall inside, as 0.8
     */
    public static double interval(Interval forecast, double level, double y) {
        double outside = Math.max(0, Math.max(forecast.low() - y, y - forecast.high()));
        return forecast.width() + 2 / (1 - level) * outside;
    }

    /**
     * Squared differences of the cumulative chances of ordered classes, summed and not divided.
     *
     * <p>Source: E. S. Epstein, Journal of Applied Meteorology 8 (1969) 985-987; D. S. Wilks, "Statistical Methods in the Atmospheric
     * Sciences" (1995), section 7.4.
     *
     * @param chances of the classes in order
     * @param came the class that came, from 0
     */
    public static double rankedProbability(double[] chances, int came) {
        double sum = 0;
        double cumulative = 0;
        for (int k = 0; k < chances.length; k++) {
            cumulative += chances[k];
            double away = cumulative - (k >= came ? 1 : 0);
            sum += away * away;
        }
        return sum;
    }
}
