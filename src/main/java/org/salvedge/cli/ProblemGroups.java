package org.salvedge.cli;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.LinkedHashSet;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Problem;

/** Problems of a list as paragraphs: those that differ in nothing but row and text found are told together. */
final class ProblemGroups {
    /** So many alike are still told one by one. */
    private static final int FEW = 3;

    private static final int MOST_RUNS = 8;
    private static final int MOST_FOUND = 3;

    private record Key(
            String file, @Nullable String sheet, @Nullable String column, String problem, String advice) {}

    private ProblemGroups() {}

    static List<String> paragraphs(List<Problem> problems) {
        Map<Key, List<Problem>> groups = new LinkedHashMap<>();
        for (Problem p : problems) {
            groups.computeIfAbsent(
                            new Key(p.file(), p.sheet(), p.column(), p.problem(), p.advice()), k -> new ArrayList<>())
                    .add(p);
        }
        List<String> paragraphs = new ArrayList<>();
        groups.forEach((key, alike) -> {
            if (alike.size() <= FEW) {
                alike.forEach(p -> paragraphs.add(p.toString()));
            } else {
                paragraphs.add(together(key, alike));
            }
        });
        return paragraphs;
    }

    private static String together(Key key, List<Problem> alike) {
        StringBuilder text = new StringBuilder(key.file);
        if (key.sheet != null) {
            text.append(", sheet \"").append(key.sheet).append('"');
        }
        text.append(", ").append(alike.size()).append(" times, rows ").append(rows(alike));
        if (key.column != null) {
            text.append(", column \"").append(key.column).append('"');
        }
        text.append(": ");
        Set<String> found = alike.stream()
                .map(Problem::found)
                .filter(f -> f != null)
                .collect(Collectors.toCollection(LinkedHashSet::new));
        if (!found.isEmpty()) {
            text.append(found.stream().limit(MOST_FOUND).map(f -> '"' + f + '"').collect(Collectors.joining(", ")));
            text.append(found.size() > MOST_FOUND ? " and others " : " ");
        }
        text.append(key.problem);
        return key.advice.isEmpty()
                ? text.toString()
                : text.append(". ").append(key.advice).toString();
    }

    /** Rows as runs: 4, 9-17, 23. */
    private static String rows(List<Problem> alike) {
        List<String> runs = new ArrayList<>();
        int from = alike.get(0).row();
        int to = from;
        int told = 0;
        int inRun = 1;
        for (int i = 1; i <= alike.size(); i++) {
            int row = i < alike.size() ? alike.get(i).row() : Integer.MIN_VALUE;
            if (row == to + 1 || row == to) {
                to = row;
                inRun++;
                continue;
            }
            if (runs.size() < MOST_RUNS) {
                runs.add(from == to ? Integer.toString(from) : from + "-" + to);
                told += inRun;
            }
            from = row;
            to = row;
            inRun = 1;
        }
        String rows = String.join(", ", runs);
        return told < alike.size() ? rows + " and " + (alike.size() - told) + " more" : rows;
    }
}
