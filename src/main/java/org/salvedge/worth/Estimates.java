package org.salvedge.worth;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.salvedge.stats.ChangePoints;
import org.salvedge.stats.Gammas;
import org.salvedge.stats.MixedModel;

/**
 * One set of values for everything that is estimated: drawn from what is known of it, or as it is at the centre.
 *
 * @param damage coefficients of the {@link DamageModel}, and so on
 * @param shares faults by claim
 * @param level of the supplier, by respect as in {@link Levels}
 * @param market log of the price level when the lot sells
 * @param middle months from the day the history is as of until it does
 * @param missing chance that a set does not come
 * @param handling factors on mean minutes and parts
 * @param comebacks factor on what comebacks cost
 * @param lotFactor spread of a lot's own level
 */
record Estimates(
        double[] damage,
        double[] success,
        double[] price,
        double[] strip,
        double[][] shares,
        double[] level,
        double market,
        double middle,
        double missing,
        double[][][] handling,
        double comebacks,
        double[][] lotFactor) {
    /**
     * @param supplier number in the history, -1 = never seen
     * @param track what is known of it
     * @param ahead months from the day the history is as of to the purchase
     */
    static Estimates drawn(Parts p, int supplier, ChangePoints track, double ahead, SplittableRandom random) {
        double[] spread = p.levels.drawSpread(random);
        for (int d = 0; d < spread.length; d++) {
            spread[d] *= p.widening;
        }
        double[] level = p.levels.drawSupplier(track, spread, random);
        double[] price = drawn(p.sales.model(), random);
        double[] times = p.takings.wait.clone();
        double middle = 0;
        for (int i = 0; i < times.length; i++) {
            times[i] = ahead + times[i] * 12 / 365.25;
            middle += times[i] / times.length;
        }
        double[] shape = p.takings.missingShape(supplier);
        return new Estimates(
                drawn(p.damage.model(), random),
                drawn(p.success.model(), random),
                price,
                drawn(p.stripping.model(), random),
                p.mix.drawShares(random),
                level,
                logMean(p.sales.calendar().draw(times, random))
                        + p.sales.calendar().shift(price),
                middle,
                Gammas.beta(shape[0], shape[1], random),
                p.handling.draw(random),
                p.takings.drawComebacks(random),
                p.levels.lotFactor(spread));
    }

    /** The most likely values, for a lot of the past bought on a day, of any supplier. */
    static Estimates central(Parts p, int bought) {
        double market = 0;
        double middle = 0;
        double[] wait = p.takings.wait;
        for (double w : wait) {
            double month = Math.min(0, p.records.months(bought + (int) w));
            market += p.sales.calendar().level(month) / wait.length;
            middle += month / wait.length;
        }
        double[] shape = p.takings.missingShape(-1);
        return new Estimates(
                centre(p.damage.model()),
                centre(p.success.model()),
                centre(p.sales.model()),
                centre(p.stripping.model()),
                p.mix.shares(),
                new double[Levels.COUNT],
                market,
                middle,
                shape[0] / (shape[0] + shape[1]),
                p.handling.asEstimated(),
                1,
                p.levels.wholeFactor());
    }

    private static double[] drawn(MixedModel model, SplittableRandom random) {
        double[] z = new double[model.size()];
        for (int i = 0; i < z.length; i++) {
            z[i] = random.nextGaussian();
        }
        model.draw(z);
        return z;
    }

    private static double[] centre(MixedModel model) {
        double[] b = new double[model.size()];
        Arrays.setAll(b, model::coefficient);
        return b;
    }

    private static double logMean(double[] logs) {
        double sum = 0;
        for (double l : logs) {
            sum += Math.exp(l);
        }
        return Math.log(sum / logs.length);
    }
}
