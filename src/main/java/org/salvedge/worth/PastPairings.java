package org.salvedge.worth;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.TreeMap;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Part;
import org.salvedge.shop.PartTest;

/** How many pairings there could have been in the lots since the first, out of the lot or of stock, and how many there were. */
final class PastPairings {
    private static final int DEMAND = 0;
    private static final int SUPPLY = 1;

    double could;
    double made;

    private final Map<Integer, Integer> attemptRow = new HashMap<>();

    PastPairings(Records r, Harvest harvest, List<Part> parts) {
        Set<Integer> numbers = new HashSet<>();
        parts.forEach(p -> numbers.add(p.attempt() == null ? 0 : p.attempt()));
        for (int a = 0; a < r.history.attempts(); a++) {
            if (numbers.contains(r.history.attemptNumber(a))) {
                attemptRow.put(r.history.attemptNumber(a), a);
            }
        }
        Set<Integer> served = new HashSet<>();
        int first = Integer.MAX_VALUE;
        for (Part p : parts) {
            Integer row = attemptRow.get(p.attempt() == null ? 0 : p.attempt());
            if (p.fromUnit() != null && row != null) {
                served.add(r.history.attemptSet(row));
                first = Math.min(first, (int) p.on().toEpochDay());
            }
        }
        List<Map<Integer, double[]>> sides = new ArrayList<>();
        for (int lot = 0; lot < r.history.lots(); lot++) {
            sides.add(new TreeMap<>());
        }
        int[] were = new int[sides.size()];
        for (int s = 0; s < r.fault.length; s++) {
            int lot = r.lot(s);
            if (r.fault[s] < 0 || r.history.lotArrival(lot) < first) {
                continue;
            }
            int kind = r.stays.result[s] == Stays.SAVED ? Harvest.kind(r, s) : -1;
            if (kind >= 0 && harvest.gain(kind, r.family(s)) > 0) {
                harvest.fits.add(sides.get(lot), DEMAND, kind, r.family(s));
                were[lot] += served.contains(s) ? 1 : 0;
            } else if (r.fault[s] == r.codes.broken && r.stays.exit[s] == ExitKind.STRIPPED.ordinal()) {
                for (int k = 0; k < PartPrices.KINDS.size(); k++) {
                    harvest.fits.add(sides.get(lot), SUPPLY, k, r.family(s));
                }
            }
        }
        List<List<int[]>> spans = spans(r, harvest, parts);
        for (int lot = 0; lot < were.length; lot++) {
            int day = r.history.lotArrival(lot);
            double most = 0;
            for (Map.Entry<Integer, double[]> of : sides.get(lot).entrySet()) {
                double there = of.getValue()[SUPPLY];
                for (int[] span : spans.get(of.getKey())) {
                    there += span[0] < day && day <= span[1] ? 1 : 0;
                }
                most += Math.min(there, of.getValue()[DEMAND]);
            }
            could += most;
            made += Math.min(most, were[lot]);
        }
    }

    /** First and last day of each part in stock, by group. */
    private List<List<int[]>> spans(Records r, Harvest harvest, List<Part> parts) {
        List<List<int[]>> spans = new ArrayList<>();
        for (int g = 0; g < harvest.fits.count(); g++) {
            spans.add(new ArrayList<>());
        }
        for (Part p : parts) {
            int g = harvest.fits.of(r, p);
            if (g < 0 || p.tested() == PartTest.BAD) {
                continue;
            }
            Integer row = attemptRow.get(p.attempt() == null ? 0 : p.attempt());
            int used = row == null ? Integer.MAX_VALUE : r.history.attemptDay(row);
            int gone = p.goneOn() == null ? Integer.MAX_VALUE : (int) p.goneOn().toEpochDay();
            spans.get(g).add(new int[] {(int) p.on().toEpochDay(), Math.min(used, gone)});
        }
        return spans;
    }
}
