package org.salvedge.stats;

import java.util.ArrayList;
import java.util.List;

/**
 * Share still without the event at each time, from durations some of which are censored. A unit censored at a time is still at
 * risk at that time.
 *
 * <p>Sources: E. L. Kaplan and P. Meier, "Nonparametric estimation from incomplete observations", JASA 53 (1958) 457-481,
 * doi:10.1080/01621459.1958.10501452;
 * variance of M. Greenwood (1926); interval of the median of R. Brookmeyer and J. Crowley, Biometrics 38 (1982) 29-41, here with
 * limits on the logarithm of the share.
 */
public final class KaplanMeier {
    /** For shares that should be one half but for rounding. */
    private static final double ROUNDING = 1e-9;

    private final double[] times;
    private final int n;
    private final List<Step> steps;

    /**
     * A time at which events happened.
     *
     * @param atRisk units with a duration of at least this
     * @param survival share without the event just after
     * @param se Greenwood's standard error; not a number where the share is 0
     */
    public record Step(double time, int atRisk, int events, double survival, double se) {
        /** Limits on the scale of the logarithm, cut at 1; not for a share of 0. */
        public Interval interval(double level) {
            if (survival == 0) {
                return new Interval(0, 0);
            }
            double factor = Math.exp(Normals.halfWidth(level) * se / survival);
            return new Interval(survival / factor, Math.min(1, survival * factor));
        }
    }

    private KaplanMeier(double[] times, List<Step> steps) {
        this.times = times;
        this.n = times.length;
        this.steps = steps;
    }

    /**
     * @param time durations, none negative, in any order
     * @param event whether each ended with the event; else it is censored there
     */
    public static KaplanMeier of(double[] time, boolean[] event) {
        int[] endings = Durations.endings(event);
        int[] order = Durations.order(time, endings);
        int n = time.length;
        double[] sorted = new double[n];
        List<Step> steps = new ArrayList<>();
        double survival = 1;
        double greenwood = 0;
        for (int i = 0; i < n; ) {
            double t = time[order[i]];
            int atRisk = n - i;
            int events = 0;
            for (; i < n && time[order[i]] == t; i++) {
                sorted[i] = t;
                events += endings[order[i]];
            }
            if (events > 0) {
                survival *= (atRisk - events) / (double) atRisk;
                greenwood += events / ((double) atRisk * (atRisk - events));
                steps.add(new Step(
                        t, atRisk, events, survival, survival == 0 ? Double.NaN : survival * Math.sqrt(greenwood)));
            }
        }
        return new KaplanMeier(sorted, List.copyOf(steps));
    }

    /** Times with events, ascending. */
    public List<Step> steps() {
        return steps;
    }

    /** The last step at or before a time; before the first event the share is 1 without error. */
    public Step at(double t) {
        int low = 0;
        int high = steps.size();
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (steps.get(middle).time() <= t) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return low == 0 ? new Step(0, n, 0, 1, 0) : steps.get(low - 1);
    }

    /** Units with a duration of at least t: the numbers under a survival plot. */
    public int atRisk(double t) {
        int low = 0;
        int high = n;
        while (low < high) {
            int middle = (low + high) >>> 1;
            if (times[middle] < t) {
                low = middle + 1;
            } else {
                high = middle;
            }
        }
        return n - low;
    }

    /** The first time at which the share falls to a half or less; infinite where it never does. */
    public double median() {
        return steps.stream()
                .filter(s -> s.survival() <= 0.5 + ROUNDING)
                .mapToDouble(Step::time)
                .findFirst()
                .orElse(Double.POSITIVE_INFINITY);
    }

    /** From the first time at which the lower limit of the share is a half or less to that of the upper limit. */
    public Interval medianInterval(double level) {
        double low = Double.POSITIVE_INFINITY;
        double high = Double.POSITIVE_INFINITY;
        for (int i = steps.size() - 1; i >= 0; i--) {
            Interval limits = steps.get(i).interval(level);
            low = limits.low() <= 0.5 + ROUNDING ? steps.get(i).time() : low;
            high = limits.high() <= 0.5 + ROUNDING ? steps.get(i).time() : high;
        }
        return new Interval(low, high);
    }
}
