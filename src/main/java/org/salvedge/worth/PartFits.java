package org.salvedge.worth;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.HashSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.SplittableRandom;
import java.util.TreeMap;
import org.salvedge.shop.Part;

/** What board fits what set: groups within which any board of a kind fits any set. Part numbers decide, families where there are none. */
final class PartFits implements java.io.Serializable {
    private static final int KINDS = PartPrices.KINDS.size();

    /** By kind and family: the groups that its sets belong to, and the share of each. */
    private final int[][][] group;

    private final double[][][] share;
    private final List<Boolean> numbered = new ArrayList<>();
    private final Map<List<Object>, Integer> groups = new LinkedHashMap<>();
    private final Map<String, Integer> rows;

    PartFits(Records r, List<Part> parts) {
        group = new int[KINDS][r.history.families().size()][];
        share = new double[KINDS][r.history.families().size()][];
        rows = rows(r, parts);
        if (!parts.isEmpty()) {
            fits(r, parts);
        }
    }

    /** Rows of the sets that parts came out of. */
    private static Map<String, Integer> rows(Records r, List<Part> parts) {
        Set<String> donors = new HashSet<>();
        parts.forEach(p -> donors.add(String.valueOf(p.fromUnit())));
        Map<String, Integer> rows = new HashMap<>();
        for (int s = 0; s < r.fault.length; s++) {
            if (donors.contains(r.history.label(s))) {
                rows.put(r.history.label(s), s);
            }
        }
        return rows;
    }

    private int number(int kind, String what, boolean byNumber) {
        return groups.computeIfAbsent(List.of(kind, what, byNumber), k -> {
            numbered.add(byNumber);
            return numbered.size() - 1;
        });
    }

    /** Part numbers decide where parts out of a family bear them, else the family does. */
    private void fits(Records r, List<Part> parts) {
        List<List<TreeMap<String, Integer>>> seen = new ArrayList<>();
        for (int kind = 0; kind < KINDS; kind++) {
            List<TreeMap<String, Integer>> of = new ArrayList<>();
            for (int f = 0; f < group[kind].length; f++) {
                of.add(new TreeMap<>());
            }
            seen.add(of);
        }
        for (Part p : parts) {
            int kind = PartPrices.KINDS.indexOf(p.kind());
            Integer row = rows.get(String.valueOf(p.fromUnit()));
            if (kind >= 0 && row != null && p.number() != null) {
                seen.get(kind).get(r.family(row)).merge(p.number(), 1, Integer::sum);
            }
        }
        for (int kind = 0; kind < KINDS; kind++) {
            for (int f = 0; f < group[kind].length; f++) {
                TreeMap<String, Integer> of = seen.get(kind).get(f);
                double all = of.values().stream().mapToInt(Integer::intValue).sum();
                group[kind][f] = new int[Math.max(1, of.size())];
                share[kind][f] = new double[group[kind][f].length];
                int i = 0;
                for (Map.Entry<String, Integer> e : of.entrySet()) {
                    group[kind][f][i] = number(kind, e.getKey(), true);
                    share[kind][f][i++] = e.getValue() / all;
                }
                if (of.isEmpty()) {
                    group[kind][f][0] = number(kind, r.history.families().text(f), false);
                    share[kind][f][0] = 1;
                }
            }
        }
    }

    /** Group of a part; -1 = nobody knows what it fits. */
    int of(Records r, Part p) {
        int kind = PartPrices.KINDS.indexOf(p.kind());
        if (kind < 0) {
            return -1;
        }
        Integer row = rows.get(String.valueOf(p.fromUnit()));
        if (p.number() != null) {
            return groups.getOrDefault(List.of(kind, p.number(), true), -1);
        }
        return row == null ? -1 : usual(kind, r.family(row));
    }

    /** The group that most sets of a family belong to. */
    int usual(int kind, int family) {
        int best = 0;
        for (int i = 1; i < share[kind][family].length; i++) {
            best = share[kind][family][i] > share[kind][family][best] ? i : best;
        }
        return group[kind][family][best];
    }

    /** Adds one set of a family, divided among its groups. */
    void add(Map<Integer, double[]> into, int side, int kind, int family) {
        for (int i = 0; i < group[kind][family].length; i++) {
            into.computeIfAbsent(group[kind][family][i], g -> new double[2])[side] += share[kind][family][i];
        }
    }

    /** The groups that sets of a family belong to. */
    int[] of(int kind, int family) {
        return group[kind][family];
    }

    int count() {
        return groups.size();
    }

    /** Whether part numbers say what fits sets of a family. */
    boolean byNumber(int kind, int family) {
        return numbered.get(group[kind][family][0]);
    }

    /** Which of the family's groups a set belongs to, drawn where there are several. */
    int draw(int kind, int family, SplittableRandom random) {
        double[] of = share[kind][family];
        if (of.length == 1) {
            return 0;
        }
        double u = random.nextDouble();
        int i = 0;
        while (i < of.length - 1 && u >= of[i]) {
            u -= of[i++];
        }
        return i;
    }
}
