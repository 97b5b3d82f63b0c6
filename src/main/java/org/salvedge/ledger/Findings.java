package org.salvedge.ledger;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;

/** Gathers what an audit finds; of each rule the first are listed and the rest counted. */
final class Findings {
    private static final int LISTED = 100;

    private final List<Finding> all = new ArrayList<>();
    private final Map<String, Integer> counts = new LinkedHashMap<>();

    void add(String rule, String where, String what) {
        int n = counts.merge(rule, 1, Integer::sum);
        if (n <= LISTED) {
            all.add(new Finding(rule, where, what));
        }
    }

    List<Finding> list() {
        List<Finding> list = new ArrayList<>(all);
        counts.forEach((rule, n) -> {
            if (n > LISTED) {
                list.add(new Finding(rule, "", "and " + (n - LISTED) + " more"));
            }
        });
        return List.copyOf(list);
    }
}
