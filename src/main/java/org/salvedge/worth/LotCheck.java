package org.salvedge.worth;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.SplittableRandom;

/** How finished lots turned out against what the estimates at their centre say of them. */
final class LotCheck {
    private static final int DRAWS = 100;
    private static final int MOST_LOTS = 80;
    private static final double WORTH = 10;
    private static final double LARGEST = 16;
    private static final long SEED = 20_011;

    /** By lot: what it brought, what was expected of it, and with what standard deviation. */
    final List<double[]> lots = new ArrayList<>();

    LotCheck(Parts p) {
        Records r = p.records;
        int n = r.history.lots();
        int[] open = new int[n];
        int[] sets = new int[n];
        double[] net = new double[n];
        for (int s = 0; s < r.fault.length; s++) {
            int lot = r.lot(s);
            sets[lot]++;
            byte result = r.stays.result[s];
            boolean done =
                    result == Stays.MISSING || result == Stays.ASIDE || r.stays.exit[s] >= 0 && !r.stays.backHere[s];
            open[lot] += done ? 0 : 1;
            net[lot] += r.stays.net(s, p.hourly / 60);
        }
        List<Integer> chosen = new ArrayList<>();
        int[] order = r.lotsInOrder();
        for (int i = order.length - 1; i >= 0 && chosen.size() < MOST_LOTS; i--) {
            if (sets[order[i]] > 0 && open[order[i]] == 0) {
                chosen.add(order[i]);
            }
        }
        Map<Integer, Map<Kind, Integer>> kinds = new LinkedHashMap<>();
        chosen.forEach(l -> kinds.put(l, new LinkedHashMap<>()));
        for (int s = 0; s < r.fault.length; s++) {
            Map<Kind, Integer> of = kinds.get(r.lot(s));
            if (of != null) {
                Kind kind =
                        new Kind(r.family(s), 1, -1, -1, 0, r.history.setMaker(s), r.logInches[s], r.claim[s], null);
                of.merge(kind, 1, Integer::sum);
            }
        }
        kinds.forEach((lot, of) -> {
            Kind[] keys = of.keySet().toArray(Kind[]::new);
            int[] counts = of.values().stream().mapToInt(Integer::intValue).toArray();
            SplittableRandom random = new SplittableRandom(SEED + lot);
            Estimates centre = Estimates.central(p, r.history.lotBought(lot));
            Scenario scenario = new Scenario(p, keys, Strangers.NONE, centre, false);
            scenario.fill(centre, random);
            double[] said = Simulation.spread(p, keys, counts, scenario, DRAWS, random);
            lots.add(new double[] {net[lot], said[0], said[1]});
        });
    }

    /** Factor on the spread of lots that makes past ones as surprising as they should be; at least 1, and 1 where few are through. */
    double widening() {
        double squares = WORTH;
        for (double[] lot : lots) {
            double z = (lot[0] - lot[1]) / Math.max(1e-9, lot[2]);
            squares += Math.min(LARGEST, z * z);
        }
        return Math.max(1, Math.sqrt(squares / (lots.size() + WORTH)));
    }
}
