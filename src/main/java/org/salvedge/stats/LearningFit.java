package org.salvedge.stats;

import org.apache.commons.statistics.distribution.TDistribution;

/**
 * The slope of a unit learning curve from efforts in order, by least squares of log effort on log number.
 *
 * <p>Source: simple regression, N. R. Draper and H. Smith, "Applied Regression Analysis", 3rd ed. (1998), chapter 1; the model is
 * J. R. Crawford's unit curve.
 *
 * @param n efforts
 * @param intercept log effort of the first unit
 * @param slope power of the number
 * @param se standard error of the slope
 * @param residual standard deviation of log effort about the line
 */
public record LearningFit(int n, double intercept, double slope, double se, double residual) {
    /**
     * @param number of each effort in the order done, from 1 (numbers may be left out)
     * @param effort of each, above 0
     * @throws IllegalArgumentException for fewer than three efforts or numbers that are all alike
     */
    public static LearningFit of(long[] number, double[] effort) {
        int n = number.length;
        double[] x = new double[n];
        double[] y = new double[n];
        for (int i = 0; i < n; i++) {
            if (!(number[i] >= 1 && effort[i] > 0)) {
                throw new IllegalArgumentException("effort " + effort[i] + " of unit " + number[i]);
            }
            x[i] = Math.log((double) number[i]);
            y[i] = Math.log(effort[i]);
        }
        Moments mx = Moments.of(x);
        double meanY = Moments.of(y).mean();
        if (n < 3 || !(mx.squares() > 0)) {
            throw new IllegalArgumentException(n + " efforts do not make a slope with an error");
        }
        double products = 0;
        for (int i = 0; i < n; i++) {
            products += (x[i] - mx.mean()) * (y[i] - meanY);
        }
        double slope = products / mx.squares();
        double intercept = meanY - slope * mx.mean();
        double squares = 0;
        for (int i = 0; i < n; i++) {
            double away = y[i] - intercept - slope * x[i];
            squares += away * away;
        }
        double residual = Math.sqrt(squares / (n - 2));
        return new LearningFit(n, intercept, slope, residual / Math.sqrt(mx.squares()), residual);
    }

    /** The fitted curve; its effort is the median one. */
    public LearningCurve curve() {
        return new LearningCurve(LearningCurve.Theory.UNIT, Math.exp(intercept), rate(slope));
    }

    /** Of what is left at each doubling. */
    public Interval rateInterval(double level) {
        double half = TDistribution.of(n - 2.0).inverseSurvivalProbability((1 - level) / 2) * se;
        return new Interval(rate(slope - half), rate(slope + half));
    }

    private static double rate(double slope) {
        return Math.pow(2, slope);
    }
}
