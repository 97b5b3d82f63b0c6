package org.salvedge.demo;

import java.util.List;
import java.util.SplittableRandom;
import java.util.function.ToDoubleFunction;

/** Seeded draws that are the same on every machine: strict arithmetic, no order of threads. */
final class Dice {
    private final SplittableRandom random;

    Dice(long seed) {
        random = new SplittableRandom(seed);
    }

    boolean chance(double p) {
        return random.nextDouble() < p;
    }

    double uniform(double low, double high) {
        return low + (high - low) * random.nextDouble();
    }

    /** A whole number from low to high, both included. */
    int whole(int low, int high) {
        return random.nextInt(low, high + 1);
    }

    /** Marsaglia's polar method (1964), with strict logarithms. */
    double normal() {
        while (true) {
            double u = uniform(-1, 1);
            double v = uniform(-1, 1);
            double s = u * u + v * v;
            if (s > 0 && s < 1) {
                return u * StrictMath.sqrt(-2 * StrictMath.log(s) / s);
            }
        }
    }

    double logNormal(double median, double sigma) {
        return median * StrictMath.exp(sigma * normal());
    }

    double exponential(double mean) {
        return -mean * StrictMath.log(1 - random.nextDouble());
    }

    <T> T pick(List<T> of, ToDoubleFunction<T> weight) {
        double total = of.stream().mapToDouble(weight).sum();
        double at = random.nextDouble() * total;
        for (T t : of) {
            at -= weight.applyAsDouble(t);
            if (at < 0) {
                return t;
            }
        }
        return of.get(of.size() - 1);
    }

    static double logistic(double x) {
        return 1 / (1 + StrictMath.exp(-x));
    }

    static double logit(double p) {
        return StrictMath.log(p / (1 - p));
    }
}
