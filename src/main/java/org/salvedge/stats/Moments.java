package org.salvedge.stats;

/**
 * Number, mean and squared deviations of the values seen so far, without the cancellation of sums of squares. States of parts
 * merge into that of the whole.
 *
 * <p>Sources: B. P. Welford, "Note on a method for calculating corrected sums of squares and products", Technometrics 4 (1962)
 * 419-420; T. F. Chan, G. H. Golub and R. J. LeVeque, "Algorithms for computing the sample variance", The American Statistician
 * 37 (1983) 242-247.
 *
 * @param squares sum of squared deviations from the mean
 */
public record Moments(long n, double mean, double squares) {
    public static final Moments NONE = new Moments(0, 0, 0);

    public static Moments of(double... values) {
        long n = 0;
        double mean = 0;
        double squares = 0;
        for (double x : values) {
            n++;
            double away = x - mean;
            mean += away / n;
            squares += away * (x - mean);
        }
        return new Moments(n, mean, squares);
    }

    public Moments with(double x) {
        double away = x - mean;
        double next = mean + away / (n + 1);
        return new Moments(n + 1, next, squares + away * (x - next));
    }

    public Moments merge(Moments other) {
        if (n == 0 || other.n == 0) {
            return n == 0 ? other : this;
        }
        double all = (double) n + other.n;
        double away = other.mean - mean;
        return new Moments(
                n + other.n,
                mean + away * (other.n / all),
                squares + other.squares + away * away * (n * (other.n / all)));
    }

    /** With divisor n - 1; not a number below two values. */
    public double variance() {
        return n < 2 ? Double.NaN : squares / (n - 1);
    }

    public double sd() {
        return Math.sqrt(variance());
    }

    /** Standard error of the mean. */
    public double se() {
        return Math.sqrt(variance() / n);
    }

    /**
     * Correlation of each value with the next, about the common mean: the lag-1 autocorrelation of the NIST reference data sets.
     */
    public static double lag1(double... values) {
        double mean = of(values).mean;
        double products = 0;
        double squares = 0;
        for (int i = 0; i < values.length; i++) {
            double away = values[i] - mean;
            squares += away * away;
            products += i == 0 ? 0 : away * (values[i - 1] - mean);
        }
        return products / squares;
    }
}
