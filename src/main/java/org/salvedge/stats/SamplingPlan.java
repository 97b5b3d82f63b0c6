package org.salvedge.stats;

import org.apache.commons.statistics.distribution.BinomialDistribution;
import org.apache.commons.statistics.distribution.HypergeometricDistribution;

/**
 * Accept a lot if a sample of n holds at most c defectives.
 *
 * <p>Sources: D. C. Montgomery, "Introduction to Statistical Quality Control", 6th ed. (2009), section 15.2; NIST/SEMATECH e-Handbook,
 * section 6.2.3.2; G. J. Hahn and W. Q. Meeker, "Statistical Intervals" (1991), chapter 6 (zero failures).
 */
public record SamplingPlan(int n, int c) {
    public SamplingPlan {
        if (n < 1 || c < 0) {
            throw new IllegalArgumentException("sample of " + n + ", acceptance number " + c);
        }
    }

    /** Chance of acceptance at a share of defectives, in a lot much larger than the sample. */
    public double acceptance(double share) {
        return BinomialDistribution.of(n, share).cumulativeProbability(c);
    }

    /** Chance of acceptance of a lot of this size with this many defectives. */
    public double acceptance(int lot, int defectives) {
        return HypergeometricDistribution.of(lot, defectives, n).cumulativeProbability(c);
    }

    /** Average share of defectives that passes, when refused lots are sorted. */
    public double outgoing(int lot, double share) {
        return acceptance(share) * share * (lot - n) / lot;
    }

    /** Average number inspected a lot, when refused lots are sorted. */
    public double inspected(int lot, double share) {
        return n + (1 - acceptance(share)) * (lot - n);
    }

    /** Sample that, without one failure, shows a reliability at a confidence. */
    public static int withoutFailure(double confidence, double reliability) {
        return (int) Math.ceil(Math.log1p(-confidence) / Math.log(reliability) - 1e-9);
    }

    /**
     * What is believed of the good ones among those not inspected, if all numbers of good ones in the lot were alike likely.
     *
     * <p>Source: C. D. Broad, Mind 27 (1918) 389-404; H. Jeffreys, "Theory of Probability", 3rd ed. (1961), section 3.2 (rule of
     * succession).
     */
    public static BetaBinomial restOfLot(int lot, int inspected, int good) {
        if (inspected > lot || good > inspected || good < 0) {
            throw new IllegalArgumentException(good + " good of " + inspected + " inspected of " + lot);
        }
        return new BetaBinomial(lot - inspected, new Beta(1, 1).after(good, inspected - good));
    }
}
