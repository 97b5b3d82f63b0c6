package org.salvedge.worth.turn;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.History;
import org.salvedge.shop.Timeline;

/**
 * A set on the bench as the record has it.
 *
 * @param set row in the history
 * @param days since its lot arrived
 * @param turns at the bench since it arrived, or came back
 * @param lastFix code of the latest fix that failed; null = none
 * @param retest a fix was made and not retested yet
 */
public record OpenBench(
        int set,
        String unit,
        BenchModel.OnBench what,
        int days,
        int turns,
        @Nullable String lastFix,
        boolean retest) {
    private static final double MICROS = 1e6;

    /** All sets on the bench at the end of a day, in the order of the history, which was read with its labels. */
    public static List<OpenBench> of(History h, int today) {
        List<OpenBench> open = new ArrayList<>();
        Timeline timeline = new Timeline();
        for (int set = 0; set < h.sets(); set++) {
            if (!h.arrived(set) || h.lotArrival(h.setLot(set)) > today) {
                continue;
            }
            h.walk(set, timeline);
            if (timeline.state() == Timeline.State.ON_BENCH) {
                open.add(of(h, set, today, timeline));
            }
        }
        return open;
    }

    private static OpenBench of(History h, int set, int today, Timeline timeline) {
        int back = Integer.MIN_VALUE;
        String found = null;
        for (int c = h.comebackStart(set); c < h.comebackStart(set + 1); c++) {
            if (h.comebackRestocked(c) == 1 && h.comebackDay(c) >= back) {
                back = h.comebackDay(c);
                found = h.comebackFault(c) < 0 ? null : h.faults().text(h.comebackFault(c));
            }
        }
        boolean again = found != null;
        boolean retest = false;
        int none = h.fixes().find(Fix.NONE.code());
        double spent = 0;
        int turns = 0;
        String lastFix = null;
        for (int a = h.attemptStart(set); a < h.attemptStart(set + 1); a++) {
            if (h.attemptDay(a) < back) {
                continue;
            }
            turns++;
            spent += (Math.max(0, h.attemptDiagnosisMicros(a)) + Math.max(0, h.attemptFixMicros(a))) / MICROS;
            String fault = h.faults().text(h.attemptFault(a));
            if (!fault.equals(Fault.UNKNOWN.code())) {
                again = again && fault.equals(found);
                found = fault;
            }
            Timeline.Result result = timeline.result(a - h.attemptStart(set));
            boolean fixed = h.attemptFix(a) != none;
            retest = fixed && result == Timeline.Result.PENDING;
            if (fixed && result == Timeline.Result.FAIL) {
                again = true;
                lastFix = h.fixes().text(h.attemptFix(a));
            }
        }
        BenchModel.OnBench what = onBench(h, set, found, again, spent);
        return new OpenBench(set, h.label(set), what, today - h.lotArrival(h.setLot(set)), turns, lastFix, retest);
    }

    /** The same after one more turn. */
    public OpenBench after(String fault, boolean failed, double minutes) {
        boolean known = !fault.equals(Fault.UNKNOWN.code());
        BenchModel.OnBench w = what;
        return new OpenBench(
                set,
                unit,
                new BenchModel.OnBench(
                        w.family(),
                        w.inches(),
                        w.claim(),
                        w.supplier(),
                        known ? fault : w.found(),
                        failed || w.again(),
                        w.spent() + minutes),
                days,
                turns + 1,
                lastFix,
                false);
    }

    /** A set of the history as it came in. */
    static BenchModel.OnBench fresh(History h, int set) {
        return onBench(h, set, null, false, 0);
    }

    private static BenchModel.OnBench onBench(History h, int set, @Nullable String found, boolean again, double spent) {
        return new BenchModel.OnBench(
                h.families().text(h.setFamily(set)),
                h.setInches(set) / MICROS,
                h.claims().text(h.setClaimed(set)),
                h.suppliers().text(h.lotSupplier(h.setLot(set))),
                found,
                again,
                spent);
    }
}
