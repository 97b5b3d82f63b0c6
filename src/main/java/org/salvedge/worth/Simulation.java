package org.salvedge.worth;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.salvedge.stats.ChangePoints;

/**
 * Draws outcomes of a lot: scenarios, and in each of them several lots with their own level and luck. Every scenario has a random
 * stream of its own and blocks of scenarios are added up in order, so that the answer is the same on any number of cores.
 */
final class Simulation {
    private static final int LOTS_A_SCENARIO = 20;
    private static final int FEWEST_SCENARIOS = 500;
    private static final int MOST_SCENARIOS = 4000;
    private static final int SCENARIOS_A_BLOCK = 25;
    /** No finding is impossible: somebody may have looked wrongly. */
    private static final double LEAST = 1e-6;

    private static final double LIFT = 1.5;

    final double[] recovery;
    final double[] minutes;
    /** Means for one set, by kind: recovery, its square, minutes, saved. */
    final double[][] perSet;
    /** Weight of each draw: chance of the findings given its levels, 1 where there are none. */
    final double[] weight;
    /** Means by kind of what becomes of a set: saved, sold as is, stripped, recycled. */
    final double[][] routes;
    /** What donors of boards bring; null = nothing is counted. */
    @Nullable
    DonorGain donors;

    /** Mean and standard deviation of the recovery over lots drawn in one scenario. */
    static double[] spread(
            Parts parts, Kind[] kinds, int[] sets, Scenario scenario, int draws, SplittableRandom random) {
        Block block = new Block(parts, kinds, sets, scenario, 0);
        double sum = 0;
        double squares = 0;
        for (int d = 0; d < draws; d++) {
            block.lot(random);
            sum += block.recovery;
            squares += block.recovery * block.recovery;
        }
        double mean = sum / draws;
        return new double[] {mean, Math.sqrt(Math.max(0, squares / draws - mean * mean))};
    }

    private Simulation(int draws, int kinds) {
        recovery = new double[draws];
        minutes = new double[draws];
        weight = new double[draws];
        perSet = new double[kinds][4];
        routes = new double[kinds][4];
    }

    static Simulation run(
            Parts parts,
            Kind[] kinds,
            int[] sets,
            Strangers strangers,
            int supplier,
            double monthsAhead,
            int draws,
            long seed) {
        return run(parts, kinds, sets, strangers, supplier, monthsAhead, draws, seed, new int[kinds.length][0], null);
    }

    /**
     * @param found faults of sets that were looked at, by kind; not more than there are sets
     * @param probe is told the faults of the first sets of each kind; null = nobody is
     */
    static Simulation run(
            Parts parts,
            Kind[] kinds,
            int[] sets,
            Strangers strangers,
            int supplier,
            double monthsAhead,
            int draws,
            long seed,
            int[][] found,
            @Nullable Probe probe) {
        Simulation out = new Simulation(draws, kinds.length);
        // Lots of one scenario tell less of what goes together than lots of as many scenarios.
        int scenarios = probe != null
                ? draws
                : Math.min(draws, Math.max(FEWEST_SCENARIOS, Math.min(MOST_SCENARIOS, draws / LOTS_A_SCENARIO)));
        // Drawn, not counted up: seeds that differ by the generator's own step give one stream, shifted.
        long[] seeds = new SplittableRandom(seed).longs(2L * scenarios).toArray();
        int blocks = (scenarios + SCENARIOS_A_BLOCK - 1) / SCENARIOS_A_BLOCK;
        ChangePoints track = parts.levels.track(supplier);
        ChangePoints rest = parts.rest.track(supplier);
        Estimates any = Estimates.central(parts, parts.records.asOf, new double[Levels.COUNT]);
        Block[] done = new Block[blocks];
        IntStream.range(0, blocks).parallel().forEach(b -> {
            Block block =
                    new Block(parts, kinds, sets, new Scenario(parts, kinds, strangers, any, true), parts.rest.lotSd());
            block.found = found;
            block.probe = probe;
            block.harvest = parts.harvest.active() ? new HarvestCount(parts, kinds) : null;
            int last = Math.min(scenarios, (b + 1) * SCENARIOS_A_BLOCK);
            for (int s = b * SCENARIOS_A_BLOCK; s < last; s++) {
                SplittableRandom random = new SplittableRandom(seeds[2 * s]);
                block.scenario.fill(Estimates.drawn(parts, track, rest, monthsAhead, random), random);
                block.apart = new SplittableRandom(seeds[2 * s + 1]);
                if (block.harvest != null) {
                    block.harvest.scenario(block.apart);
                }
                int from = (int) ((long) draws * s / scenarios);
                int to = (int) ((long) draws * (s + 1) / scenarios);
                for (int d = from; d < to; d++) {
                    block.draw = d;
                    block.lot(random);
                    out.weight[d] = block.weight;
                    out.recovery[d] = block.recovery;
                    out.minutes[d] = block.minutes;
                }
            }
            done[b] = block;
        });
        double total = 0;
        for (double w : out.weight) {
            total += w;
        }
        for (Block block : done) {
            for (int i = 0; i < kinds.length; i++) {
                out.perSet[i][0] += block.harvest == null ? 0 : block.harvest.gainOf(i) / total / sets[i];
                for (int j = 0; j < 4; j++) {
                    out.perSet[i][j] += block.sums[i][j] / total / sets[i];
                    out.routes[i][j] += block.routes[i][j] / total / sets[i];
                }
            }
        }
        out.donors = HarvestCount.of(
                parts, kinds, java.util.Arrays.stream(done).map(b -> b.harvest).toList(), total);
        return out;
    }

    /** Consecutive scenarios, worked by one thread. */
    private static final class Block {
        private final Parts parts;
        private final int[] sets;
        private final Scenario scenario;
        private final double[][] sums;
        private final double[][] routes;
        private final int broken;
        private final boolean few;
        private final double restSd;
        private final double[] z = new double[Levels.COUNT];
        private final double[] level = new double[Levels.COUNT];
        private double recovery;
        private double minutes;
        private double weight = 1;
        private int draw;
        private int[][] found;
        private @Nullable Probe probe;
        private @Nullable HarvestCount harvest;
        /** Apart from the other, so that all else is drawn the same with donors and without. */
        private SplittableRandom apart = new SplittableRandom(0);

        Block(Parts parts, Kind[] kinds, int[] sets, Scenario scenario, double restSd) {
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
}
