package org.salvedge.yield;

import java.util.List;
import org.salvedge.stats.OneStep;

/**
 * Whether the same sets sell for more or less: monthly levels of the log price beside effects of family and grade, and how far
 * the month's level is from what the months before foretell, by the errors that such foretelling made before.
 */
final class PriceSuspect {
    private static final int ROUNDS = 20;
    private static final int FEWEST = 5;
    private static final int FEWEST_ERRORS = 3;
    private static final double OUTLIER = 3;

    private final CauseData.Sales sales;
    private final double[] month = new double[CauseData.MONTHS];
    private final int[] count = new int[CauseData.MONTHS];
    private double noise;

    private PriceSuspect(CauseData data) {
        sales = data.sales;
        fit(data.history.families().size());
    }

    static List<Suspect> of(CauseData data) {
        return new PriceSuspect(data).suspects();
    }

    /** Least squares by fitting one factor after another to what the others leave; what is far off counts as less far. */
    private void fit(int families) {
        int n = sales.size();
        double[] family = new double[families];
        double[] grade = new double[8];
        double[] rest = new double[n];
        for (int i = 0; i < n; i++) {
            count[sales.month.getInt(i)]++;
        }
        noise = Double.POSITIVE_INFINITY;
        for (int round = 0; round < ROUNDS; round++) {
            level(
                    family,
                    families,
                    i -> sales.family.getInt(i),
                    i -> month(i) + grade[sales.grade.getInt(i)],
                    rest,
                    round > 0);
            level(
                    grade,
                    8,
                    i -> sales.grade.getInt(i),
                    i -> month(i) + family[sales.family.getInt(i)],
                    rest,
                    round > 0);
            level(
                    month,
                    CauseData.MONTHS,
                    i -> sales.month.getInt(i),
                    i -> grade[sales.grade.getInt(i)] + family[sales.family.getInt(i)],
                    rest,
                    round > 0);
            double squares = 0;
            for (int i = 0; i < n; i++) {
                rest[i] = sales.logPrice.getDouble(i)
                        - month(i)
                        - grade[sales.grade.getInt(i)]
                        - family[sales.family.getInt(i)];
                squares += Math.min(rest[i] * rest[i], OUTLIER * OUTLIER * noise * noise);
            }
            noise = n == 0 ? 0 : Math.sqrt(squares / n);
        }
    }

    private double month(int sale) {
        return month[sales.month.getInt(sale)];
    }

    /** Means of what is left beside the other factors, by group; with outliers drawn in. */
    private void level(
            double[] effect,
            int groups,
            java.util.function.IntUnaryOperator group,
            java.util.function.IntToDoubleFunction others,
            double[] rest,
            boolean drawIn) {
        double[] sum = new double[groups];
        int[] n = new int[groups];
        for (int i = 0; i < sales.size(); i++) {
            double value = sales.logPrice.getDouble(i) - others.applyAsDouble(i);
            if (drawIn) {
                double most = OUTLIER * noise;
                double was = rest[i];
                value += Math.max(-most, Math.min(most, was)) - was;
            }
            sum[group.applyAsInt(i)] += value;
            n[group.applyAsInt(i)]++;
        }
        for (int g = 0; g < groups; g++) {
            effect[g] = n[g] == 0 ? 0 : sum[g] / n[g];
        }
    }

    private List<Suspect> suspects() {
        int first = 0;
        while (first < CauseData.NOW && count[first] < FEWEST) {
            first++;
        }
        if (count[CauseData.NOW] < FEWEST) {
            return List.of();
        }
        double[] levels = new double[CauseData.MONTHS - first];
        double[] errors = new double[levels.length];
        for (int m = first; m < CauseData.MONTHS; m++) {
            if (count[m] < FEWEST) {
                return List.of();
            }
            levels[m - first] = month[m];
            errors[m - first] = noise / Math.sqrt(count[m]);
        }
        if (levels.length < 3 + FEWEST_ERRORS) {
            return List.of();
        }
        OneStep step = OneStep.last(levels, errors);
        return List.of(new Suspect(
                Cause.Kind.PRICE, "", Math.expm1(step.error()), step.t(), step.freedom(), 1, count[CauseData.NOW]));
    }
}
