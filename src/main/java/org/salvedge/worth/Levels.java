package org.salvedge.worth;

import java.util.Arrays;
import java.util.SplittableRandom;
import java.util.function.IntToDoubleFunction;
import java.util.stream.IntStream;
import org.salvedge.stats.ChangePoints;
import org.salvedge.stats.Cholesky;
import org.salvedge.stats.Gammas;
import org.salvedge.stats.MixedModel;

/**
 * What the sets of one lot share, in six respects: broken glass, success, price, bench minutes, sets that never come, and truth of the claims. A lot's level is its
 * supplier's, which may change from one lot to the next, plus the lot's own. How much is whose, and how often suppliers change, is
 * estimated from all lots.
 */
final class Levels implements java.io.Serializable {
    static final int DAMAGE = 0;
    static final int SUCCESS = 1;
    static final int PRICE = 2;
    static final int MINUTES = 3;
    static final int MISSING = 4;
    static final int TRUTH = 5;
    static final int COUNT = 6;
    /** Variance of a supplier's level after a change, over that of suppliers at large: who changes, changes much. */
    static final double ANEW = 1.4;

    private static final double CORRELATION_WORTH = 8;
    private static final double MOST_CORRELATED = 0.85;
    private static final double[] SHARES = {0.03, 0.1, 0.2, 0.35, 0.5, 0.65, 0.8};
    private static final double[] HAZARDS = {0.005, 0.015, 0.03, 0.06, 0.12};
    private static final double[] HAZARD_PRIOR = {0.15, 0.25, 0.3, 0.2, 0.1};

    /** Unshrunk level of each lot, and the variance of its error: infinite where nothing is known. */
    private final double[][] raw;

    private final double[][] error;
    private final int[][] lotsOf;
    private final double[] total;
    private final double[] freedom;
    private final double[] share = {0.35, 0.35, 0.2, 0.35, 0.5, 0.5};
    private double hazard = 0.03;
    private final double[][] correlation = new double[COUNT][COUNT];

    Levels(
            Records r,
            MixedModel damage,
            MixedModel success,
            PriceModel sales,
            Handling handling,
            FaultMix mix,
            double usualMissing) {
        LotEvidence seen = new LotEvidence(r, damage, success, sales, handling, mix, usualMissing);
        raw = seen.raw;
        error = seen.error;
        total = seen.total;
        freedom = seen.freedom;
        int suppliers = r.history.suppliers().size();
        int[] count = new int[suppliers];
        int[] order = r.lotsInOrder();
        for (int lot : order) {
            count[r.history.lotSupplier(lot)]++;
        }
        lotsOf = new int[suppliers][];
        for (int i = 0; i < suppliers; i++) {
            lotsOf[i] = new int[count[i]];
        }
        Arrays.fill(count, 0);
        for (int lot : order) {
            int s = r.history.lotSupplier(lot);
            lotsOf[s][count[s]++] = lot;
        }
        for (int sweep = 0; sweep < 2; sweep++) {
            for (int d = 0; d < COUNT; d++) {
                chooseShare(d);
            }
            chooseHazard();
        }
        correlate();
    }

    private void chooseShare(int d) {
        int best = best(SHARES.length, i -> logLikelihood(d, SHARES[i]) + Math.log(SHARES[i] * (1 - SHARES[i])));
        share[d] = best < 0 ? share[d] : SHARES[best];
    }

    /** The first of the candidates that fit best; -1 = none fits at all. */
    private static int best(int candidates, IntToDoubleFunction fit) {
        double[] fits =
                IntStream.range(0, candidates).parallel().mapToDouble(fit).toArray();
        int best = -1;
        for (int i = 0; i < fits.length; i++) {
            best = fits[i] > (best < 0 ? Double.NEGATIVE_INFINITY : fits[best]) ? i : best;
        }
        return best;
    }

    private void chooseHazard() {
        int best = best(HAZARDS.length, i -> {
            double fit = Math.log(HAZARD_PRIOR[i]);
            for (int s = 0; s < lotsOf.length; s++) {
                fit += track(s, HAZARDS[i]).logLikelihood();
            }
            return fit;
        });
        hazard = best < 0 ? hazard : HAZARDS[best];
    }

    private double logLikelihood(int d, double ofSupplier) {
        double sum = 0;
        double[] z = new double[1];
        double[] v = new double[1];
        for (int[] lots : lotsOf) {
            ChangePoints track = new ChangePoints(
                    hazard, new double[] {ofSupplier * total[d]}, new double[] {ANEW * ofSupplier * total[d]});
            for (int lot : lots) {
                z[0] = raw[lot][d];
                v[0] = error[lot][d] + (1 - ofSupplier) * total[d];
                track.observe(z, v);
            }
            sum += track.logLikelihood();
        }
        return sum;
    }

    private double[] supplierVariance() {
        double[] v = new double[COUNT];
        for (int d = 0; d < COUNT; d++) {
            v[d] = share[d] * total[d];
        }
        return v;
    }

    private double lotVariance(int d) {
        return (1 - share[d]) * total[d];
    }

    /** What is known of a supplier's level before its next lot; -1 = a supplier never seen. */
    ChangePoints track(int supplier) {
        return track(supplier, hazard);
    }

