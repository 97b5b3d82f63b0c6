package org.salvedge.worth;

import org.jspecify.annotations.Nullable;
import org.salvedge.shop.ExitKind;
import org.salvedge.stats.MixedData;
import org.salvedge.stats.MixedModel;
import org.salvedge.stats.MixedPrior;

/**
 * Log of what a set brings when it leaves: by size, maker and family, by how it is sold, along a {@link Calendar}, with a level
 * for each lot. One instance for sets sold, one for sets stripped.
 */
final class PriceModel implements java.io.Serializable {
    private static final int GRADES = 3;
    /** Passed, but nobody wrote down a grade. */
    static final int NO_GRADE = GRADES;
    /** Sold as it was. */
    static final int AS_IS = GRADES + 1;

    private static final double RECENT = -9;
    private static final double LONG_AGO = -36;
    private static final double LONGEST_SHELF = 6;
    private static final int OLD_ENOUGH = 180;
    private static final int SHELVES = 10;
    /** Degrees of freedom of the noise of a sale: now and then one goes for half. */
    private static final double TAILS = 4;

    private static final double USUAL_NOISE = 0.04;
    private static final double NOISE_WORTH = 20;
    private static final double[] GRADE_MEAN = {0, -0.12, -0.35, -0.1, -1.1};

    private final MixedModel model;
    private final double[] estimates;
    private final Calendar calendar;
    private final int intercept;
    private final int size;
    private final int firstMaker;
    private final int firstFamily;
    private final int firstManner;
    private final int shelf;
    private final double[] shelves;
    private final double familyVariance;
    private final double makerVariance;
    private final int follows;
    private final int drift;
    private final int sizeDrift;
    private final int familyDrift;
    private final double smear;
    private final double spread;
    private final int rows;

    private PriceModel(Records r, ExitKind kind, double hourly, double logLevel, @Nullable PriceModel leader) {
        boolean sale = kind == ExitKind.SOLD;
        double earliest = 0;
        for (int s = 0; s < r.fault.length; s++) {
            if (taken(r, s, kind)) {
                earliest = Math.min(earliest, r.months(r.stays.exitDay[s]));
            }
        }
        MixedPrior prior = new MixedPrior().groups(0.003, 4).noise(sale ? 0.06 : 0.2, 4);
        intercept = prior.coefficient(prior.fixed(0.7 * 0.7), logLevel + Math.log(Math.max(hourly, 0.01)));
        size = prior.coefficient(prior.fixed(0.6 * 0.6), sale ? 1.6 : 1);
        int makers = prior.spread(0.02, 4);
        firstMaker = prior.coefficients(makers, r.history.makers().size());
        int families = prior.spread(0.05, 4);
        firstFamily = prior.coefficients(families, r.history.families().size());
        firstManner = prior.coefficients(prior.fixed(1), 0);
        if (sale) {
            for (int g = 0; g < GRADE_MEAN.length; g++) {
                double sd = g == 0 ? 0.01 : g == AS_IS ? 0.6 : 0.15;
                prior.coefficient(prior.fixed(sd * sd), GRADE_MEAN[g]);
            }
        } else {
            int faults = prior.spread(0.04, 3);
            for (String fault : r.codes.faults) {
                prior.coefficient(faults, fault.equals("panel_broken") ? -0.3 : 0);
            }
        }
        shelf = prior.coefficient(prior.fixed(0.03 * 0.03), 0);
        calendar = new Calendar(prior, sale ? earliest : 0);
        follows = prior.coefficient(prior.fixed(0.3 * 0.3), sale ? 0 : 1);
        drift = prior.coefficient(prior.fixed(0.005 * 0.005), 0);
        sizeDrift = prior.coefficients(prior.fixed(0.008 * 0.008), 2);
        familyDrift = prior.coefficients(
                prior.spread(0.004 * 0.004, 6), sale ? r.history.families().size() : 0);
        MixedData.Builder data = new MixedData.Builder(r.history.lots());
        int count = 0;
        for (int s = 0; s < r.fault.length; s++) {
            if (!taken(r, s, kind)) {
                continue;
            }
            count++;
            data.row(r.lot(s), Math.log(r.stays.gross[s]), 1)
                    .term(intercept, 1)
                    .term(size, r.logInches[s])
                    .term(firstMaker + r.history.setMaker(s), 1)
                    .term(firstFamily + r.family(s), 1)
                    .term(firstManner + (sale ? manner(r, s) : Math.max(0, r.fault[s])), 1)
                    .term(shelf, shelf(r, s));
            double month = r.months(r.stays.exitDay[s]);
            if (leader == null) {
                calendar.term(data, month);
                data.term(sizeDrift, r.logInches[s] * month)
                        .term(sizeDrift + 1, r.logInches[s] * Math.max(RECENT, month))
                        .term(familyDrift + r.family(s), Math.max(LONG_AGO, month));
            } else {
                data.term(follows, leader.move(r.family(s), r.logInches[s], month))
                        .term(drift, month);
            }
        }
        rows = count;
        MixedData built = data.build();
        model = sale ? MixedModel.robust(built, prior, TAILS) : MixedModel.linear(built, prior);
        estimates = new double[model.size()];
        java.util.Arrays.setAll(estimates, model::coefficient);
        familyVariance = model.classVariance(families);
        makerVariance = model.classVariance(makers);
        if (sale) {
            calendar.settle(model);
        }
        shelves = shelves(r, kind);
        double[] smears = model.smear(built, USUAL_NOISE, NOISE_WORTH);
        smear = sale ? smears[0] : Math.exp(0.5 * model.noise());
        spread = sale ? Math.max(0, smears[1] / (smears[0] * smears[0]) - 1) : Math.exp(model.noise()) - 1;
    }

