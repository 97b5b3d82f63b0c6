package org.salvedge.stats;

/**
 * Estimates of equal precision drawn towards their common mean.
 *
 * <p>Source: B. Efron and C. Morris, "Data analysis using Stein's estimator and its generalizations", JASA 70 (1975) 311-319:
 * the share kept is 1 - (k-3) variance / (sum of squares about the mean), not below 0.
 *
 * @param mean the common mean
 * @param kept share of each distance from the mean that is kept, 0 to 1
 */
public record JamesStein(double mean, double kept) {
    /**
     * @param estimates at least four
     * @param variance of the error of each, known
     */
    public static JamesStein of(double[] estimates, double variance) {
        if (estimates.length < 4) {
            throw new IllegalArgumentException(estimates.length + " estimates: at least 4 are needed");
        }
        Moments m = Moments.of(estimates);
        double drawn = m.squares() == 0 ? 1 : (estimates.length - 3) * variance / m.squares();
        return new JamesStein(m.mean(), Math.max(0, 1 - drawn));
    }

    public double shrink(double estimate) {
        return mean + kept * (estimate - mean);
    }
}
