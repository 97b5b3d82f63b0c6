package org.salvedge.worth;

import java.util.HashMap;
import java.util.Map;
import java.util.SplittableRandom;
import org.salvedge.shop.ExitKind;

/**
 * One possible state of the world: every estimate drawn from what is known of it, and what follows for each kind of set. Lots
 * drawn in one scenario differ only in their own level and in the luck of each set.
 */
final class Scenario {
    private final Parts p;
    private final Kind[] kinds;
    private final int faults;

    /** Chance that a set does not come, or comes and is sent back or lost. */
    double missing;

    double aside;
    /** Log of the supplier's minutes over the usual. */
    double minutesLevel;
    /** Odds of broken glass by kind, at a lot's level of 0. */
    final double[] brokenOdds;
    /** Faults by truth of the lot's claims (low, middling, high), kind and fault, cumulated, for whole glass. */
    final double[][][] cumulated;
    /** Odds of saving a set by kind and fault, at a lot's level of 0. */
    final double[][] savedOdds;
    /** Of a saved set: the part that follows the price level of the lot, and the costs that do not. */
    final double[][] savedTakings;

    final double[][] savedCosts;
    /** Of a set not saved. */
    final double[][] lostTakings;

    final double[][] lostNet;
    final double[][] savedVariance;
    final double[][] lostVariance;
    final double[][] savedMinutes;
    final double[][] lostMinutes;
    /** Minutes at the bench alone: those that the lot's own level changes. */
    final double[][] savedBench;

    final double[][] lostBench;
    double[][] lotFactor = new double[0][];
    /** A set, what comes on top. */
    double rest;
    /** Standard deviation of a lot's own truth. */
    double truthSd = 1;

    private Estimates e;
    private final boolean drawRatios;
    /** By fault: mean over the grades of a saved set of what it sells for over grade A, and the variance of a price over its square. */
    private final double[] graded;

    private final double[] priceVariance;

    private final Strangers strangers;

    Scenario(Parts p, Kind[] kinds, Strangers strangers, Estimates e, boolean drawRatios) {
        this.strangers = strangers;
        this.p = p;
        this.e = e;
        this.drawRatios = drawRatios;
        this.kinds = kinds;
        faults = p.mix.faults;
        int n = kinds.length;
        graded = new double[faults];
        priceVariance = new double[faults];
        for (int k = 0; k < faults; k++) {
            priceVariance[k] = p.sales.spread() + p.sales.looksVariance(p.handling, k);
        }
        brokenOdds = new double[n];
        cumulated = new double[TRUTHS.length][n][faults];
        savedBench = new double[n][faults];
        lostBench = new double[n][faults];
        savedOdds = new double[n][faults];
        savedTakings = new double[n][faults];
        savedCosts = new double[n][faults];
        lostTakings = new double[n][faults];
        lostNet = new double[n][faults];
        savedVariance = new double[n][faults];
        lostVariance = new double[n][faults];
        savedMinutes = new double[n][faults];
        lostMinutes = new double[n][faults];
    }

