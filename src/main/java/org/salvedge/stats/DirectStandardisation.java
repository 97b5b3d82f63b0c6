package org.salvedge.stats;

import org.apache.commons.statistics.distribution.GammaDistribution;

/**
 * An overall rate as it would be under a standard mix, with an interval for Poisson counts.
 *
 * <p>Sources: J. L. Fleiss, "Statistical Methods for Rates and Proportions", 2nd ed. (1981), chapter 14; M. P. Fay and E. J. Feuer,
 * "Confidence intervals for directly standardized rates: a method based on the gamma distribution", Statistics in Medicine 16
 * (1997) 791-801.
 *
 * @param crude all cases over all units
 * @param rate rates of the strata weighted by the standard
 * @param variance of the rate
 * @param largestWeight of one case
 */
public record DirectStandardisation(double crude, double rate, double variance, double largestWeight) {
    /**
     * @param cases in each stratum
     * @param units in each stratum, above 0
     * @param standard units of the standard in each stratum, on any scale
     */
    public static DirectStandardisation of(double[] cases, double[] units, double[] standard) {
        double all = 0;
        double allCases = 0;
        double allUnits = 0;
        for (int i = 0; i < units.length; i++) {
            if (!(units[i] > 0 && cases[i] >= 0 && standard[i] >= 0)) {
                throw new IllegalArgumentException(
                        "stratum " + i + ": " + cases[i] + " cases of " + units[i] + ", standard " + standard[i]);
            }
            all += standard[i];
            allCases += cases[i];
            allUnits += units[i];
        }
        double rate = 0;
        double variance = 0;
        double largest = 0;
        for (int i = 0; i < units.length; i++) {
            double weight = standard[i] / all / units[i];
            rate += weight * cases[i];
            variance += weight * weight * cases[i];
            largest = Math.max(largest, weight);
        }
        return new DirectStandardisation(allCases / allUnits, rate, variance, largest);
    }

    /** By the gamma distribution. */
    public Interval interval(double level) {
        double tail = (1 - level) / 2;
        double low = rate == 0 ? 0 : gamma(rate, variance).inverseCumulativeProbability(tail);
        double high = gamma(rate + largestWeight, variance + largestWeight * largestWeight)
                .inverseSurvivalProbability(tail);
        return new Interval(low, high);
    }

    private static GammaDistribution gamma(double mean, double variance) {
        return GammaDistribution.of(mean * mean / variance, variance / mean);
    }
}
