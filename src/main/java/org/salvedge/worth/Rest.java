package org.salvedge.worth;

import java.util.Arrays;
import java.util.List;
import java.util.SplittableRandom;
import org.salvedge.stats.ChangePoints;

/**
 * What a supplier's sets bring beyond what all the parts together let expect, a set: the parts are never quite right, and where
 * they are wrong for a supplier, its finished lots show it.
 */
final class Rest implements java.io.Serializable {
    private static final double[] SHARES = {0.05, 0.2, 0.4, 0.6, 0.8};
    private static final double WORTH = 6;

    private final List<LotCheck.Outcome> outcomes;
    /** Of the lot of each outcome. */
    private final int[] supplier;

    private final double hazard;
    private final double variance;
    private double share = 0.4;

    Rest(Records r, LotCheck check, double hazard, double hourly) {
        this.hazard = hazard;
        outcomes = check.outcomes.stream()
                .sorted((a, b) -> Integer.compare(r.history.lotBought(a.lot()), r.history.lotBought(b.lot())))
                .toList();
        supplier =
                outcomes.stream().mapToInt(o -> r.history.lotSupplier(o.lot())).toArray();
        double usual = Math.pow(0.08 * hourly, 2);
        double excess = 0;
        double weight = 0;
        for (LotCheck.Outcome o : outcomes) {
            double w = usual / (usual + o.error());
            excess += w * w * (o.rest() * o.rest() - o.error());
            weight += w * w;
        }
        variance = Math.max(0.05 * usual, (excess + WORTH * usual) / (weight + WORTH));
        double best = Double.NEGATIVE_INFINITY;
        double chosen = share;
        for (double candidate : SHARES) {
            share = candidate;
            double fit = Math.log(candidate * (1 - candidate));
            for (int s = 0; s < r.history.suppliers().size(); s++) {
                fit += track(s).logLikelihood();
            }
            if (fit > best) {
                best = fit;
                chosen = candidate;
            }
        }
        share = chosen;
    }

    /** What is known of a supplier's level; -1 = a supplier never seen. */
    ChangePoints track(int of) {
        ChangePoints track = new ChangePoints(
                hazard, new double[] {share * variance}, new double[] {Levels.ANEW * share * variance});
        for (int i = 0; i < supplier.length; i++) {
            if (supplier[i] == of) {
                LotCheck.Outcome o = outcomes.get(i);
                track.observe(new double[] {o.rest()}, new double[] {o.error() + (1 - share) * variance});
            }
        }
        return track;
    }

    /** A supplier's level, drawn. */
    static double draw(ChangePoints track, SplittableRandom random) {
        double[] weights = track.weights();
        double u = random.nextDouble() * Arrays.stream(weights).sum();
        int h = 0;
        while (h < weights.length - 1 && u > weights[h]) {
            u -= weights[h++];
        }
        return track.mean(h, 0) + Math.sqrt(track.variance(h, 0)) * random.nextGaussian();
    }

    /** Standard deviation of a lot's own level. */
    double lotSd() {
        return Math.sqrt((1 - share) * variance);
    }

    @Override
    public String toString() {
        return "rest sd " + Math.sqrt(variance) + " share " + share;
    }
}