    static PriceModel ofSales(Records r, double hourly) {
        return new PriceModel(r, ExitKind.SOLD, hourly, Math.log(Assumed.PRICE_HOURS), null);
    }

    static PriceModel ofStripping(Records r, double hourly, PriceModel sales) {
        return new PriceModel(r, ExitKind.STRIPPED, hourly, Math.log(Assumed.PRICE_HOURS * Assumed.STRIP_SHARE), sales);
    }

    private static boolean taken(Records r, int s, ExitKind kind) {
        return r.stays.exit[s] == kind.ordinal() && r.stays.gross[s] > 0;
    }

    /** Months that a set stood ready before it was sold. */
    private static double shelf(Records r, int s) {
        if (r.stays.passDay[s] == 0) {
            return 0;
        }
        return Math.min(LONGEST_SHELF, Math.max(0, r.stays.exitDay[s] - r.stays.passDay[s]) * 12 / 365.25);
    }

    /** Months on the shelf at evenly spaced chances, from lots old enough for their slow sets to have been sold. */
    private static double[] shelves(Records r, ExitKind kind) {
        double[] found = new double[r.fault.length];
        int n = 0;
        int young = r.asOf - OLD_ENOUGH;
        for (int pass = 0; pass < 2 && n == 0; pass++) {
            for (int s = 0; s < found.length; s++) {
                if (taken(r, s, kind)
                        && r.stays.passDay[s] != 0
                        && (pass == 1 || r.history.lotBought(r.lot(s)) < young)) {
                    found[n++] = shelf(r, s);
                }
            }
        }
        java.util.Arrays.sort(found, 0, n);
        double[] out = new double[SHELVES];
        for (int i = 0; i < SHELVES && n > 0; i++) {
            out[i] = found[(int) ((i + 0.5) / SHELVES * n)];
        }
        return out;
    }

    /** Log factor that standing on the shelf is expected to cost. */
    double shelf(double[] beta) {
        double sum = 0;
        for (double months : shelves) {
            sum += Math.exp(beta[shelf] * months);
        }
        return Math.log(sum / shelves.length);
    }

    /**
     * How much better the grades of a lot's sets sold than their faults let expect, in log price: its mean by lot, and the number of
     * sets it rests on. Sets of one lot may share their looks.
     */
    double[][] looks(Records r, Handling handling) {
        double[][] looks = new double[r.history.lots()][2];
        double[] expected = new double[r.codes.faults.size()];
        for (int k = 0; k < expected.length; k++) {
            for (int g = 0; g <= NO_GRADE; g++) {
                expected[k] += handling.grade(k, g) * model.coefficient(firstManner + g);
            }
        }
        for (int s = 0; s < r.fault.length; s++) {
            if (taken(r, s, ExitKind.SOLD) && r.stays.result[s] == Stays.SAVED && r.fault[s] >= 0) {
                double[] of = looks[r.lot(s)];
                of[1]++;
                of[0] += (model.coefficient(firstManner + manner(r, s)) - expected[r.fault[s]] - of[0]) / of[1];
            }
        }
        return looks;
    }

