package org.salvedge.worth;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.salvedge.stats.MixedData;
import org.salvedge.stats.MixedModel;
import org.salvedge.stats.MixedPrior;
import org.salvedge.stats.TrendMixture;

/**
 * A price level month by month, and where it is going. Months count back from the day the history is as of: month 0 is the last.
 */
final class Calendar implements java.io.Serializable {
    private static final double MIDDLE = 0.5;
    private static final int LONGEST = 60;
    /** Prices of used sets fall, as a rule, a month. */
    private static final double USUAL_SLOPE = -0.003;

    private static final double MONTH_SD = 0.2;

    private final int first;
    private final int months;
    private final double[] count;
    private double[] levels = new double[0];
    private TrendMixture trend = new TrendMixture(new double[0], new double[0], USUAL_SLOPE);

    /** @param earliest month of the first observation, negative */
    Calendar(MixedPrior prior, double earliest) {
        months = (int) Math.ceil(-earliest) + 1;
        first = prior.coefficients(prior.fixed(MONTH_SD * MONTH_SD), months);
        count = new double[months];
    }

    private int month(double at) {
        return Math.max(0, Math.min(months - 1, (int) -at));
    }

    void term(MixedData.Builder data, double at) {
        int m = month(at);
        count[m]++;
        data.term(first + m, 1);
    }

    /** Reads the months' levels out of the fitted model. */
    void settle(MixedModel model) {
        levels = new double[months];
        int n = Math.min(LONGEST, months);
        double[] level = new double[n];
        double[] variance = new double[n];
        for (int m = 0; m < months; m++) {
            levels[m] = model.coefficient(first + m);
        }
        for (int t = 0; t < n; t++) {
            int m = n - 1 - t;
            level[t] = count[m] > 0 ? levels[m] : Double.NaN;
            variance[t] = count[m] > 0 ? model.noise() / count[m] : 0;
        }
        int from = 0;
        while (from < n && Double.isNaN(level[from])) {
            from++;
        }
        trend = new TrendMixture(
                Arrays.copyOfRange(level, from, n), Arrays.copyOfRange(variance, from, n), USUAL_SLOPE);
    }

    /** The level at a month of the past, as estimated. */
    double level(double at) {
        return levels[month(at)];
    }

    /** What a draw of the coefficients says beyond the estimate, over all months by their weight. */
    double shift(double[] beta) {
        double sum = 0;
        double n = 0;
        for (int m = 0; m < months; m++) {
            sum += count[m] * (beta[first + m] - levels[m]);
            n += count[m];
        }
        return n == 0 ? 0 : sum / n;
    }

    /** Levels at times to come, in months from the day the history is as of. */
    double[] draw(double[] ahead, SplittableRandom random) {
        double[] periods = ahead.clone();
        for (int i = 0; i < periods.length; i++) {
            periods[i] += MIDDLE;
        }
        return trend.draw(periods, random);
    }

    double slope() {
        return trend.slope();
    }

    double expected(double ahead) {
        return trend.mean(ahead + MIDDLE);
    }
}
