package org.salvedge.stats;

/**
 * Share of jobs that would succeed if they were gone on with for ever, and the log-normal minutes to that, from jobs of which some
 * were given up before it was known: those that are given up tell only that they had not succeeded yet.
 *
 * <p>Source: J. W. Boag, "Maximum likelihood estimates of the proportion of patients cured by cancer therapy", Journal of the Royal
 * Statistical Society B 11 (1949) 15-53; found by expectation and maximisation (Dempster, Laird and Rubin 1977, JRSS B 39, 1-38) with
 * the moments of a normal law cut off below. A prior stands beside the record as jobs of its own.
 *
 * @param share that would succeed in the end
 * @param minutes to success of those
 */
public record CureModel(double share, LogNormal minutes) {
    private static final int ROUNDS = 400;
    private static final double STEADY = 1e-7;

    /**
     * What is believed before the record.
     *
     * @param share of {@code shareJobs} jobs that succeed
     * @param minutes of {@code minuteJobs} jobs that succeeded
     */
    public record Prior(double share, double shareJobs, LogNormal minutes, double minuteJobs) {}

    /**
     * @param minute lengths, above 0, in any order
     * @param succeeded jobs that succeeded after so many minutes
     * @param givenUp jobs given up after so many
     */
    public static CureModel fit(double[] minute, double[] succeeded, double[] givenUp, Prior prior) {
        double share = prior.share;
        double mu = prior.minutes.mu();
        double sigma = prior.minutes.sigma();
        for (int round = 0; round < ROUNDS; round++) {
            double n = prior.shareJobs;
            double good = prior.share * prior.shareJobs;
            double w = prior.minuteJobs;
            double sum = prior.minuteJobs * prior.minutes.mu();
            double squares = prior.minuteJobs * (Math.pow(prior.minutes.sigma(), 2) + Math.pow(prior.minutes.mu(), 2));
            for (int j = 0; j < minute.length; j++) {
                double x = Math.log(minute[j]);
                double z = (x - mu) / sigma;
                double still = share * Normals.above(z);
                double would = givenUp[j] * still / (still + 1 - share);
                double beyond = givenUp[j] > 0 && would > 0 ? Normals.hazard(z) : 0;
                double mean = mu + sigma * beyond;
                double second = mu * mu + 2 * mu * sigma * beyond + sigma * sigma * (1 + z * beyond);
                n += succeeded[j] + givenUp[j];
                good += succeeded[j] + would;
                w += succeeded[j] + would;
                sum += succeeded[j] * x + would * mean;
                squares += succeeded[j] * x * x + would * second;
            }
            double nextMu = sum / w;
            double nextSigma = Math.sqrt(Math.max(1e-6, squares / w - nextMu * nextMu));
            double nextShare = good / n;
            boolean steady = Math.abs(nextMu - mu) + Math.abs(nextSigma - sigma) + Math.abs(nextShare - share) < STEADY;
            mu = nextMu;
            sigma = nextSigma;
            share = nextShare;
            if (steady) {
                break;
            }
        }
        return new CureModel(share, new LogNormal(mu, sigma));
    }
}
