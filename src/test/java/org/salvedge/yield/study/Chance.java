package org.salvedge.yield.study;

import java.util.SplittableRandom;

/** Random numbers of one shop. */
final class Chance {
    private final SplittableRandom random;

    Chance(long seed) {
        random = new SplittableRandom(seed);
    }

    boolean of(double p) {
        return random.nextDouble() < p;
    }

    double between(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    int whole(int low, int high) {
        return low + random.nextInt(high - low + 1);
    }

    double normal() {
        return random.nextGaussian();
    }

    double logNormal(double median, double sigma) {
        return median * StrictMath.exp(sigma * normal());
    }

    /** Exponential. */
    double span(double mean) {
        return -mean * StrictMath.log(1 - random.nextDouble());
    }

    int pick(double... weights) {
        double sum = 0;
        for (double w : weights) {
            sum += w;
        }
        double at = random.nextDouble() * sum;
        for (int i = 0; i < weights.length; i++) {
            at -= weights[i];
            if (at < 0) {
                return i;
            }
        }
        return weights.length - 1;
    }
}
