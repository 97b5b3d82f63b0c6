package org.salvedge.stats;

/**
 * Effort that falls by the same share with each doubling of what has been done. The same percentage means different things in the
 * two theories: at 80 % and 100 for the first, the second unit takes 80 by Crawford's and 60 by Wright's.
 *
 * <p>Sources: T. P. Wright, "Factors affecting the cost of airplanes", Journal of the Aeronautical Sciences 3 (1936) 122-128
 * (cumulative average); J. R. Crawford (1944), as in J. Heizer and B. Render, "Operations Management", module E (unit).
 *
 * @param theory what falls: the effort of a unit, or the average of all so far
 * @param first effort of the first unit, above 0
 * @param rate what is left at each doubling, as 0.8
 */
public record LearningCurve(Theory theory, double first, double rate) {
    /** Which quantity follows the power law. */
    public enum Theory {
        /** Crawford: the effort of the n-th unit. */
        UNIT,
        /** Wright: the average effort of the first n units. */
        CUMULATIVE_AVERAGE
    }

    private static final double LN_2 = Math.log(2);

    public LearningCurve {
        if (!(first > 0 && rate > 0)) {
            throw new IllegalArgumentException("first unit " + first + ", rate " + rate);
        }
    }

    /** A curve through a later unit (of the unit theory): effort at unit n. */
    public static LearningCurve through(double n, double effort, double rate) {
        return new LearningCurve(Theory.UNIT, effort / Math.pow(n, Math.log(rate) / LN_2), rate);
    }

    /** The power, below 0 where one learns: log2 of the rate. */
    public double slope() {
        return Math.log(rate) / LN_2;
    }

    /** Effort of the n-th unit, from 1. */
    public double unit(long n) {
        if (n < 1) {
            throw new IllegalArgumentException("unit " + n);
        }
        return theory == Theory.UNIT ? first * Math.pow((double) n, slope()) : total(n) - total(n - 1);
    }

    /** Effort of the first n units together. */
    public double total(long n) {
        if (theory == Theory.CUMULATIVE_AVERAGE) {
            return n == 0 ? 0 : first * Math.pow((double) n, 1 + slope());
        }
        double sum = 0;
        for (long i = n; i >= 1; i--) {
            sum += Math.pow((double) i, slope());
        }
        return first * sum;
    }

    /** Average effort of the first n units. */
    public double average(long n) {
        return total(n) / (double) n;
    }
}
