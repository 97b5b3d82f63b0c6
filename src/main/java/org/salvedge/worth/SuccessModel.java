package org.salvedge.worth;

import java.util.Arrays;
import org.salvedge.stats.MixedData;
import org.salvedge.stats.MixedModel;
import org.salvedge.stats.MixedPrior;

/**
 * Chance that a set with whole glass is saved: log odds by fault, family and the two together, drifting with time as the shop
 * learns and with the price, since more is tried on a set that is worth more, with a level for each lot. A set still on the bench counts as saved with the chance that such sets were saved before.
 */
final class SuccessModel implements java.io.Serializable {
    private static final double DAYS_A_YEAR = 365.25;
    private static final double RECENT_YEARS = -0.6;
    private static final int FEWEST_IN_CELL = 4;
    private static final int BENCH_DAYS = 45;

    private final MixedModel model;
    private final int firstFault;
    private final int firstFamily;
    private final int learning;
    private final int recent;
    private final int value;
    private final double usualPrice;
    private final int[][] cellOf;
    private final double familyVariance;
    private final double cellVariance;
    private final double brokenSaved;
    private final double brokenWorth;
    final double savedOfOpen;

    SuccessModel(Records r, PriceModel sales, double hourly) {
        usualPrice = Math.log(Assumed.PRICE_HOURS * Math.max(hourly, 0.01));
        int faults = r.codes.faults.size();
        int families = r.history.families().size();
        savedOfOpen = savedOfOpen(r);
        double broken = 0;
        double brokenSaves = 0;
        DamageModel.Tally tally = new DamageModel.Tally();
        int[][] seen = new int[families][faults];
        for (int s = 0; s < r.fault.length; s++) {
            int k = r.fault[s];
            byte result = r.stays.result[s];
            if (k < 0
                    || k == r.codes.unseen
                    || result != Stays.SAVED && result != Stays.NOT_SAVED && result != Stays.OPEN) {
                continue;
            }
            double saved = result == Stays.SAVED ? 1 : result == Stays.OPEN ? savedOfOpen : 0;
            if (k == r.codes.broken) {
                if (result != Stays.OPEN) {
                    broken++;
                    brokenSaves += saved;
                }
                continue;
            }
            double price = sales.expected(r, s, r.history.lotBought(r.lot(s)) + BENCH_DAYS);
            tally.add(r.lot(s), r.family(s), k, saved, price - usualPrice);
            seen[r.family(s)][k]++;
        }
        brokenWorth = broken + 5;
        brokenSaved = (brokenSaves
                        + 5 * Assumed.fault(r.codes.faults.get(r.codes.broken)).saved())
                / brokenWorth;
        MixedPrior prior = new MixedPrior().groups(0.2, 3);
        firstFault = prior.coefficients(prior.fixed(1), 0);
        for (String fault : r.codes.faults) {
            Assumed.AtBench a = Assumed.fault(fault);
            prior.coefficient(prior.fixed(a.savedLogitSd() * a.savedLogitSd()), Math.log(a.saved() / (1 - a.saved())));
        }
        learning = prior.coefficient(prior.fixed(0.15 * 0.15), 0);
        recent = prior.coefficient(prior.fixed(0.25 * 0.25), 0);
        value = prior.coefficient(prior.fixed(0.3 * 0.3), 0.1);
        int familyClass = prior.spread(0.1, 4);
        firstFamily = prior.coefficients(familyClass, families);
        int cellClass = prior.spread(0.1, 6);
        cellOf = new int[families][faults];
        for (int f = 0; f < families; f++) {
            Arrays.fill(cellOf[f], -1);
            for (int k = 0; k < faults; k++) {
                if (seen[f][k] >= FEWEST_IN_CELL) {
                    cellOf[f][k] = prior.coefficient(cellClass, 0);
                }
            }
        }
        MixedData.Builder data = new MixedData.Builder(r.history.lots());
        for (double[] cell : tally.cells()) {
            int lot = (int) cell[0];
            int family = (int) cell[1];
            int k = (int) cell[2];
            data.row(lot, cell[3], cell[4])
                    .term(firstFault + k, 1)
                    .term(learning, (r.history.lotBought(lot) - r.asOf) / DAYS_A_YEAR)
                    .term(recent, Math.max(RECENT_YEARS, (r.history.lotBought(lot) - r.asOf) / DAYS_A_YEAR))
                    .term(value, cell[5] / cell[4])
                    .term(firstFamily + family, 1)
                    .term(cellOf[family][k], 1);
        }
        model = MixedModel.logistic(data.build(), prior);
        familyVariance = model.classVariance(familyClass);
        cellVariance = model.classVariance(cellClass);
    }

    /**
     * Of the sets that stand open on a day, the share that was saved in the end: each set counts by the days it stood open, for so
     * many days it could have been met there.
     */
    private static double savedOfOpen(Records r) {
        double open = 20;
        double saved = 6;
        Stays stays = r.stays;
        for (int s = 0; s < r.fault.length; s++) {
            if (r.fault[s] < 0 || r.fault[s] == r.codes.broken || r.fault[s] == r.codes.unseen) {
                continue;
            }
            if (stays.result[s] == Stays.SAVED) {
                int days = Math.max(0, stays.passDay[s] - stays.begun[s]);
                open += days;
                saved += days;
            } else if (stays.result[s] == Stays.NOT_SAVED) {
                open += Math.max(0, stays.exitDay[s] - stays.begun[s]);
            }
        }
        return saved / open;
    }

    /**
     * Log odds for a fault in a family, given coefficients.
     *
     * @param stranger effect of a family never seen, used where the family is -1
     * @param logPrice what a set of the family will sell for
     * @param cellNormal standard normal, for a fault never seen in the family
     */
    double logit(double[] beta, int k, int family, double logPrice, double stranger, double cellNormal) {
        double eta = beta[firstFault + k]
                + beta[value] * (logPrice - usualPrice)
                + (family < 0 ? stranger : beta[firstFamily + family]);
        int cell = family < 0 ? -1 : cellOf[family][k];
        return eta + (cell < 0 ? Math.sqrt(cellVariance) * cellNormal : beta[cell]);
    }

    double brokenSaved() {
        return brokenSaved;
    }

    double brokenWorth() {
        return brokenWorth;
    }

    double familyVariance() {
        return familyVariance;
    }

    MixedModel model() {
        return model;
    }
}
