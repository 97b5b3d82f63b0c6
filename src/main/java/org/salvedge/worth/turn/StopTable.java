package org.salvedge.worth.turn;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.salvedge.worth.LineWorth;
import org.salvedge.worth.LotWorth;
import org.salvedge.worth.Route;

/**
 * Stop minutes for a lot: of the families it holds most of, by the faults that the shop meets most. The same as the queue and the
 * bench name for such a set: minutes from taking it in hand, a minute at labour and what the work left undone would bring.
 *
 * @param faults codes
 * @param beyondLabour price of a minute beyond labour, book currency
 */
public record StopTable(List<String> faults, List<Row> rows, double beyondLabour) {
    private static final int MOST_FAMILIES = 4;
    private static final int FEW_TRIES = 5;

    /**
     * A family.
     *
     * @param inches mean diagonal of its sets on record, 0 = not known
     * @param sets of it in the lot
     * @param cells in the order of the faults
     */
    public record Row(String family, double inches, int sets, List<Cell> cells) {
        public Row {
            cells = List.copyOf(cells);
        }
    }

    /**
     * A family with a fault.
     *
     * @param gain expected of a fix over stripping, less parts and labour, book currency; never negative
     * @param assumed hardly anything but what is assumed stands behind it
     * @param route fix, or what brings most where a fix does not pay
     * @param passedByThen share of the tries at this fault on record, of all families, that had passed within so many minutes of fixing
     */
    public record Cell(Stop stop, double gain, boolean assumed, Route route, double passedByThen) {}

    public StopTable {
        faults = List.copyOf(faults);
        rows = List.copyOf(rows);
    }

    public static StopTable of(StopModel model, LotWorth worth) {
        Map<String, Integer> sets = new LinkedHashMap<>();
        for (LineWorth line : worth.lines()) {
            if (!line.family().isEmpty()) {
                sets.merge(line.family(), line.sets(), Integer::sum);
            }
        }
        if (model.faults.isEmpty() || sets.isEmpty()) {
            return new StopTable(List.of(), List.of(), 0);
        }
        List<Row> rows = new ArrayList<>();
        sets.entrySet().stream()
                .sorted(Map.Entry.<String, Integer>comparingByValue(Comparator.reverseOrder())
                        .thenComparing(Map.Entry.comparingByKey()))
                .limit(MOST_FAMILIES)
                .forEach(e -> {
                    BenchModel.OnBench set = model.usual(e.getKey());
                    rows.add(new Row(
                            e.getKey(),
                            set.inches(),
                            e.getValue(),
                            IntStream.range(0, model.faults.size())
                                    .mapToObj(f -> cell(model, set, f))
                                    .toList()));
                });
        return new StopTable(model.faults, rows, model.beyond);
    }

    private static Cell cell(StopModel model, BenchModel.OnBench set, int f) {
        String fault = model.faults.get(f);
        Stop stop = model.bench.stop(set, fault, model.beyond);
        return new Cell(
                stop,
                model.bench.gainOfFixing(set, fault, model.beyond),
                model.bench.tries(fault) < FEW_TRIES,
                stop.minute() > 0 ? Route.FIX : model.bench.otherwise(set, fault),
                model.passedBy(f, stop.minute()));
    }
}