    private ChangePoints track(int supplier, double ofChange) {
        double[] anew = supplierVariance();
        for (int d = 0; d < COUNT; d++) {
            anew[d] *= ANEW;
        }
        ChangePoints track = new ChangePoints(ofChange, supplierVariance(), anew);
        if (supplier >= 0) {
            double[] v = new double[COUNT];
            for (int lot : lotsOf[supplier]) {
                for (int d = 0; d < COUNT; d++) {
                    v[d] = error[lot][d] + lotVariance(d);
                }
                track.observe(raw[lot], v);
            }
        }
        return track;
    }

    /** Correlation of the levels, from products of two respects of one lot, whose errors have nothing in common. */
    private void correlate() {
        double[][] cross = new double[COUNT][COUNT];
        double[][] weight = new double[COUNT][COUNT];
        for (int[] lots : lotsOf) {
            for (int lot : lots) {
                for (int d = 0; d < COUNT; d++) {
                    for (int e = 0; e < d; e++) {
                        double scale = Math.sqrt(total[d] * total[e]);
                        double w = reliability(lot, d) * reliability(lot, e);
                        cross[d][e] += w * raw[lot][d] * raw[lot][e] / scale;
                        weight[d][e] += w;
                    }
                }
            }
        }
        for (int d = 0; d < COUNT; d++) {
            correlation[d][d] = 1;
            for (int e = 0; e < d; e++) {
                double prior = d == SUCCESS && e == DAMAGE ? -0.2 : 0;
                double r = (cross[d][e] + CORRELATION_WORTH * prior) / (weight[d][e] + CORRELATION_WORTH);
                correlation[d][e] = Math.max(-MOST_CORRELATED, Math.min(MOST_CORRELATED, r));
                correlation[e][d] = correlation[d][e];
            }
        }
    }

    private double reliability(int lot, int d) {
        return error[lot][d] == Double.POSITIVE_INFINITY ? 0 : total[d] / (total[d] + error[lot][d]);
    }

    /** Factors by which the spreads of a draw differ from their estimates: these are uncertain, most of all with few lots. */
    double[] drawSpread(SplittableRandom random) {
        double[] factor = new double[COUNT];
        for (int d = 0; d < COUNT; d++) {
            double worth = Math.max(0, freedom[d]) + 6;
            factor[d] = Math.sqrt(worth / 2 / Gammas.draw(worth / 2, random));
        }
        return factor;
    }

    /** A supplier's level drawn from what is known of it. */
    double[] drawSupplier(ChangePoints track, double[] spread, SplittableRandom random) {
        double u = random.nextDouble();
        int h = 0;
        while (h < track.hypotheses() - 1 && u > track.weight(h)) {
            u -= track.weight(h);
            h++;
        }
        double[] level = new double[COUNT];
        for (int d = 0; d < COUNT; d++) {
            double sd = Math.sqrt(track.variance(h, d));
            double known = track.variance(h, d) / (share[d] * total[d]);
            level[d] = track.mean(h, d) + sd * (1 + known * (spread[d] - 1)) * random.nextGaussian();
        }
        return level;
    }

    /** Lower triangle by which standard normals become a lot's own levels. */
    double[][] lotFactor(double[] spread) {
        double[] sd = new double[COUNT];
        for (int d = 0; d < COUNT; d++) {
            sd[d] = Math.sqrt(lotVariance(d)) * spread[d];
        }
        return factor(sd);
    }

    /** As {@link #lotFactor} for a lot of a supplier never seen, with the spreads as estimated. */
    double[][] wholeFactor() {
        double[] sd = new double[COUNT];
        for (int d = 0; d < COUNT; d++) {
            sd[d] = Math.sqrt(total[d]);
        }
        return factor(sd);
    }

    /** Where the correlations contradict each other, they are drawn towards 0 until they do not. */
    private double[][] factor(double[] sd) {
        for (double keep = 1; ; keep *= 0.9) {
            double[][] a = new double[COUNT][];
            for (int d = 0; d < COUNT; d++) {
                a[d] = new double[d + 1];
                for (int e = 0; e <= d; e++) {
                    a[d][e] = d == e ? 1.0 : keep * correlation[d][e];
                }
            }
            try {
                double[][] l = Cholesky.inPlace(a).factor();
                for (int d = 0; d < COUNT; d++) {
                    for (int e = 0; e <= d; e++) {
                        l[d][e] *= sd[d];
                    }
                }
                return l;
            } catch (ArithmeticException notYet) {
                // contradictory still: drawn in further
            }
        }
    }

    /** A lot's own levels, shrunk. */
    double[] own(int lot) {
        double[] own = new double[COUNT];
        for (int d = 0; d < COUNT; d++) {
            own[d] = raw[lot][d] * reliability(lot, d);
        }
        return own;
    }

    double hazard() {
        return hazard;
    }

    int lotsOf(int supplier) {
        return supplier < 0 ? 0 : lotsOf[supplier].length;
    }

    @Override
    public String toString() {
        return "total " + Arrays.toString(total) + " share " + Arrays.toString(share) + " hazard " + hazard + " corr "
                + Arrays.deepToString(correlation) + " freedom " + Arrays.toString(freedom);
    }
}