    /** Variance of a set's grade about what its fault lets expect, in log price. */
    double looksVariance(Handling handling, int k) {
        double mean = 0;
        double square = 0;
        for (int g = 0; g <= NO_GRADE; g++) {
            double b = model.coefficient(firstManner + g);
            mean += handling.grade(k, g) * b;
            square += handling.grade(k, g) * b * b;
        }
        return Math.max(0, square - mean * mean);
    }

    static int manner(Records r, int s) {
        if (r.stays.result[s] != Stays.SAVED) {
            return AS_IS;
        }
        return r.stays.grade[s] < 0 ? NO_GRADE : r.stays.grade[s];
    }

    /**
     * Log of the price today, given coefficients.
     *
     * @param stranger effect of a family never seen, used where the family is -1
     * @param strangeMaker effect of a maker never seen, used where the maker is -1
     */
    double log(double[] beta, int family, int maker, double logInches, double stranger, double strangeMaker) {
        return beta[intercept]
                + beta[size] * logInches
                + (maker < 0 ? strangeMaker : beta[firstMaker + maker])
                + (family < 0 ? stranger : beta[firstFamily + family]);
    }

    /** Log of what a set would have sold for on a day, grade A, as estimated. */
    double expected(Records r, int s, int day) {
        double month = Math.min(0, r.months(day));
        return model.coefficient(intercept)
                + model.coefficient(size) * r.logInches[s]
                + model.coefficient(firstMaker + r.history.setMaker(s))
                + model.coefficient(firstFamily + r.family(s))
                + move(r.family(s), r.logInches[s], month);
    }

    /** The same for a kind of set, today; a family never seen counts as the average of its maker and size. */
    double expected(Kind kind) {
        return model.coefficient(intercept)
                + model.coefficient(size) * kind.logInches()
                + (kind.maker() < 0 ? 0 : model.coefficient(firstMaker + kind.maker()))
                + (kind.family() < 0 || kind.stranger() >= 0 ? 0 : model.coefficient(firstFamily + kind.family()))
                + calendar.level(0);
    }

    /**
     * Log of the median price in months to come, as expected; what is not known (-1) counts as the average.
     *
     * @param manner see {@link #manner(double[], int)}
     */
    double expected(int family, int maker, double logInches, int manner, double ahead) {
        return model.coefficient(intercept)
                + model.coefficient(size) * logInches
                + (maker < 0 ? 0 : model.coefficient(firstMaker + maker))
                + (family < 0 ? 0 : model.coefficient(firstFamily + family))
                + model.coefficient(firstManner + manner)
                + calendar.expected(ahead);
    }

    /** Log factor of a manner of sale: a grade's ordinal, {@link #NO_GRADE} or {@link #AS_IS}; of a fault, for stripping. */
    double manner(double[] beta, int manner) {
        return beta[firstManner + manner];
    }

    Calendar calendar() {
        return calendar;
    }

    /** Mean of the price over its median. */
    double smear() {
        return smear;
    }

    /** Variance of the price about its mean, over the mean's square. */
    double spread() {
        return spread;
    }

    double familyVariance() {
        return familyVariance;
    }

    double makerVariance() {
        return makerVariance;
    }

    /** Of stripping: how much of a change of the sale prices its takings follow. */
    double follows(double[] beta) {
        return beta[follows];
    }

    /** Of stripping: its own slope, a month. */
    double drift(double[] beta) {
        return beta[drift];
    }

    /** Slope of a family and size beyond that of the usual set, a month; -1 = a family never seen. */
    double drift(double[] beta, int family, double logInches) {
        return (beta[sizeDrift] + beta[sizeDrift + 1]) * logInches + (family < 0 ? 0 : beta[familyDrift + family]);
    }

    /** Log of how a set's price at a month of the past stood to its price today, as estimated. */
    private double move(int family, double logInches, double month) {
        return estimates[sizeDrift] * logInches * month
                + estimates[sizeDrift + 1] * logInches * Math.max(RECENT, month)
                + estimates[familyDrift + family] * Math.max(LONG_AGO, month)
                + calendar.level(month);
    }

    MixedModel model() {
        return model;
    }

    int rows() {
        return rows;
    }
}
