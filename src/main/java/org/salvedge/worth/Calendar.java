package org.salvedge.worth;

import org.salvedge.stats.MixedData;
import org.salvedge.stats.MixedPrior;

/**
 * A price level in time: the slope now, the changes of slope that led to it, quarter by quarter, and each month's own deviation.
 * Months count from the day the history is as of; the past is negative.
 *
 * <p>An integrated random walk written as a regression on hinges, as in Ruppert, Wand and Carroll, "Semiparametric Regression"
 * (2003), section 4.9.
 */
final class Calendar {
    static final double QUARTER = 3;
    private static final int FINE = 16;

    private final double[] hinges;
    private final int slope;
    private final int firstHinge;
    private final int firstMonth;
    private final int months;
    private final int hingeClass;
    private final int monthClass;

    /**
     * @param earliest month of the first observation, negative
     * @param slopeSd of the slope now, a month
     * @param hingeSd of a change of slope from quarter to quarter
     */
    Calendar(MixedPrior prior, double earliest, double slopeSd, double hingeSd, double monthSd) {
        int fine = (int) Math.min(FINE, Math.floor(-earliest / QUARTER));
        int coarse = (int) Math.max(0, Math.floor((-earliest - FINE * QUARTER) / 12));
        hinges = new double[fine + coarse];
        for (int i = 0; i < fine; i++) {
            hinges[i] = -(i + 1) * QUARTER;
        }
        for (int i = 0; i < coarse; i++) {
            hinges[fine + i] = -FINE * QUARTER - (i + 1) * 12.0;
        }
        slope = prior.coefficient(prior.fixed(slopeSd * slopeSd), 0);
        hingeClass = prior.spread(hingeSd * hingeSd, 6);
        firstHinge = prior.coefficients(hingeClass, hinges.length);
        monthClass = prior.spread(monthSd * monthSd, 6);
        months = (int) Math.ceil(-earliest) + 1;
        firstMonth = prior.coefficients(monthClass, months);
    }

    void terms(MixedData.Builder data, double month) {
        data.term(slope, month);
        for (int i = 0; i < hinges.length; i++) {
            if (month < hinges[i]) {
                data.term(firstHinge + i, hinges[i] - month);
            }
        }
        data.term(firstMonth + Math.min(months - 1, (int) -month), 1);
    }

    /** The slope now, a month. */
    double slope(double[] beta) {
        return beta[slope];
    }

    int slopeIndex() {
        return slope;
    }

    int hingeClass() {
        return hingeClass;
    }

    int monthClass() {
        return monthClass;
    }
}
