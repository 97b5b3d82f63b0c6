package org.salvedge.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.worth.turn.StopTable;

/** After how many minutes to give up, by family and fault. */
final class StopReport {
    static final String HEADING = "Give up after (minutes)";

    private StopReport() {}

    static Table table(StopTable stops) {
        List<Column> columns = new ArrayList<>();
        columns.add(Column.of("family", HEADING, Kind.KEY));
        columns.add(Column.of("sets", "sets", Kind.COUNT));
        stops.faults().forEach(f -> columns.add(Column.of(f, f.replace('_', ' '), Kind.TEXT)));
        Table.Builder table = Table.of(columns);
        for (StopTable.Row row : stops.rows()) {
            List<@Nullable Object> cells = new ArrayList<>();
            cells.add(row.family());
            cells.add(row.sets());
            row.cells().forEach(c -> cells.add(words(c)));
            table.row(cells);
        }
        return table.build();
    }

    /** The rows of the table as sentences, for a screen that it does not fit. */
    static List<String> sentences(StopTable stops) {
        List<String> sentences = new ArrayList<>();
        for (StopTable.Row row : stops.rows()) {
            List<String> cells = new ArrayList<>();
            for (int i = 0; i < stops.faults().size(); i++) {
                cells.add(stops.faults().get(i).replace('_', ' ') + " "
                        + words(row.cells().get(i)));
            }
            sentences.add(row.family() + ", " + Plural.of(row.sets(), "set") + ": " + String.join(", ", cells));
        }
        return sentences;
    }

    private static String words(StopTable.Cell c) {
        String band = c.stop().minute() == 0 && c.stop().high() > 0
                ? " (0-" + c.stop().high() + ")"
                : "";
        return (c.stop().minute() == 0 ? c.route().code() + band : c.stop().words()) + (c.assumed() ? " assumed" : "");
    }

    static List<Object> json(StopTable stops) {
        List<Object> all = new ArrayList<>();
        for (StopTable.Row row : stops.rows()) {
            for (int i = 0; i < stops.faults().size(); i++) {
                StopTable.Cell c = row.cells().get(i);
                Map<String, @Nullable Object> one = new LinkedHashMap<>();
                one.put("family", row.family());
                one.put("inches", row.inches());
                one.put("fault", stops.faults().get(i));
                one.put("minute", c.stop().minute());
                one.put("low", c.stop().low());
                one.put("high", c.stop().high());
                one.put("gain", c.gain());
                one.put("assumed", c.assumed());
                one.put("route", c.route().code());
                one.put("passed_by_then", c.passedByThen());
                all.add(one);
            }
        }
        return all;
    }
}
