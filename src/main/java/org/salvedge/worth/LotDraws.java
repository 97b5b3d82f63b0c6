package org.salvedge.worth;

import java.util.SplittableRandom;
import org.jspecify.annotations.Nullable;

/**
 * Draws lots out of a scenario, one after the other, and adds up what becomes of their sets; of consecutive scenarios, by one
 * thread.
 */
final class LotDraws {
    /** No finding is impossible: somebody may have looked wrongly. */
    private static final double LEAST = 1e-6;

    private static final double LIFT = 1.5;

    private final Parts parts;
    private final int[] sets;
    final Scenario scenario;
    final double[][] sums;
    final double[][] routes;
    private final int broken;
    private final boolean few;
    private final double restSd;
    private final double[] z = new double[Levels.COUNT];
    private final double[] level = new double[Levels.COUNT];
    double recovery;
    double minutes;
    double weight = 1;
    int draw;
    int[][] found;

    @Nullable
    Probe probe;

    @Nullable
    HarvestCount harvest;
    /** Apart from the other, so that all else is drawn the same with donors and without. */
    SplittableRandom apart = new SplittableRandom(0);

    LotDraws(Parts parts, Kind[] kinds, int[] sets, Scenario scenario, double restSd) {
        this.restSd = restSd;
        found = new int[kinds.length][0];
        this.parts = parts;
        this.sets = sets;
        this.scenario = scenario;
        sums = new double[kinds.length][4];
        routes = new double[kinds.length][4];
        broken = parts.records.codes.broken;
        int all = 0;
        for (int n : sets) {
            all += n;
        }
        few = all <= 30;
    }

    void lot(SplittableRandom random) {
        Scenario w = scenario;
        double[][] f = w.lotFactor;
        for (int d = 0; d < Levels.COUNT; d++) {
            z[d] = random.nextGaussian();
            level[d] = 0;
            for (int e = 0; e <= d; e++) {
                level[d] += f[d][e] * z[e];
            }
        }
        double damage = Math.exp(level[Levels.DAMAGE]);
        double success = Math.exp(level[Levels.SUCCESS]);
        double price = Math.exp(level[Levels.PRICE]);
        double slower = Math.exp(level[Levels.MINUTES] + w.minutesLevel) - 1;
        double dearer = slower * parts.hourly / 60;
        double truth = level[Levels.TRUTH] / w.truthSd;
        double[][] mix = w.cumulated[truth < -Scenario.THIRD ? 0 : truth < Scenario.THIRD ? 1 : 2];
        double onTop = w.rest + restSd * random.nextGaussian();
        double gone = Math.min(1, w.missing * Math.exp(level[Levels.MISSING]));
        double arrivedAside = gone + (1 - gone) * w.aside;
        double total = 0;
        double worked = 0;
        double variance = 0;
        double priceSquare = price * price;
        weight = likelihood(mix, damage);
        int faults = parts.mix.faults;
        if (harvest != null) {
            harvest.start();
        }
        for (int i = 0; i < sets.length; i++) {
            double odds = w.brokenOdds[i] * damage;
            double pBroken = odds / (1 + odds);
            double[] cumulated = mix[i];
            double[] savedOdds = w.savedOdds[i];
            double sum = 0;
            double squares = 0;
            double time = 0;
            double saves = 0;
            for (int n = 0; n < sets[i]; n++) {
                boolean looked = n < found[i].length;
                double u = looked ? 0 : random.nextDouble();
                if (!looked && u < arrivedAside) {
                    double x = u < gone ? parts.takings.missingNet : parts.takings.asideNet;
                    sum += x;
                    squares += x * x;
                    continue;
                }
                u = (u - arrivedAside) / (1 - arrivedAside);
                int k = broken;
                if (looked) {
                    k = found[i][n];
                } else if (u >= pBroken) {
                    u = (u - pBroken) / (1 - pBroken);
                    int middle = faults / 2;
                    k = cumulated[middle] <= u ? middle : 0;
                    while (k < faults - 1 && cumulated[k] <= u) {
                        k++;
                    }
                }
                double o = k == broken ? savedOdds[k] : savedOdds[k] * success;
                double x;
                double v;
                if (random.nextDouble() * (1 + o) < o) {
                    x = w.savedTakings[i][k] * price - w.savedCosts[i][k] - dearer * w.savedBench[i][k];
                    v = w.savedVariance[i][k] * priceSquare;
                    time += w.savedMinutes[i][k] + slower * w.savedBench[i][k];
                    saves++;
                    if (harvest != null) {
                        harvest.saved(i, k, apart);
                    }
                } else {
                    if (harvest != null) {
                        harvest.lost(i, k, apart);
                    }
                    x = w.lostTakings[i][k] * price + w.lostNet[i][k] - dearer * w.lostBench[i][k];
                    v = w.lostVariance[i][k];
                    time += w.lostMinutes[i][k] + slower * w.lostBench[i][k];
                }
                if (few) {
                    x += Math.sqrt(v) * random.nextGaussian();
                } else {
                    variance += v;
                }
                x += onTop;
                if (probe != null) {
                    probe.saw(draw, i, n, k, x);
                }
                sum += x;
                squares += x * x + (few ? 0 : v);
            }
            total += sum;
            worked += time;
            sums[i][0] += weight * sum;
            sums[i][1] += weight * squares;
            sums[i][2] += weight * time;
            sums[i][3] += weight * saves;
        }
        total += harvest == null ? 0 : harvest.gain(weight, apart);
        recovery = total + Math.sqrt(variance) * random.nextGaussian();
        minutes = worked;
    }

    /** Chance of what was found at this lot's levels, times a constant that keeps it from vanishing. */
    private double likelihood(double[][] mix, double damage) {
        double log = 0;
        for (int i = 0; i < found.length; i++) {
            for (int k : found[i]) {
                double odds = scenario.brokenOdds[i] * damage;
                double share = k == 0 ? mix[i][0] : mix[i][k] - mix[i][k - 1];
                double chance = k == broken ? odds / (1 + odds) : share / (1 + odds);
                log += Math.log(Math.max(LEAST, chance)) + LIFT;
            }
        }
        return Math.exp(log);
    }
}
