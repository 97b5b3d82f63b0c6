package org.salvedge.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.worth.StopMinutes;
import org.salvedge.worth.StopTable;

/** After how many minutes to give up, by family and fault. */
final class StopReport {
    private StopReport() {}

    static Table table(StopTable stops) {
        List<Column> columns = new ArrayList<>();
        columns.add(Column.of("family", "Give up after (minutes)", Kind.KEY));
        columns.add(Column.of("sets", "sets", Kind.COUNT));
        stops.faults().forEach(f -> columns.add(Column.of(f, f.replace('_', ' '), Kind.TEXT)));
        Table.Builder table = Table.of(columns);
        for (StopTable.Row row : stops.rows()) {
            List<@Nullable Object> cells = new ArrayList<>();
            cells.add(row.family());
            cells.add(row.sets());
            row.stops().forEach(s -> cells.add(words(s)));
            table.row(cells);
        }
        return table.build();
    }

    private static String words(StopMinutes.Stop s) {
        String minute = s.minute() == 0 ? "do not begin" : String.valueOf(s.minute());
        String band = s.low() == s.high() ? "" : " (" + s.low() + "-" + s.high() + ")";
        return minute + band + (s.assumed() ? " assumed" : "");
    }

    static List<Object> json(StopTable stops) {
        List<Object> all = new ArrayList<>();
        for (StopTable.Row row : stops.rows()) {
            for (int i = 0; i < stops.faults().size(); i++) {
                StopMinutes.Stop s = row.stops().get(i);
                Map<String, @Nullable Object> one = new LinkedHashMap<>();
                one.put("family", row.family());
                one.put("fault", stops.faults().get(i));
                one.put("minute", s.minute());
                one.put("low", s.low());
                one.put("high", s.high());
                one.put("gain", s.gain());
                one.put("assumed", s.assumed());
                all.add(one);
            }
        }
        return all;
    }
}
