package org.salvedge.report;

import java.util.ArrayList;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;

/** The figures that stand in a workbook, and on which of its sheets: these are defined, and no others. */
final class Defined {
    private static final Map<String, Figure> BY_KEY = byKey();
    private static final int MOST_NAMED = 4;

    private final Map<Figure, List<String>> sheets = new EnumMap<>(Figure.class);

    private static Map<String, Figure> byKey() {
        Map<String, Figure> figures = new java.util.HashMap<>();
        for (Figure figure : Figure.values()) {
            figures.put(figure.column().key(), figure);
        }
        return figures;
    }

    void add(String sheet, Table table) {
        for (Column column : table.columns()) {
            Figure figure = BY_KEY.get(column.key());
            if (figure != null) {
                sheets.computeIfAbsent(figure, f -> new ArrayList<>()).add(sheet);
            }
        }
    }

    List<Figure> figures() {
        return List.copyOf(sheets.keySet());
    }

    /** Names of the sheets. */
    String where(Figure figure) {
        List<String> names = sheets.getOrDefault(figure, List.of());
        int more = names.size() - MOST_NAMED;
        return more > 1
                ? String.join(", ", names.subList(0, MOST_NAMED)) + " and " + more + " more"
                : String.join(", ", names);
    }
}
