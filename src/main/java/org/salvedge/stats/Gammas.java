package org.salvedge.stats;

import java.util.SplittableRandom;

/**
 * Gamma variates of scale 1.
 *
 * <p>Method: Marsaglia and Tsang, "A simple method for generating gamma variables", ACM Transactions on Mathematical Software 26
 * (2000) 363-372, with their boost for shapes below 1.
 */
public final class Gammas {
    private Gammas() {}

    /** @param shape more than 0 */
    public static double draw(double shape, SplittableRandom random) {
        if (shape < 1) {
            double u = 1 - random.nextDouble();
            return draw(shape + 1, random) * Math.pow(u, 1 / shape);
        }
        double d = shape - 1.0 / 3;
        double c = 1 / Math.sqrt(9 * d);
        while (true) {
            double x = random.nextGaussian();
            double v = 1 + c * x;
            if (v <= 0) {
                continue;
            }
            v = v * v * v;
            double u = 1 - random.nextDouble();
            if (Math.log(u) < 0.5 * x * x + d - d * v + d * Math.log(v)) {
                return d * v;
            }
        }
    }

    /** Beta variate. */
    public static double beta(double a, double b, SplittableRandom random) {
        double x = draw(a, random);
        return x / (x + draw(b, random));
    }
}
