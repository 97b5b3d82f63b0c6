package org.salvedge.worth;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;
import java.util.Map;
import org.salvedge.shop.Fault;

/** The sets of a question sorted into kinds, those that were looked at apart from others of their kind. */
final class Looked {
    final Kind[] kinds;
    final int[] sets;
    final int[] kindOf;
    /** Faults found, by kind. */
    final int[][] found;

    /** @param findings fault code by number of the set in the question */
    Looked(Lineup lineup, Codebook codes, Map<Integer, String> findings) {
        List<Kind> all = new ArrayList<>(List.of(lineup.kinds));
        int n = lineup.kinds.length;
        int[] count = Arrays.copyOf(lineup.sets, n + findings.size());
        int[][] faults = new int[count.length][0];
        kindOf = lineup.kindOf.clone();
        for (int set = 0; set < kindOf.length; set++) {
            String code = findings.get(set);
            if (code == null) {
                continue;
            }
            int kind = kindOf[set];
            if (count[kind] > 1) {
                count[kind]--;
                all.add(lineup.kinds[kind]);
                kind = all.size() - 1;
                count[kind] = 1;
                kindOf[set] = kind;
            }
            int fault = codes.faults.indexOf(code);
            faults[kind] = new int[] {fault >= 0 ? fault : codes.faults.indexOf(Fault.UNKNOWN.code())};
        }
        kinds = all.toArray(Kind[]::new);
        sets = Arrays.copyOf(count, kinds.length);
        found = Arrays.copyOf(faults, kinds.length);
    }
}