    /** Works out what follows from the estimates; what is not known of a family, for whole or in part, is drawn. */
    void fill(Estimates e, SplittableRandom random) {
        this.e = e;
        lotFactor = e.lotFactor();
        rest = e.rest();
        double saleLevel = e.market() + e.level()[Levels.PRICE];
        double follows = p.stripping.follows(e.strip());
        double stripLevel = follows * e.market() + p.stripping.drift(e.strip()) * e.middle();
        double shelf = p.sales.shelf(e.price());
        missing = e.missing();
        minutesLevel = e.level()[Levels.MINUTES];
        aside = p.takings.asideShare;
        double[] chance = strangers.chances(random);
        double[][] strange = strangers.effects(random);
        double[][][] tilted = tilted();
        grade();
        Map<Integer, double[]> ratios = new HashMap<>();
        for (int i = 0; i < kinds.length; i++) {
            Kind kind = kinds[i];
            int family = kind.mixture() >= 0
                    ? strangers.mixtures()[kind.mixture()].pick(random.nextDouble())
                    : kind.stranger() < 0 || chance[kind.stranger()] < kind.sure() ? kind.family() : -1;
            double[] z = kind.stranger() < 0 ? NO_STRANGER : strange[kind.stranger()];
            int key = family >= 0 ? family : -1 - Math.max(0, kind.stranger());
            double[] ratio = ratios.get(key);
            if (ratio == null) {
                ratio = drawRatios ? p.mix.drawRatios(family, random) : p.mix.ratios(family);
                ratios.put(key, ratio);
            }
            double unknown = z[0] * Math.sqrt(p.damage.familyVariance());
            brokenOdds[i] = Math.exp(p.damage.logit(e.damage(), kind.claim(), family, kind.logInches(), unknown)
                    + e.level()[Levels.DAMAGE]);
            for (int t = 0; t < TRUTHS.length; t++) {
                mixFaults(cumulated[t][i], tilted[t][kind.claim()], ratio);
            }
            double moved = p.sales.drift(e.price(), family, kind.logInches()) * e.middle();
            double base = logPrice(p.sales, e.price(), kind, family, z) + moved + saleLevel;
            double scrap = logPrice(p.stripping, e.strip(), kind, family, z) + follows * moved + stripLevel;
            double price = Math.exp(base + shelf) * p.sales.smear();
            double asIs = Math.exp(base + p.sales.manner(e.price(), PriceModel.AS_IS)) * p.sales.smear();
            double shipping = p.takings.saleCosts(family, kind.logInches());
            for (int k = 0; k < faults; k++) {
                savedOdds[i][k] = savedOdds(k, family, base, z);
                saved(i, k, family, price * graded[k], shipping);
                lost(i, k, family, asIs, scrap);
            }
        }
    }

    /** For lots of which it is known that every set arrived. */
    void allArrive() {
        missing = 0;
        aside = 0;
    }

    /** Expected recovery of a set of a kind that arrives, at a lot's level of 0. */
    double mean(int i) {
        double broken = brokenOdds[i] / (1 + brokenOdds[i]);
        double mean = 0;
        double below = 0;
        double[] mix = cumulated[TRUTHS.length / 2][i];
        for (int k = 0; k < faults; k++) {
            double share = k == p.records.codes.broken ? broken : (1 - broken) * (mix[k] - below);
            below = mix[k];
            double saved = savedOdds[i][k] / (1 + savedOdds[i][k]);
            double slower = (Math.exp(minutesLevel) - 1) * p.hourly / 60;
            mean += share
                    * (saved * (savedTakings[i][k] - savedCosts[i][k] - slower * savedBench[i][k])
                            + (1 - saved) * (lostTakings[i][k] + lostNet[i][k] - slower * lostBench[i][k]));
        }
        return mean + e.rest();
    }

    private double logPrice(PriceModel model, double[] beta, Kind kind, int family, double[] z) {
        double mean = kind.stranger() < 0 ? 0 : strangers.priceMean()[kind.stranger()];
        double share = kind.stranger() < 0 ? 1 : strangers.priceShare()[kind.stranger()];
        return model.log(
                beta,
                family,
                kind.maker(),
                kind.logInches(),
                mean + z[1] * Math.sqrt(share * model.familyVariance()),
                z[2] * Math.sqrt(share * model.makerVariance()));
    }

    private double savedOdds(int k, int family, double base, double[] z) {
        if (k == p.records.codes.unseen) {
            return 0;
        }
        if (k == p.records.codes.broken) {
            return p.success.brokenSaved() / (1 - p.success.brokenSaved());
        }
        double unknown = z[3] * Math.sqrt(p.success.familyVariance());
        return Math.exp(p.success.logit(e.success(), k, family, base, unknown, z[4]) + e.level()[Levels.SUCCESS]);
    }

    private static final double LEAST_POWER = -0.5;
    private static final double MOST_POWER = 2.5;
    /** Mean of a standard normal within its lower, middle and upper third. */
    private static final double[] TRUTHS = {-1.0911, 0, 1.0911};
    /** Where a standard normal's upper third begins. */
    static final double THIRD = 0.4307;

    private static final double[] NO_STRANGER = new double[Strangers.EFFECTS];

