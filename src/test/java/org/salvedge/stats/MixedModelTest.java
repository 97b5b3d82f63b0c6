package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

/** At the mode of a linear model the slope of the penalised likelihood is nought, by every coefficient and every group's effect. */
class MixedModelTest {
    private static final int GROUPS = 7;
    private static final int LEVELS = 6;

    /** @param column of each term, in any order */
    private record Row(int group, double y, double n, int[] column, double[] value) {}

    private static List<Row> rows(SplittableRandom random) {
        List<Row> rows = new ArrayList<>();
        double[] effect = random.doubles(GROUPS, -1, 1).toArray();
        for (int i = 0; i < 120; i++) {
            int group = random.nextInt(GROUPS + 1) - 1;
            double x = random.nextGaussian();
            int level = random.nextInt(LEVELS - group % 3);
            double y = 2 + 0.5 * x + 0.3 * level + (group < 0 ? 0 : effect[group]) + 0.4 * random.nextGaussian();
            boolean turned = i % 2 == 0;
            rows.add(new Row(
                    group,
                    y,
                    1 + random.nextInt(3),
                    turned ? new int[] {2 + level, 1, 0} : new int[] {0, 1, 2 + level},
                    new double[] {1, x, 1}));
        }
        return rows;
    }

    @Test
    void theSlopeAtTheModeIsNought() {
        for (int seed = 0; seed < 5; seed++) {
            MixedPrior prior = new MixedPrior().groups(0.2, 3).noise(0.1, 3);
            int known = prior.fixed(4.0);
            prior.coefficient(known, 1);
            prior.coefficient(known, 0);
            int spread = prior.spread(0.1, 3);
            prior.coefficients(spread, LEVELS + 1);
            List<Row> rows = rows(new SplittableRandom(seed));
            MixedData.Builder data = new MixedData.Builder(GROUPS);
            for (Row r : rows) {
                data.row(r.group, r.y, r.n);
                for (int k = 0; k < r.column.length; k++) {
                    data.term(r.column[k], r.value[k]);
                }
            }
            MixedModel model = MixedModel.linear(data.build(), prior);
            double[] slope = new double[model.size()];
            double[] ofGroup = new double[GROUPS];
            for (int j = 0; j < slope.length; j++) {
                double mean = j == 0 ? 1 : 0;
                slope[j] = -(model.coefficient(j) - mean) / (j < 2 ? 4 : model.classVariance(spread));
            }
            for (int g = 0; g < GROUPS; g++) {
                ofGroup[g] = -model.effect(g) / model.groupVariance();
            }
            for (Row r : rows) {
                double e = r.y - (r.group < 0 ? 0 : model.effect(r.group));
                for (int k = 0; k < r.column.length; k++) {
                    e -= r.value[k] * model.coefficient(r.column[k]);
                }
                double pull = r.n * e / model.noise();
                for (int k = 0; k < r.column.length; k++) {
                    slope[r.column[k]] += pull * r.value[k];
                }
                if (r.group >= 0) {
                    ofGroup[r.group] += pull;
                }
            }
            assertThat(slope).usingComparatorWithPrecision(1e-8).containsOnly(0);
            assertThat(ofGroup).usingComparatorWithPrecision(1e-8).containsOnly(0);
            assertThat(model.effect(0)).isNotCloseTo(0, within(1e-3));
        }
    }
}
