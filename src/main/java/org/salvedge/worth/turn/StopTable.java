package org.salvedge.worth.turn;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.salvedge.shop.Fault;
import org.salvedge.shop.History;
import org.salvedge.stats.CumulativeIncidence;
import org.salvedge.worth.LineWorth;
import org.salvedge.worth.LotWorth;
import org.salvedge.worth.Route;
import org.salvedge.worth.ShopModel;

/**
 * Stop minutes for a lot: of the families it holds most of, by the faults that the shop meets most. The same as the queue and the
 * bench name for such a set: minutes from taking it in hand, a minute at labour and what the work left undone would bring.
 *
 * @param faults codes
 * @param beyondLabour price of a minute beyond labour, book currency
 */
public record StopTable(List<String> faults, List<Row> rows, double beyondLabour) {
    private static final int MOST_FAMILIES = 4;
    private static final int MOST_FAULTS = 4;
    private static final int FEWEST = 10;
    private static final int FEW_TRIES = 5;
    private static final double MICROS = 1e6;
    private static final List<String> NOT_WORKED =
            List.of(Fault.PANEL_BROKEN.code(), Fault.NONE_FOUND.code(), Fault.UNKNOWN.code());

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

    /** @param labourRate per hour */
    public static StopTable of(ShopModel shop, LotWorth worth, BigDecimal labourRate) {
        History h = shop.history();
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
            return new StopTable(List.of(), List.of(), 0);
        }
        int today = (int) shop.asOf().toEpochDay();
        BenchModel model = BenchModel.fit(h, today, labourRate);
        double beyond = Workload.shadowPrice(model, h, OpenBench.of(h, today), today, 0);
        List<Row> rows = new ArrayList<>();
        sets.entrySet().stream()
                .sorted(Map.Entry.<String, Integer>comparingByValue(Comparator.reverseOrder())
                        .thenComparing(Map.Entry.comparingByKey()))
                .limit(MOST_FAMILIES)
                .forEach(e -> {
                    BenchModel.OnBench set = usual(h, e.getKey());
                    rows.add(new Row(
                            e.getKey(),
                            set.inches(),
                            e.getValue(),
                            faults.stream()
                                    .map(f -> cell(h, model, set, f, beyond))
                                    .toList()));
                });
        return new StopTable(faults, rows, beyond);
    }

    private static Cell cell(History h, BenchModel model, BenchModel.OnBench set, String fault, double beyond) {
        Stop stop = model.stop(set, fault, beyond);
        return new Cell(
                stop,
                model.gainOfFixing(set, fault, beyond),
                model.tries(fault) < FEW_TRIES,
                stop.minute() > 0 ? Route.FIX : model.otherwise(set, fault),
                passedBy(h, fault, stop.minute()));
    }

    /** By the cumulative incidence of passes beside failures, of the attempts at the fault whose fix minutes are known. */
    private static double passedBy(History h, String fault, int minute) {
        int k = h.faults().find(fault);
        int[] rows = IntStream.range(0, h.attempts())
                .filter(a -> h.attemptFault(a) == k && h.attemptFixMicros(a) > 0)
                .toArray();
        double[] time = new double[rows.length];
        int[] cause = new int[rows.length];
        for (int i = 0; i < rows.length; i++) {
            time[i] = h.attemptFixMicros(rows[i]) / MICROS;
            int passed = h.attemptPassed(rows[i]);
            cause[i] = passed == 1 ? 1 : passed == 0 ? 2 : 0;
        }
        double share = 0;
        for (CumulativeIncidence.Step s : CumulativeIncidence.of(time, cause, 1).steps()) {
            share = s.time() <= minute ? s.incidence() : share;
        }
        return share;
    }

    /** A set of the family as it stands on record: the mean of its diagonals. */
    private static BenchModel.OnBench usual(History h, String family) {
        int f = h.families().find(family);
        double sum = 0;
        int n = 0;
        for (int s = 0; s < h.sets(); s++) {
            if (h.setFamily(s) == f && h.setInches(s) > 0) {
                sum += h.setInches(s) / MICROS;
                n++;
            }
        }
        return new BenchModel.OnBench(family, n == 0 ? 0 : sum / n, "", "", null, false, 0);
    }
}
