package org.salvedge.worth;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.salvedge.shop.Fault;
import org.salvedge.shop.History;

/**
 * Stop minutes for a lot: of the families it holds most of, by the faults that the shop meets most.
 *
 * @param faults codes
 */
public record StopTable(List<String> faults, List<Row> rows) {
    private static final int MOST_FAMILIES = 4;
    private static final int MOST_FAULTS = 4;
    private static final int FEWEST = 10;
    private static final List<String> NOT_WORKED =
            List.of(Fault.PANEL_BROKEN.code(), Fault.NONE_FOUND.code(), Fault.UNKNOWN.code());

    /**
     * A family.
     *
     * @param sets of it in the lot
     * @param stops in the order of the faults
     */
    public record Row(String family, int sets, List<StopMinutes.Stop> stops) {
        public Row {
            stops = List.copyOf(stops);
        }
    }

    public StopTable {
        faults = List.copyOf(faults);
        rows = List.copyOf(rows);
    }

    public static StopTable of(ShopModel model, LotWorth worth) {
        History h = model.parts().records.history;
        int[] met = new int[h.faults().size()];
        for (int a = 0; a < h.attempts(); a++) {
            met[h.attemptFault(a)]++;
        }
        List<String> faults = IntStream.range(0, met.length)
                .boxed()
                .filter(f -> met[f] >= FEWEST && !NOT_WORKED.contains(h.faults().text(f)))
                .sorted(Comparator.<Integer>comparingInt(f -> -met[f])
                        .thenComparing(f -> h.faults().text(f)))
                .limit(MOST_FAULTS)
                .map(f -> h.faults().text(f))
                .toList();
        Map<String, Integer> sets = new LinkedHashMap<>();
        for (LineWorth line : worth.lines()) {
            if (!line.family().isEmpty()) {
                sets.merge(line.family(), line.sets(), Integer::sum);
            }
        }
        if (faults.isEmpty() || sets.isEmpty()) {
            return new StopTable(List.of(), List.of());
        }
        StopMinutes stops = StopMinutes.of(model);
        List<Row> rows = new ArrayList<>();
        sets.entrySet().stream()
                .sorted(Map.Entry.<String, Integer>comparingByValue(Comparator.reverseOrder())
                        .thenComparing(Map.Entry.comparingByKey()))
                .limit(MOST_FAMILIES)
                .forEach(e -> rows.add(new Row(
                        e.getKey(),
                        e.getValue(),
                        faults.stream()
                                .map(f -> stops.stop(e.getKey(), f, null))
                                .toList())));
        return new StopTable(faults, rows);
    }
}
