package org.salvedge.stats;

import org.apache.commons.statistics.distribution.ChiSquaredDistribution;

/**
 * The log-rank test that two groups share one survival curve, with the hypergeometric variance.
 *
 * <p>Sources: N. Mantel, Cancer Chemotherapy Reports 50 (1966) 163-170; R. Peto and J. Peto, JRSS A 135 (1972) 185-207; as in
 * J. P. Klein and M. L. Moeschberger, "Survival Analysis", 2nd ed. (2003), section 7.3.
 *
 * @param observed events in the first group
 * @param expected events expected there if the groups are alike
 * @param observedOther events in the second group
 * @param expectedOther events expected there
 * @param variance of the first group's observed less expected
 */
public record LogRank(double observed, double expected, double observedOther, double expectedOther, double variance) {

    /**
     * @param time durations, none negative
     * @param event whether each ended with the event; else it is censored
     * @param first whether each belongs to the first group
     */
    public static LogRank of(double[] time, boolean[] event, boolean[] first) {
        int[] endings = Durations.endings(event);
        int[] order = Durations.order(time, endings);
        int atRisk = time.length;
        int firstAtRisk = 0;
        for (boolean f : first) {
            firstAtRisk += f ? 1 : 0;
        }
        double[] observed = new double[2];
        double expected = 0;
        double expectedOther = 0;
        double variance = 0;
        for (int i = 0; i < order.length; ) {
            double t = time[order[i]];
            int gone = 0;
            int firstGone = 0;
            double events = 0;
            for (; i < order.length && time[order[i]] == t; i++) {
                int row = order[i];
                gone++;
                firstGone += first[row] ? 1 : 0;
                events += endings[row];
                observed[first[row] ? 0 : 1] += endings[row];
            }
            double share = firstAtRisk / (double) atRisk;
            expected += events * share;
            expectedOther += events * (1 - share);
            if (atRisk > 1) {
                variance += events * share * (1 - share) * (atRisk - events) / (atRisk - 1);
            }
            atRisk -= gone;
            firstAtRisk -= firstGone;
        }
        return new LogRank(observed[0], expected, observed[1], expectedOther, variance);
    }

    /** With one degree of freedom. */
    public double chiSquared() {
        return (observed - expected) * (observed - expected) / variance;
    }

    /** Chance of a statistic at least as large if the groups are alike; 1 where nothing could be seen. */
    public double p() {
        return variance == 0 ? 1 : ChiSquaredDistribution.of(1).survivalProbability(chiSquared());
    }
}
