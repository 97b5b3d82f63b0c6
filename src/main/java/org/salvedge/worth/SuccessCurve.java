package org.salvedge.worth;

import java.util.Arrays;
import java.util.List;
import java.util.TreeSet;
import org.salvedge.stats.CumulativeIncidence;
import org.salvedge.stats.LogNormal;

/** Chance to have succeeded by each minute, as steps. */
final class SuccessCurve {
    private static final double SPREAD = 0.6;
    private static final int POINTS = 19;

    final double[] minute;
    final double[] chance;

    private SuccessCurve(double[] minute, double[] chance) {
        this.minute = minute;
        this.chance = chance;
    }

    /** Give-ups tell nothing of the minutes not tried: they are censored. Aalen-Johansen with one cause. */
    static SuccessCurve ofCensored(List<Turns.Turn> turns) {
        return of(turns, false);
    }

    /** A set given up would never have been saved. */
    static SuccessCurve ofFailures(List<Turns.Turn> turns) {
        return of(turns, true);
    }

    private static SuccessCurve of(List<Turns.Turn> turns, boolean failures) {
        double longest = turns.stream().mapToDouble(Turns.Turn::minutes).max().orElse(0);
        double[] time = new double[turns.size()];
        int[] cause = new int[turns.size()];
        for (int i = 0; i < time.length; i++) {
            Turns.Turn t = turns.get(i);
            boolean never = failures && t.end() == Turns.End.GIVEN_UP;
            time[i] = never ? longest + 1 : t.minutes();
            cause[i] = t.end() == Turns.End.PASSED ? 1 : 0;
        }
        List<CumulativeIncidence.Step> steps =
                CumulativeIncidence.of(time, cause, 1).steps();
        return new SuccessCurve(
                steps.stream().mapToDouble(CumulativeIncidence.Step::time).toArray(),
                steps.stream().mapToDouble(CumulativeIncidence.Step::incidence).toArray());
    }

    /** What is taken for granted: so many are saved in the end, in log-normal minutes around the median. */
    static SuccessCurve assumed(double saved, double median) {
        LogNormal minutes = new LogNormal(Math.log(median), SPREAD);
        double[] minute = new double[POINTS];
        double[] chance = new double[POINTS];
        for (int i = 0; i < POINTS; i++) {
            minute[i] = minutes.quantile((i + 1.0) / (POINTS + 1));
            chance[i] = saved * (i + 1.0) / POINTS;
        }
        return new SuccessCurve(minute, chance);
    }

    /** A mixture of two, the first with this weight. */
    static SuccessCurve mix(SuccessCurve a, double weight, SuccessCurve b) {
        TreeSet<Double> times = new TreeSet<>();
        Arrays.stream(a.minute).forEach(times::add);
        Arrays.stream(b.minute).forEach(times::add);
        double[] minute = times.stream().mapToDouble(Double::doubleValue).toArray();
        double[] chance = new double[minute.length];
        int i = 0;
        int j = 0;
        for (int k = 0; k < minute.length; k++) {
            while (i < a.minute.length && a.minute[i] <= minute[k]) {
                i++;
            }
            while (j < b.minute.length && b.minute[j] <= minute[k]) {
                j++;
            }
            chance[k] = weight * (i == 0 ? 0 : a.chance[i - 1]) + (1 - weight) * (j == 0 ? 0 : b.chance[j - 1]);
        }
        return new SuccessCurve(minute, chance);
    }
}
