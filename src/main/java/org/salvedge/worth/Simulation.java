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
        LotDraws block = new LotDraws(parts, kinds, sets, scenario, 0);
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
        LotDraws[] done = new LotDraws[blocks];
        IntStream.range(0, blocks).parallel().forEach(b -> {
            LotDraws block = new LotDraws(
                    parts, kinds, sets, new Scenario(parts, kinds, strangers, any, true), parts.rest.lotSd());
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
        for (LotDraws block : done) {
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
}
