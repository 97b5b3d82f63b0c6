package org.salvedge.stats;

/**
 * How alike the trials of one sample are, from successes in samples of unequal size: two moment estimators.
 *
 * <p>Sources: M. S. Ridout, C. G. B. Demetrio and D. Firth, "Estimating intraclass correlation for binary data", Biometrics 55
 * (1999) 137-148, the estimators called analysis of variance and Fleiss-Cuzick; A. Donner, International Statistical Review 54
 * (1986) 67-82.
 *
 * @param between mean square between samples
 * @param within mean square within samples
 * @param size adjusted mean size of a sample, n0
 * @param anova estimate by analysis of variance; may be negative
 * @param fleissCuzick estimate by the agreement of pairs; may be negative
 */
public record IntraclassCorrelation(double between, double within, double size, double anova, double fleissCuzick) {
    /**
     * @param successes in each sample
     * @param trials in each sample, at least 1; at least two samples, one of them with two trials
     */
    public static IntraclassCorrelation of(int[] successes, int[] trials) {
        int k = trials.length;
        double all = 0;
        double squares = 0;
        double ones = 0;
        double mixed = 0;
        for (int i = 0; i < k; i++) {
            if (trials[i] < 1 || successes[i] < 0 || successes[i] > trials[i]) {
                throw new IllegalArgumentException(
                        "sample " + i + ": " + successes[i] + " successes in " + trials[i] + " trials");
            }
            double n = trials[i];
            double y = successes[i];
            all += n;
            squares += n * n;
            ones += y;
            mixed += y * (n - y) / n;
        }
        if (k < 2 || all == k) {
            throw new IllegalArgumentException(
                    k + " samples with " + all + " trials tell nothing of their correlation");
        }
        double p = ones / all;
        double size = (all - squares / all) / (k - 1);
        double within = mixed / (all - k);
        // All deviations from the common mean less those within.
        double between = (all * p * (1 - p) - mixed) / (k - 1);
        return new IntraclassCorrelation(
                between,
                within,
                size,
                (between - within) / (between + (size - 1) * within),
                1 - mixed / ((all - k) * p * (1 - p)));
    }
}
