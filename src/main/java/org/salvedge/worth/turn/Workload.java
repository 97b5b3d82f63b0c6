package org.salvedge.worth.turn;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.salvedge.shop.History;

/** Work and bench time over the days ahead, judged by the days past; from them the shadow price of a minute. */
public final class Workload {
    private static final int AHEAD = 60;
    private static final int ARRIVALS_BACK = 90;
    private static final int MINUTES_BACK = 60;
    private static final int LEAST_BACK = 14;
    private static final int FEW_TURNS = 30;
    private static final double WORKING_DAYS = 5.0 / 7;
    private static final double MICROS = 1e6;
    private static final double MINUTES_AN_HOUR = 60;

    private Workload() {}

    /**
     * What a minute of bench time is worth beyond labour; 0 where there is time for all work that pays, or where the record is too
     * short to say.
     *
     * @param open sets on the bench
     * @param hours of bench time a working day; 0 = as in the {@value #MINUTES_BACK} days up to the last turn on record. A bench that
     *     stood idle for want of work that pays is then read as a short one: where the hours are known they count.
     */
    public static double shadowPrice(BenchModel model, History h, List<OpenBench> open, int today, double hours) {
        double available = AHEAD * (hours > 0 ? hours * MINUTES_AN_HOUR * WORKING_DAYS : worked(h, today));
        if (available <= 0) {
            return 0;
        }
        Map<BenchModel.OnBench, Double> copies = new HashMap<>();
        List<BenchModel.OnBench> order = new ArrayList<>();
        for (OpenBench o : open) {
            add(copies, order, o.what(), 1);
        }
        int first = today;
        for (int lot = 0; lot < h.lots(); lot++) {
            first = Math.min(first, h.lotArrival(lot));
        }
        int back = Math.min(ARRIVALS_BACK, Math.max(LEAST_BACK, today - first + 1));
        for (int set = 0; set < h.sets(); set++) {
            int day = h.lotArrival(h.setLot(set));
            if (h.arrived(set) && day > today - back && day <= today) {
                add(copies, order, OpenBench.fresh(h, set), (double) AHEAD / back);
            }
        }
        List<ShadowPrice.Work> work = new ArrayList<>();
        for (BenchModel.OnBench set : order) {
            Prospect p = model.of(set, 0);
            work.add(new ShadowPrice.Work(p.rate(), p.minutes(), copies.getOrDefault(set, 0.0)));
        }
        return ShadowPrice.of(work, available);
    }

    private static void add(
            Map<BenchModel.OnBench, Double> copies, List<BenchModel.OnBench> order, BenchModel.OnBench set, double n) {
        if (copies.merge(set, n, Double::sum) == n) {
            order.add(set);
        }
    }

    /** Bench minutes a day of the days up to the last turn; 0 where there were few turns. */
    private static double worked(History h, int asked) {
        int today = Integer.MIN_VALUE;
        for (int a = 0; a < h.attempts(); a++) {
            today = h.attemptDay(a) <= asked ? Math.max(today, h.attemptDay(a)) : today;
        }
        double minutes = 0;
        int turns = 0;
        int first = today;
        for (int a = 0; a < h.attempts(); a++) {
            int day = h.attemptDay(a);
            if (day > today - MINUTES_BACK && day <= today) {
                minutes += (Math.max(0, h.attemptDiagnosisMicros(a)) + Math.max(0, h.attemptFixMicros(a))) / MICROS;
                turns++;
            }
            first = Math.min(first, day);
        }
        int back = Math.min(MINUTES_BACK, Math.max(LEAST_BACK, today - first + 1));
        return turns < FEW_TURNS ? 0 : minutes / back;
    }
}
