package org.salvedge.worth.study;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.function.ToDoubleFunction;

/**
 * A figure over judged lots: the ratio of two sums, with its standard error by leaving out one shop at a time (delete-a-group
 * jackknife; Efron and Tibshirani 1993, An Introduction to the Bootstrap, chapter 11).
 */
record Figure(double value, double error) {
    static Figure ratio(List<Judged> lots, ToDoubleFunction<Judged> above, ToDoubleFunction<Judged> below) {
        Map<String, double[]> shops = new LinkedHashMap<>();
        double top = 0;
        double bottom = 0;
        for (Judged lot : lots) {
            double a = above.applyAsDouble(lot);
            double b = below.applyAsDouble(lot);
            double[] sums = shops.computeIfAbsent(lot.world() + "/" + lot.shop(), k -> new double[2]);
            sums[0] += a;
            sums[1] += b;
            top += a;
            bottom += b;
        }
        List<Double> without = new ArrayList<>();
        for (double[] sums : shops.values()) {
            without.add((top - sums[0]) / (bottom - sums[1]));
        }
        double mean =
                without.stream().mapToDouble(Double::doubleValue).average().orElse(Double.NaN);
        double squares = 0;
        for (double w : without) {
            squares += (w - mean) * (w - mean);
        }
        int g = without.size();
        return new Figure(top / bottom, Math.sqrt(squares * (g - 1) / g));
    }

    static Figure mean(List<Judged> lots, ToDoubleFunction<Judged> of) {
        return ratio(lots, of, lot -> 1);
    }

    static Figure share(List<Judged> lots, java.util.function.Predicate<Judged> holds) {
        return mean(lots, lot -> holds.test(lot) ? 1 : 0);
    }
}
