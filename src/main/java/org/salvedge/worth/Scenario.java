package org.salvedge.worth;

import java.util.SplittableRandom;
import org.salvedge.shop.ExitKind;
import org.salvedge.stats.ChangePoints;

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
    /** Odds of broken glass by kind, at a lot's level of 0. */
    final double[] brokenOdds;
    /** Faults by kind, cumulated, for whole glass. */
    final double[][] cumulated;
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
    double[][] lotFactor = new double[0][];

    Scenario(Parts p, Kind[] kinds) {
        this.p = p;
        this.kinds = kinds;
        faults = p.mix.faults;
        int n = kinds.length;
        brokenOdds = new double[n];
        cumulated = new double[n][faults];
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

    /** Draws anew. */
    void draw(int supplier, ChangePoints track, double monthsAhead, int strangers, SplittableRandom random) {
        double[] spread = p.levels.drawSpread(random);
        double[] level = p.levels.drawSupplier(track, spread, random);
        lotFactor = p.levels.lotFactor(spread);
        double power = 1 + level[Levels.TRUTH] + p.levels.lotTruthSd(spread) * random.nextGaussian();
        power = Math.max(-0.5, Math.min(2.5, power));
        double[] damage = normals(p.damage.model().size(), random);
        p.damage.model().draw(damage);
        double[] success = normals(p.success.model().size(), random);
        p.success.model().draw(success);
        double[] price = normals(p.sales.model().size(), random);
        p.sales.model().draw(price);
        double[] strip = normals(p.stripping.model().size(), random);
        p.stripping.model().draw(strip);
        double[] ahead = saleTimes(monthsAhead);
        double market = logMean(p.sales.calendar().draw(ahead, random));
        double middle = java.util.Arrays.stream(ahead).average().orElse(0);
        double saleLevel = market + p.sales.calendar().shift(price) + level[Levels.PRICE];
        double shelf = p.sales.shelf(price);
        double stripLevel = p.stripping.follows(strip) * market + p.stripping.drift(strip) * middle;
        double[] shape = p.takings.missingShape(supplier);
        missing = org.salvedge.stats.Gammas.beta(shape[0], shape[1], random);
        aside = p.takings.asideShare;
        double[][] shares = p.mix.drawShares(random);
        double[] chance = new double[strangers];
        double[][] strange = new double[strangers][];
        for (int i = 0; i < strangers; i++) {
            chance[i] = random.nextDouble();
            strange[i] = normals(6, random);
        }
        java.util.Map<Integer, double[]> ratios = new java.util.HashMap<>();
        for (int i = 0; i < kinds.length; i++) {
            Kind kind = kinds[i];
            boolean known = kind.family() >= 0 && (kind.stranger() < 0 || chance[kind.stranger()] < kind.sure());
            int family = known ? kind.family() : -1;
            double[] z = kind.stranger() < 0 ? NO_STRANGER : strange[kind.stranger()];
            int key = known ? family : -1 - kind.stranger();
            double[] ratio = ratios.get(key);
            if (ratio == null) {
                ratio = p.mix.drawRatios(family, random);
                ratios.put(key, ratio);
            }
            brokenOdds[i] = Math.exp(p.damage.logit(
                            damage, kind.claim(), family, kind.logInches(), z[0] * Math.sqrt(p.damage.familyVariance()))
                    + level[Levels.DAMAGE]);
            mixFaults(i, kind.claim(), shares, ratio, power);
            double base = p.sales.log(
                            price,
                            family,
                            kind.maker(),
                            kind.logInches(),
                            z[1] * Math.sqrt(p.sales.familyVariance()),
                            z[2] * Math.sqrt(p.sales.makerVariance()))
                    + p.sales.sizeDrift(price, kind.logInches()) * middle
                    + saleLevel;
            double scrap = p.stripping.log(
                            strip,
                            family,
                            kind.maker(),
                            kind.logInches(),
                            z[1] * Math.sqrt(p.stripping.familyVariance()),
                            z[2] * Math.sqrt(p.stripping.makerVariance()))
                    + stripLevel;
            for (int k = 0; k < faults; k++) {
                double logit = k == p.records.codes.broken
                        ? Math.log(p.success.brokenSaved() / (1 - p.success.brokenSaved()))
                        : k == p.records.codes.unseen
                                ? -20
                                : p.success.logit(
                                                success, k, family, z[3] * Math.sqrt(p.success.familyVariance()), z[4])
                                        + level[Levels.SUCCESS];
                savedOdds[i][k] = Math.exp(logit);
                values(i, k, family, kind.logInches(), base, shelf, scrap, price, strip);
            }
        }
    }

    private static final double[] NO_STRANGER = new double[6];

    private void mixFaults(int i, int claim, double[][] shares, double[] ratio, double power) {
        double sum = 0;
        for (int k = 0; k < faults; k++) {
            double usual = p.mix.usual(k);
            double share = shares[claim][k];
            double w = usual <= 0 || share <= 0 ? 0 : usual * Math.pow(share / usual, power) * ratio[k];
            sum += w;
            cumulated[i][k] = sum;
        }
        for (int k = 0; k < faults; k++) {
            cumulated[i][k] /= sum;
        }
    }

    private void values(
            int i,
            int k,
            int family,
            double logInches,
            double base,
            double shelf,
            double scrap,
            double[] price,
            double[] strip) {
        Takings t = p.takings;
        Handling h = p.handling;
        double perMinute = p.hourly / 60;
        double size = Math.exp(logInches);
        double graded = 0;
        for (int g = 0; g <= PriceModel.NO_GRADE; g++) {
            double share = h.grade(k, g);
            if (share > 0) {
                graded += share * Math.exp(p.sales.manner(price, g));
            }
        }
        double gross = Math.exp(base + shelf) * p.sales.smear() * graded;
        double shipping = t.saleFixed + t.salePerSize * size;
        double minutes = h.minutes(k, family, true) + h.packing(ExitKind.SOLD);
        savedTakings[i][k] = gross * (1 - t.saleFee - t.comebackShare(k));
        savedCosts[i][k] = shipping + h.parts(k, family, true) + perMinute * minutes;
        savedMinutes[i][k] = minutes;
        double cv = Math.exp(p.sales.model().noise()) - 1 + 0.02;
        savedVariance[i][k] = savedTakings[i][k] * savedTakings[i][k] * cv
                + perMinute * perMinute * h.minutesVariance(k, true)
                + h.partsVariance(k, true);
        double asIs = h.route(k, family, ExitKind.SOLD);
        double stripped = h.route(k, family, ExitKind.STRIPPED);
        double recycled = h.route(k, family, ExitKind.RECYCLED);
        double asIsGross = Math.exp(base + p.sales.manner(price, PriceModel.AS_IS)) * p.sales.smear();
        double stripGross = Math.exp(scrap + p.stripping.manner(strip, k)) * p.stripping.smear() * t.stripPays;
        double bench = h.minutes(k, family, false);
        double lost = bench
                + asIs * h.packing(ExitKind.SOLD)
                + stripped * h.packing(ExitKind.STRIPPED)
                + recycled * h.packing(ExitKind.RECYCLED);
        lostTakings[i][k] = asIs * asIsGross * (1 - t.saleFee);
        double fromParts = stripGross * (1 - t.stripFee);
        lostNet[i][k] = stripped * fromParts
                + recycled * t.recyclingNet
                - asIs * shipping
                - h.parts(k, family, false)
                - perMinute * lost;
        lostMinutes[i][k] = lost;
        lostVariance[i][k] = stripped * (1 - stripped) * fromParts * fromParts
                + stripped
                        * fromParts
                        * fromParts
                        * (Math.exp(p.stripping.model().noise()) - 1)
                + asIs * (1 - asIs) * asIsGross * asIsGross
                + perMinute * perMinute * h.minutesVariance(k, false)
                + h.partsVariance(k, false);
    }

    /** Times at which the lot sells, months from the day the history is as of. */
    private double[] saleTimes(double monthsAhead) {
        double[] ahead = p.takings.wait.clone();
        for (int i = 0; i < ahead.length; i++) {
            ahead[i] = monthsAhead + ahead[i] * 12 / 365.25;
        }
        return ahead;
    }

    private static double logMean(double[] logs) {
        double sum = 0;
        for (double l : logs) {
            sum += Math.exp(l);
        }
        return Math.log(sum / logs.length);
    }

    private static double[] normals(int n, SplittableRandom random) {
        double[] z = new double[n];
        for (int i = 0; i < n; i++) {
            z[i] = random.nextGaussian();
        }
        return z;
    }
}
