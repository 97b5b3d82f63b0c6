package org.salvedge.worth;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.salvedge.stats.ChangePoints;
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
 * @param rest a set, what the supplier's sets bring beyond all that
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
        double rest,
        double[][] lotFactor) {
    private static final double MOST_MISSING = 0.6;

    /**
     * @param track what is known of the supplier
     * @param rest what is known of what no part accounts for
     * @param ahead months from the day the history is as of to the purchase
     */
    static Estimates drawn(Parts p, ChangePoints track, ChangePoints rest, double ahead, SplittableRandom random) {
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
                missing(p, level),
                p.handling.draw(random),
                p.takings.drawComebacks(random),
                Rest.draw(rest, random),
                p.levels.lotFactor(spread));
    }

    /** The most likely values, for a lot of the past bought on a day, at given levels. */
    static Estimates central(Parts p, int bought, double[] level) {
        double market = 0;
        double middle = 0;
        double[] wait = p.takings.wait;
        for (double w : wait) {
            double month = Math.min(0, p.records.months(bought + (int) w));
            market += p.sales.calendar().level(month) / wait.length;
            middle += month / wait.length;
        }
        return new Estimates(
                centre(p.damage.model()),
                centre(p.success.model()),
                centre(p.sales.model()),
                centre(p.stripping.model()),
                p.mix.shares(),
                level,
                market,
                middle,
                missing(p, level),
                p.handling.asEstimated(),
                1,
                0,
                p.levels.wholeFactor());
    }

    private static double missing(Parts p, double[] level) {
        return Math.min(MOST_MISSING, p.takings.missingUsual * Math.exp(level[Levels.MISSING]));
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
