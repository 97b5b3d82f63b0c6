package org.salvedge.worth;

import it.unimi.dsi.fastutil.longs.Long2ObjectOpenHashMap;
import java.util.Arrays;
import org.salvedge.stats.MixedData;
import org.salvedge.stats.MixedModel;
import org.salvedge.stats.MixedPrior;

/** Chance that the glass is broken: log odds by claim, family and size, with a level for each lot. */
final class DamageModel implements java.io.Serializable {
    private final MixedModel model;
    private final int intercept;
    private final int size;
    private final int firstClaim;
    private final int firstFamily;
    private final double familyVariance;

    DamageModel(Records r) {
        MixedPrior prior = new MixedPrior().groups(0.4, 3);
        intercept = prior.coefficient(prior.fixed(1), Assumed.BROKEN_LOGIT);
        size = prior.coefficient(prior.fixed(0.25), 0);
        int claims = prior.spread(0.6, 3);
        firstClaim = prior.coefficients(claims, 0);
        for (String claim : r.codes.claims) {
            prior.coefficient(claims, Assumed.brokenLogit(claim));
        }
        int families = prior.spread(0.15, 4);
        firstFamily = prior.coefficients(families, r.history.families().size());
        MixedData.Builder data = new MixedData.Builder(r.history.lots());
        Tally tally = new Tally();
        Sighting sighting = new Sighting(r);
        for (int s = 0; s < r.fault.length; s++) {
            if (sighting.counts(s) && sighting.seen(r.lot(s)) > 0) {
                tally.add(r.lot(s), r.family(s), r.claim[s], r.fault[s] == r.codes.broken ? 1 : 0, r.logInches[s]);
            }
        }
        for (double[] cell : tally.cells()) {
            double trials = Math.max(cell[3], cell[4] * sighting.seen((int) cell[0]));
            data.row((int) cell[0], cell[3], trials)
                    .term(intercept, 1)
                    .term(size, cell[5] / cell[4])
                    .term(firstClaim + (int) cell[2], 1)
                    .term(firstFamily + (int) cell[1], 1);
        }
        model = MixedModel.logistic(data.build(), prior);
        familyVariance = model.classVariance(families);
    }

    /**
     * Log odds for a kind, given coefficients.
     *
     * @param stranger effect of a family never seen, used where the family is -1
     */
    double logit(double[] beta, int claim, int family, double logInches, double stranger) {
        return beta[intercept]
                + beta[size] * logInches
                + beta[firstClaim + claim]
                + (family < 0 ? stranger : beta[firstFamily + family]);
    }

    double familyVariance() {
        return familyVariance;
    }

    MixedModel model() {
        return model;
    }

    /** Sums of like sets: lot, family, claim, successes, trials, sum of log sizes. */
    static final class Tally {
        private final Long2ObjectOpenHashMap<double[]> cells = new Long2ObjectOpenHashMap<>();

        void add(int lot, int family, int third, double success, double covariate) {
            long key = ((long) lot << 40) | ((long) family << 16) | third;
            double[] cell = cells.get(key);
            if (cell == null) {
                cell = new double[] {lot, family, third, 0, 0, 0};
                cells.put(key, cell);
            }
            cell[3] += success;
            cell[4]++;
            cell[5] += covariate;
        }

        /** In order of lot, family and third key. */
        double[][] cells() {
            long[] keys = cells.keySet().toLongArray();
            Arrays.sort(keys);
            double[][] sorted = new double[keys.length][];
            for (int i = 0; i < keys.length; i++) {
                sorted[i] = cells.get(keys[i]);
            }
            return sorted;
        }
    }
}
