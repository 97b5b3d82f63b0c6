package org.salvedge.report;

import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.worth.Appraisal;
import org.salvedge.worth.LineWorth;

/** The kinds of sets in a list, by what they bring: the first few, and the others as one. */
final class WhatCarries {
    private static final int MOST_GROUPS = 10;

    private WhatCarries() {}

    /** Sets of one family, or of one model where the family is not known, with one claim. */
    private static final class Group {
        private int sets;
        private double saved;
        private double brings;
        private int seen;
    }

    static Table table(Appraisal a) {
        Table.Builder table = Table.of(
                Column.of("set", "What carries it", Kind.KEY),
                Column.of("sets", "sets", Kind.COUNT),
                Column.of("saved", "saved", Kind.RATIO),
                Column.of("brings", "brings", Kind.MINUTES),
                Column.of("each", "each", Kind.MINUTES),
                Column.of("seen", "on record", Kind.COUNT));
        List<Map.Entry<List<String>, Group>> ordered = groups(a).entrySet().stream()
                .sorted(Comparator.comparingDouble(e -> -e.getValue().brings))
                .toList();
        Group rest = new Group();
        int others = 0;
        for (int i = 0; i < ordered.size(); i++) {
            Group g = ordered.get(i).getValue();
            if (i < MOST_GROUPS || ordered.size() == MOST_GROUPS + 1) {
                List<String> key = ordered.get(i).getKey();
                row(table, key.get(0) + ", " + key.get(1).replace('_', ' '), g, g.seen);
            } else {
                others++;
                rest.sets += g.sets;
                rest.saved += g.saved;
                rest.brings += g.brings;
            }
        }
        if (others > 0) {
            row(table, others + " other kinds", rest, null);
        }
        return table.build();
    }

    private static Map<List<String>, Group> groups(Appraisal a) {
        Map<List<String>, Group> groups = new LinkedHashMap<>();
        for (int i = 0; i < a.worth().lines().size(); i++) {
            LineWorth l = a.worth().lines().get(i);
            boolean certain = a.grounds().lines().get(i).certain();
            String name = certain ? l.family() : (l.model().isEmpty() ? "no model" : l.model()) + " (not seen before)";
            Group g = groups.computeIfAbsent(List.of(name, l.claimed()), k -> new Group());
            g.sets += l.sets();
            g.saved += l.pSaved() * l.sets();
            g.brings += l.recoveryMean();
            g.seen = a.grounds().lines().get(i).seen();
        }
        return groups;
    }

    private static void row(Table.Builder table, String name, Group g, @Nullable Integer seen) {
        table.row(name, g.sets, g.saved / g.sets, g.brings, g.brings / g.sets, seen);
    }
}
