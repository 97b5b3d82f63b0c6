package org.salvedge.stats;

import java.util.ArrayList;
import java.util.List;

/**
 * Control chart of proportions from samples of different size: plain, with binomial limits, or Laney's p', whose limits also carry
 * the spread between samples that the binomial does not know.
 *
 * <p>Sources: D. C. Montgomery, "Introduction to Statistical Quality Control", 6th ed. (2009), section 7.2; D. B. Laney, "Improved
 * control charts for attributes", Quality Engineering 14 (2002) 531-537.
 */
public final class PChart {
    /** The mean moving range of two over the standard deviation, 2 / sqrt(pi), as control chart tables round it. */
    public static final double D2_TABLE = 1.128;

    /** The same without rounding. */
    public static final double D2_EXACT = 2 / Math.sqrt(Math.PI);

    private static final double LIMIT = 3;

    private final double centre;
    private final double sigmaZ;
    private final List<Point> points;

    /**
     * A sample on the chart.
     *
     * @param z distance of the proportion from the centre in standard deviations of the chart
     * @param low lower limit, not below 0
     * @param high upper limit, not above 1
     */
    public record Point(double proportion, double z, double low, double high) {
        public boolean outside() {
            return proportion < low || proportion > high;
        }
    }

    private PChart(long[] x, long[] n, double d2) {
        double successes = 0;
        double trials = 0;
        for (int i = 0; i < n.length; i++) {
            if (n[i] < 1 || x[i] < 0 || x[i] > n[i]) {
                throw new IllegalArgumentException("sample " + i + ": " + x[i] + " of " + n[i]);
            }
            successes += x[i];
            trials += n[i];
        }
        if (n.length == 0) {
            throw new IllegalArgumentException("a chart needs a sample");
        }
        centre = successes / trials;
        sigmaZ = d2 == 0 ? 1 : spread(x, n, d2);
        List<Point> all = new ArrayList<>(n.length);
        for (int i = 0; i < n.length; i++) {
            all.add(at(x[i], n[i]));
        }
        points = List.copyOf(all);
    }

    private double spread(long[] x, long[] n, double d2) {
        if (n.length < 2) {
            throw new IllegalArgumentException("moving ranges need two samples");
        }
        double ranges = 0;
        for (int i = 1; i < n.length; i++) {
            ranges += Math.abs(binomialZ(x[i], n[i]) - binomialZ(x[i - 1], n[i - 1]));
        }
        return ranges / (n.length - 1) / d2;
    }

    private double binomialZ(long x, long n) {
        double sd = Math.sqrt(centre * (1 - centre) / n);
        return sd == 0 ? 0 : (x / (double) n - centre) / sd;
    }

    /** Limits at three binomial standard deviations. */
    public static PChart plain(long[] successes, long[] trials) {
        return new PChart(successes, trials, 0);
    }

    /**
     * Laney's p': limits at three binomial standard deviations times sigma z, the standard deviation of the samples' z-values by
     * their mean moving range.
     *
     * @param successes in order of time
     * @param d2 {@link #D2_TABLE}, as published examples use it, or {@link #D2_EXACT}
     */
    public static PChart laney(long[] successes, long[] trials, double d2) {
        if (!(d2 > 0)) {
            throw new IllegalArgumentException("d2 = " + d2);
        }
        return new PChart(successes, trials, d2);
    }

    /** Mean of all trials. */
    public double centre() {
        return centre;
    }

    /** Spread between samples over what chance within them makes; 1 in a plain chart. */
    public double sigmaZ() {
        return sigmaZ;
    }

    public List<Point> points() {
        return points;
    }

    /** Where a sample, which may be a later one, would stand on this chart. */
    public Point at(long successes, long trials) {
        double p = successes / (double) trials;
        double sd = sigmaZ * Math.sqrt(centre * (1 - centre) / trials);
        double z = sd == 0 ? 0 : (p - centre) / sd;
        return new Point(p, z, Math.max(0, centre - LIMIT * sd), Math.min(1, centre + LIMIT * sd));
    }

    /** Indices of the samples outside their limits. */
    public int[] outside() {
        return java.util.stream.IntStream.range(0, points.size())
                .filter(i -> points.get(i).outside())
                .toArray();
    }
}