    /** Shares by truth, claim and fault, before the family has its say. */
    private double[][][] tilted() {
        double square = 0;
        for (double x : lotFactor[Levels.TRUTH]) {
            square += x * x;
        }
        truthSd = Math.sqrt(square);
        double[][][] tilted = new double[TRUTHS.length][e.shares().length][faults];
        for (int t = 0; t < TRUTHS.length; t++) {
            double power = 1 + e.level()[Levels.TRUTH] + truthSd * TRUTHS[t];
            power = Math.max(LEAST_POWER, Math.min(MOST_POWER, power));
            for (int c = 0; c < tilted[t].length; c++) {
                for (int k = 0; k < faults; k++) {
                    double usual = p.mix.usual(k);
                    double share = e.shares()[c][k];
                    tilted[t][c][k] = usual <= 0 || share <= 0 ? 0 : usual * Math.pow(share / usual, power);
                }
            }
        }
        return tilted;
    }

    private static void mixFaults(double[] out, double[] shares, double[] ratio) {
        double sum = 0;
        for (int k = 0; k < out.length; k++) {
            sum += shares[k] * ratio[k];
            out[k] = sum;
        }
        for (int k = 0; k < out.length; k++) {
            out[k] /= sum;
        }
    }

    private void grade() {
        double[] of = new double[PriceModel.NO_GRADE + 1];
        for (int g = 0; g < of.length; g++) {
            of[g] = Math.exp(p.sales.manner(e.price(), g));
        }
        for (int k = 0; k < faults; k++) {
            graded[k] = 0;
            for (int g = 0; g < of.length; g++) {
                double share = p.handling.grade(k, g);
                if (share > 0) {
                    graded[k] += share * of[g];
                }
            }
        }
    }

    private void saved(int i, int k, int family, double gross, double shipping) {
        Takings t = p.takings;
        Handling h = p.handling;
        double perMinute = p.hourly / 60;
        double[][][] factor = e.handling();
        savedBench[i][k] = h.minutes(k, family, true) * factor[0][k][1];
        double minutes = savedBench[i][k] + h.packing(ExitKind.SOLD);
        savedTakings[i][k] = gross * (1 - t.saleFee - t.comebackShare(k) * e.comebacks());
        savedCosts[i][k] = shipping + h.parts(k, family, true) * factor[1][k][1] + perMinute * minutes;
        savedMinutes[i][k] = minutes;
        savedVariance[i][k] = savedTakings[i][k] * savedTakings[i][k] * priceVariance[k]
                + gross * gross * t.comebackVariance(k)
                + t.saleVariance
                + perMinute * perMinute * h.minutesVariance(k, true)
                + h.partsVariance(k, true);
    }

    private void lost(int i, int k, int family, double asIsGross, double scrap) {
        Takings t = p.takings;
        Handling h = p.handling;
        double perMinute = p.hourly / 60;
        double[][][] factor = e.handling();
        double asIs = h.route(k, family, ExitKind.SOLD);
        double stripped = h.route(k, family, ExitKind.STRIPPED);
        double recycled = h.route(k, family, ExitKind.RECYCLED);
        double stripGross = Math.exp(scrap + p.stripping.manner(e.strip(), k)) * p.stripping.smear() * t.stripPays;
        lostBench[i][k] = h.minutes(k, family, false) * factor[0][k][0];
        double lost = lostBench[i][k]
                + asIs * h.packing(ExitKind.SOLD)
                + stripped * h.packing(ExitKind.STRIPPED)
                + recycled * h.packing(ExitKind.RECYCLED);
        lostTakings[i][k] = asIs * asIsGross * (1 - t.asIsCosts);
        double fromParts = stripGross * (1 - t.stripFee);
        lostNet[i][k] = stripped * fromParts
                + recycled * t.recyclingNet
                - h.parts(k, family, false) * factor[1][k][0]
                - perMinute * lost;
        lostMinutes[i][k] = lost;
        lostVariance[i][k] = stripped * (1 - stripped) * fromParts * fromParts
                + stripped * fromParts * fromParts * p.stripping.spread()
                + asIs * (1 - asIs) * asIsGross * asIsGross
                + perMinute * perMinute * h.minutesVariance(k, false)
                + h.partsVariance(k, false);
    }
}
