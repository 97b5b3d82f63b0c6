package org.salvedge.worth.turn;

import org.salvedge.stats.LogNormal;
import org.salvedge.stats.StopRule;

/** A try over the minutes: chances of success and of its hopeless end by each of a row of minutes. */
final class TrySpan {
    private static final int FINE = 20;
    private static final int LONGEST = 300;
    private static final int FINE_STEP = 2;
    private static final int STEP = 5;

    private TrySpan() {}

    /** Every second minute up to twenty, then every fifth up to five hours. */
    static double[] minutes() {
        int fine = FINE / FINE_STEP;
        double[] minutes = new double[fine + (LONGEST - FINE) / STEP];
        for (int i = 0; i < minutes.length; i++) {
            minutes[i] = i < fine ? FINE_STEP * (i + 1) : FINE + STEP * (i - fine + 1);
        }
        return minutes;
    }

    /**
     * @param pace added to the mean log
     * @param horizon minute after which nothing more is expected
     */
    static double[] cumulative(double chance, LogNormal time, double pace, double horizon) {
        LogNormal own = new LogNormal(time.mu() + pace, time.sigma());
        double[] minutes = minutes();
        double[] by = new double[minutes.length];
        for (int i = 0; i < by.length; i++) {
            by[i] = chance * own.below(Math.min(minutes[i], horizon * Math.exp(pace)));
        }
        return by;
    }

    /** Adds a share of one curve to a mixture. */
    static void add(double[] mixture, double share, double[] curve) {
        for (int i = 0; i < mixture.length; i++) {
            mixture[i] += share * curve[i];
        }
    }

    static StopRule rule(double chance, LogNormal success, LogNormal failure, double pace, double horizon) {
        return StopRule.of(
                minutes(), cumulative(chance, success, pace, horizon), cumulative(1 - chance, failure, pace, horizon));
    }
}
