package org.salvedge.worth.study;

import java.util.SplittableRandom;

/** A stream of seeded chance, in the shapes that the worlds use. */
final class Dice {
    private static final double LN2 = Math.log(2);

    private final SplittableRandom random;

    Dice(long seed) {
        this(new SplittableRandom(seed));
    }

    private Dice(SplittableRandom random) {
        this.random = random;
    }

    /** A stream of its own, so that what follows here does not depend on how much is drawn there. */
    Dice split() {
        return new Dice(random.split());
    }

    double uniform() {
        return random.nextDouble();
    }

    double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /** Both ends included. */
    int whole(int low, int high) {
        return random.nextInt(low, high + 1);
    }

    boolean chance(double p) {
        return random.nextDouble() < p;
    }

    double normal() {
        return random.nextGaussian();
    }

    /** Student's t. */
    double student(int df) {
        return normal() / Math.sqrt(gamma(df / 2.0, 1));
    }

    /** Gamma of a shape of 0.1 or more; Marsaglia and Tsang (2000), ACM Trans. Math. Softw. 26, 363-372. */
    double gamma(double shape, double mean) {
        double k = shape < 1 ? shape + 1 : shape;
        double d = k - 1.0 / 3;
        double c = 1 / Math.sqrt(9 * d);
        double v;
        double x;
        do {
            do {
                x = normal();
                v = 1 + c * x;
            } while (v <= 0);
            v = v * v * v;
        } while (Math.log(uniform()) >= 0.5 * x * x + d * (1 - v + Math.log(v)));
        double boost = shape < 1 ? Math.pow(uniform(), 1 / shape) : 1;
        return boost * d * v * mean / shape;
    }

    double weibull(double shape, double median) {
        return median * Math.pow(-Math.log(1 - uniform()) / LN2, 1 / shape);
    }

    /** An index, by weights that need not add up to 1. */
    int pick(double[] weights) {
        double sum = 0;
        for (double w : weights) {
            sum += w;
        }
        double u = uniform() * sum;
        for (int i = 0; i < weights.length - 1; i++) {
            u -= weights[i];
            if (u < 0) {
                return i;
            }
        }
        return weights.length - 1;
    }
}
