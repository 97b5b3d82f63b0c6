package org.salvedge.worth.turn;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.stream.IntStream;
import org.salvedge.shop.Fault;
import org.salvedge.shop.History;
import org.salvedge.stats.CumulativeIncidence;

/** What stop minutes rest on, out of a record as of a day: all that a {@link StopTable} of any lot needs, without the sets. */
public final class StopModel implements java.io.Serializable {
    private static final int MOST_FAULTS = 4;
    private static final int FEWEST = 10;
    private static final double MICROS = 1e6;
    private static final List<String> NOT_WORKED =
            List.of(Fault.PANEL_BROKEN.code(), Fault.NONE_FOUND.code(), Fault.UNKNOWN.code());

    /** Faults that the shop meets most. */
    final List<String> faults;

    final BenchModel bench;
    /** Price of a minute beyond labour, book currency. */
    final double beyond;

    private final List<Passes> passes;
    private final Map<String, Double> inches = new LinkedHashMap<>();

    /** Share passed by whole minutes at which it changes. */
    private record Passes(int[] minute, double[] share) implements java.io.Serializable {}

    private StopModel(History h, int today, BigDecimal labourRate) {
        faults = faults(h);
        bench = BenchModel.fit(h, today, labourRate);
        beyond = Workload.shadowPrice(bench, h, OpenBench.of(h, today), today, 0);
        passes = faults.stream().map(f -> passes(h, h.faults().find(f))).toList();
        inches(h);
    }

    /**
     * @param history as it stood at the end of the day, with every column
     * @param labourRate per hour
     */
    public static StopModel fit(History history, LocalDate asOf, BigDecimal labourRate) {
        return new StopModel(history, (int) asOf.toEpochDay(), labourRate);
    }

    private static List<String> faults(History h) {
        int[] met = new int[h.faults().size()];
        for (int a = 0; a < h.attempts(); a++) {
            met[h.attemptFault(a)]++;
        }
        return IntStream.range(0, met.length)
                .boxed()
                .filter(f -> met[f] >= FEWEST && !NOT_WORKED.contains(h.faults().text(f)))
                .sorted(Comparator.<Integer>comparingInt(f -> -met[f])
                        .thenComparing(f -> h.faults().text(f)))
                .limit(MOST_FAULTS)
                .map(f -> h.faults().text(f))
                .toList();
    }

    /** By the cumulative incidence of passes beside failures, of the attempts at the fault whose fix minutes are known. */
    private static Passes passes(History h, int fault) {
        int[] rows = IntStream.range(0, h.attempts())
                .filter(a -> h.attemptFault(a) == fault && h.attemptFixMicros(a) > 0)
                .toArray();
        double[] time = new double[rows.length];
        int[] cause = new int[rows.length];
        for (int i = 0; i < rows.length; i++) {
            time[i] = h.attemptFixMicros(rows[i]) / MICROS;
            int passed = h.attemptPassed(rows[i]);
            cause[i] = passed == 1 ? 1 : passed == 0 ? 2 : 0;
        }
        List<Integer> minutes = new ArrayList<>();
        List<Double> shares = new ArrayList<>();
        for (CumulativeIncidence.Step s : CumulativeIncidence.of(time, cause, 1).steps()) {
            int minute = (int) Math.ceil(s.time());
            int last = minutes.size() - 1;
            if (last >= 0 && minutes.get(last) == minute) {
                shares.set(last, s.incidence());
            } else {
                minutes.add(minute);
                shares.add(s.incidence());
            }
        }
        return new Passes(
                minutes.stream().mapToInt(Integer::intValue).toArray(),
                shares.stream().mapToDouble(Double::doubleValue).toArray());
    }

    private void inches(History h) {
        double[] sum = new double[h.families().size()];
        int[] n = new int[sum.length];
        for (int s = 0; s < h.sets(); s++) {
            if (h.setInches(s) > 0) {
                sum[h.setFamily(s)] += h.setInches(s) / MICROS;
                n[h.setFamily(s)]++;
            }
        }
        for (int f = 0; f < sum.length; f++) {
            if (n[f] > 0) {
                inches.put(h.families().text(f), sum[f] / n[f]);
            }
        }
    }

    /** Share of the tries at one of the {@link #faults}, by its place there, that had passed within so many minutes of fixing. */
    double passedBy(int fault, int minute) {
        Passes p = passes.get(fault);
        int i = 0;
        while (i < p.minute.length && p.minute[i] <= minute) {
            i++;
        }
        return i == 0 ? 0 : p.share[i - 1];
    }

    /** A set of the family as it stands on record: the mean of its diagonals. */
    BenchModel.OnBench usual(String family) {
        return new BenchModel.OnBench(family, inches.getOrDefault(family, 0.0), "", "", null, false, 0);
    }
}
