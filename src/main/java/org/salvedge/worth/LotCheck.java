package org.salvedge.worth;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/**
 * How finished lots turned out against what the estimates say of them: before anything is known of the lot, and once its own
 * levels are known, which leaves what no part accounts for.
 */
final class LotCheck {
    private static final int DRAWS = 60;
    private static final int LUCK_DRAWS = 40;
    private static final int MOST_LOTS = 80;
    private static final double WORTH = 10;
    private static final double LARGEST = 16;
    private static final long SEED = 20_011;

    /**
     * A finished lot.
     *
     * @param surprise what it brought less what was expected, in standard deviations
     * @param rest a set, what it brought beyond what its own levels let expect
     * @param error variance of that by luck alone
     */
    record Outcome(int lot, double surprise, double rest, double error) implements java.io.Serializable {}

    final List<Outcome> outcomes = new ArrayList<>();

    LotCheck(Parts p, Records r) {
        int n = r.history.lots();
        int[] open = new int[n];
        int[] sets = new int[n];
        double[] net = new double[n];
        for (int s = 0; s < r.fault.length; s++) {
            int lot = r.lot(s);
            byte result = r.stays.result[s];
            if (result == Stays.MISSING || result == Stays.ASIDE) {
                continue;
            }
            sets[lot]++;
            open[lot] += r.stays.exit[s] >= 0 && !r.stays.backHere[s] ? 0 : 1;
            net[lot] += r.stays.net(s, p.hourly / 60);
        }
        Map<Integer, Map<Kind, Integer>> kinds = new LinkedHashMap<>();
        int[] order = r.lotsInOrder();
        for (int i = order.length - 1; i >= 0 && kinds.size() < MOST_LOTS; i--) {
            if (sets[order[i]] > 0 && open[order[i]] == 0) {
                kinds.put(order[i], new LinkedHashMap<>());
            }
        }
        for (int s = 0; s < r.fault.length; s++) {
            Map<Kind, Integer> of = kinds.get(r.lot(s));
            byte result = r.stays.result[s];
            if (of != null && result != Stays.MISSING && result != Stays.ASIDE) {
                Kind kind =
                        new Kind(r.family(s), 1, -1, -1, 0, r.history.setMaker(s), r.logInches[s], r.claim[s], null);
                of.merge(kind, 1, Integer::sum);
            }
        }
        kinds.forEach((lot, of) -> outcomes.add(judge(p, lot, of, net[lot], sets[lot])));
    }

    private static Outcome judge(Parts p, int lot, Map<Kind, Integer> of, double net, int sets) {
        Kind[] keys = of.keySet().toArray(Kind[]::new);
        int[] counts = of.values().stream().mapToInt(Integer::intValue).toArray();
        SplittableRandom random = new SplittableRandom(SEED + lot);
        Estimates before = Estimates.central(p, p.records.history.lotBought(lot), new double[Levels.COUNT]);
        Scenario scenario = new Scenario(p, keys, Strangers.NONE, before, false);
        scenario.fill(before, random);
        scenario.allArrive();
        double[] said = Simulation.spread(p, keys, counts, scenario, DRAWS, random);
        Estimates after = Estimates.central(p, p.records.history.lotBought(lot), p.levels.own(lot));
        scenario.fill(after, random);
        scenario.allArrive();
        for (double[] row : scenario.lotFactor) {
            Arrays.fill(row, 0);
        }
        double[] own = Simulation.spread(p, keys, counts, scenario, LUCK_DRAWS, random);
        double mean = 0;
        for (int i = 0; i < counts.length; i++) {
            mean += counts[i] * scenario.mean(i);
        }
        return new Outcome(
                lot,
                (net - said[0]) / Math.max(1e-9, said[1]),
                (net - mean) / sets,
                own[1] * own[1] / ((double) sets * sets));
    }

    /** Factor on the spread of lots that makes past ones as surprising as they should be; at least 1, and 1 where few are through. */
    double widening() {
        double squares = WORTH;
        for (Outcome o : outcomes) {
            squares += Math.min(LARGEST, o.surprise * o.surprise);
        }
        return Math.max(1, Math.sqrt(squares / (outcomes.size() + WORTH)));
    }
}
