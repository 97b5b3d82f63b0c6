package org.salvedge.stats;

import java.util.function.DoubleUnaryOperator;
import org.apache.commons.numbers.rootfinder.BrentSolver;
import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.interval.BinomialConfidenceInterval;

/**
 * Two-sided confidence intervals, with equal tails, for the chance behind x successes in n trials. Ends are fractions; the lower
 * end at x = 0 is exactly 0 and the upper end at x = n exactly 1.
 *
 * <p>Sources: R. G. Newcombe, "Two-sided confidence intervals for the single proportion: comparison of seven methods",
 * Statistics in Medicine 17 (1998) 857-872, methods 3 to 6; L. D. Brown, T. T. Cai and A. DasGupta, "Interval estimation for a
 * binomial proportion", Statistical Science 16 (2001) 101-133, sections 3 and 4, doi:10.1214/ss/1009213286.
 */
public enum ProportionInterval {
    /** E. B. Wilson (1927): the score interval without continuity correction. */
    WILSON {
        @Override
        Interval inside(int x, int n, double level) {
            return library(BinomialConfidenceInterval.WILSON_SCORE, x, n, level);
        }
    },
    /** The score interval with continuity correction; at least the nominal coverage, wide. */
    WILSON_CORRECTED {
        @Override
        Interval inside(int x, int n, double level) {
            double z = Normals.halfWidth(level);
            double p = (double) x / n;
            double q = 1 - p;
            double scale = 2 * (n + z * z);
            double low = 2 * x + z * z - 1 - z * Math.sqrt(z * z - 2 - 1.0 / n + 4 * p * (n * q + 1));
            double high = 2 * x + z * z + 1 + z * Math.sqrt(z * z + 2 - 1.0 / n + 4 * p * (n * q - 1));
            return new Interval(x == 0 ? 0 : clip(low / scale), x == n ? 1 : clip(high / scale));
        }
    },
    /** C. J. Clopper and E. S. Pearson (1934): never below the nominal coverage, called exact. */
    CLOPPER_PEARSON {
        @Override
        Interval inside(int x, int n, double level) {
            return library(BinomialConfidenceInterval.CLOPPER_PEARSON, x, n, level);
        }
    },
    /** Posterior under Jeffreys' prior Beta(1/2, 1/2), plain but for the ends at x = 0 and x = n. */
    JEFFREYS {
        @Override
        Interval inside(int x, int n, double level) {
            return library(BinomialConfidenceInterval.JEFFREYS, x, n, level);
        }
    },
    /** Jeffreys as modified at x = 0, 1, n - 1 and n, where the plain interval covers too seldom. */
    JEFFREYS_MODIFIED {
        @Override
        Interval inside(int x, int n, double level) {
            Interval plain = JEFFREYS.inside(x, n, level);
            double extreme = Math.pow((1 - level) / 2, 1.0 / n);
            double low = x <= 1 ? 0 : x == n ? extreme : plain.low();
            double high = x >= n - 1 ? 1 : x == 0 ? 1 - extreme : plain.high();
            return new Interval(low, high);
        }
    },
    /** Clopper and Pearson's with half the chance of x itself: about the nominal coverage on average. */
    MID_P {
        @Override
        Interval inside(int x, int n, double level) {
            double tail = (1 - level) / 2;
            double low = x == 0 ? 0 : root(p -> above(x, n, p) - tail, 0, (double) x / n);
            double high = x == n ? 1 : root(p -> tail - (1 - above(x, n, p)), (double) x / n, 1);
            return new Interval(low, high);
        }
    };

    private static final double ROOT_ACCURACY = 1e-14;

    /**
     * @param x successes, from 0 to n
     * @param n trials, at least 1
     * @param level coverage, as 0.95
     */
    public Interval of(int x, int n, double level) {
        if (n < 1 || x < 0 || x > n) {
            throw new IllegalArgumentException(x + " successes in " + n + " trials");
        }
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("level " + level + " is not between 0 and 1");
        }
        return inside(x, n, level);
    }

    abstract Interval inside(int x, int n, double level);

    private static Interval library(BinomialConfidenceInterval method, int x, int n, double level) {
        var ends = method.fromErrorRate(n, x, 1 - level);
        return new Interval(x == 0 ? 0 : clip(ends.getLowerBound()), x == n ? 1 : clip(ends.getUpperBound()));
    }

    private static double clip(double end) {
        return Math.min(1, Math.max(0, end));
    }

    /** P(X > x) and half of P(X = x). */
    private static double above(int x, int n, double p) {
        BinomialDistribution d = BinomialDistribution.of(n, p);
        return d.survivalProbability(x) + 0.5 * d.probability(x);
    }

    private static double root(DoubleUnaryOperator f, double low, double high) {
        return new BrentSolver(ROOT_ACCURACY, ROOT_ACCURACY, ROOT_ACCURACY).findRoot(f, low, high);
    }
}
