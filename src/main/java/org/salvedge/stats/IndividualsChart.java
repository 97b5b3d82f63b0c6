package org.salvedge.stats;

/**
 * Control chart of single values, its spread from the mean moving range of two.
 *
 * <p>Source: NIST/SEMATECH e-Handbook of Statistical Methods, section 6.3.2.2.
 *
 * @param centre mean of the values
 * @param movingRange mean absolute difference of each value from the one before
 */
public record IndividualsChart(double centre, double movingRange) {
    private static final double LIMIT = 3;

    /** @param values in order of time, at least two */
    public static IndividualsChart of(double... values) {
        if (values.length < 2) {
            throw new IllegalArgumentException("moving ranges need two values, not " + values.length);
        }
        double ranges = 0;
        for (int i = 1; i < values.length; i++) {
            ranges += Math.abs(values[i] - values[i - 1]);
        }
        return new IndividualsChart(Moments.of(values).mean(), ranges / (values.length - 1));
    }

    /** The mean moving range over 1.128. */
    public double sigma() {
        return movingRange / PChart.D2_TABLE;
    }

    /** Three sigma either way. */
    public Interval limits() {
        return new Interval(centre - LIMIT * sigma(), centre + LIMIT * sigma());
    }

    /** Distance from the centre in sigmas; 0 where nothing ever moved. */
    public double z(double value) {
        return sigma() == 0 ? 0 : (value - centre) / sigma();
    }
}
