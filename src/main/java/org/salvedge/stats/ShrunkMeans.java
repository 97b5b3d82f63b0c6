package org.salvedge.stats;

/**
 * Means of unequal precision, each drawn towards their common mean as far as its own is uncertain: normal errors about true means
 * that are normal themselves.
 *
 * <p>Sources: R. C. Paule and J. Mandel, "Consensus values and weighting factors", J. Res. NBS 87 (1982) 377-385 (variance between,
 * the root of their estimating equation); C. N. Morris, "Parametric empirical Bayes inference: theory and applications", JASA 78 (1983)
 * 47-55: the share drawn is multiplied by (k-3)/(k-1), and the variance has terms for the uncertainty of
 * the common mean and of the variance between. Both need more than three means; with fewer the variance between counts as known.
 */
public final class ShrunkMeans {
    private static final int MOST_STEPS = 200;

    private final double[] own;
    private final double[] error;
    private final double between;
    private final double mean;
    private final double variance;
    private final double meanError;

    private ShrunkMeans(double[] own, double[] error, double between) {
        this.own = own;
        this.error = error;
        this.between = between;
        double weights = 0;
        double sum = 0;
        double weighted = 0;
        for (int i = 0; i < own.length; i++) {
            double w = 1 / (error[i] + between);
            weighted += w * error[i];
            weights += w;
            sum += w * own[i];
        }
        mean = sum / weights;
        variance = 1 / weights;
        meanError = weighted / weights;
    }

    /**
     * @param means observed, at least one
     * @param errorVariances of each, above 0
     */
    public static ShrunkMeans of(double[] means, double[] errorVariances) {
        if (means.length == 0 || means.length != errorVariances.length) {
            throw new IllegalArgumentException(means.length + " means, " + errorVariances.length + " variances");
        }
        for (double v : errorVariances) {
            if (!(v > 0)) {
                throw new IllegalArgumentException("error variance " + v + " is not above 0");
            }
        }
        double[] own = means.clone();
        double[] error = errorVariances.clone();
        return new ShrunkMeans(own, error, variance(own, error));
    }

    private static double variance(double[] own, double[] error) {
        if (excess(own, error, 0) <= 0) {
            return 0;
        }
        double high = Moments.of(own).variance();
        while (excess(own, error, high) > 0) {
            high *= 2;
        }
        double low = 0;
        for (int i = 0; i < MOST_STEPS && high - low > 1e-14 * high; i++) {
            double middle = (low + high) / 2;
            if (excess(own, error, middle) > 0) {
                low = middle;
            } else {
                high = middle;
            }
        }
        return (low + high) / 2;
    }

    /** Weighted squares less their expectation: falls as the variance between grows. */
    private static double excess(double[] own, double[] error, double between) {
        ShrunkMeans at = new ShrunkMeans(own, error, between);
        double squares = 0;
        for (int i = 0; i < own.length; i++) {
            squares += (own[i] - at.mean) * (own[i] - at.mean) / (error[i] + between);
        }
        return squares - (own.length - 1);
    }

    /** Variance between the true means. */
    public double between() {
        return between;
    }

    /** The common mean. */
    public double commonMean() {
        return mean;
    }

    /** Standard error of the common mean. */
    public double commonSe() {
        return Math.sqrt(variance);
    }

    /** Shrunk estimate of mean i. */
    public double mean(int i) {
        double drawn = drawn(i);
        return drawn * mean + (1 - drawn) * own[i];
    }

    /** Its standard deviation, with what is not known of the common mean and of the variance between. */
    public double sd(int i) {
        double drawn = drawn(i);
        double known = (1 - drawn) * error[i] + drawn * drawn * variance;
        int k = own.length;
        if (k <= 3) {
            return Math.sqrt(known);
        }
        double away = own[i] - mean;
        double relative = (meanError + between) / (error[i] + between);
        return Math.sqrt(known + 2.0 / (k - 3) * drawn * drawn * relative * away * away);
    }

    private double drawn(int i) {
        int k = own.length;
        double plain = error[i] / (error[i] + between);
        return k <= 3 ? plain : plain * (k - 3) / (k - 1);
    }

    public Interval interval(int i, double level) {
        double half = Normals.halfWidth(level) * sd(i);
        return new Interval(mean(i) - half, mean(i) + half);
    }
}
