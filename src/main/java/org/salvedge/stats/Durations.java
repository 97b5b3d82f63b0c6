package org.salvedge.stats;

import java.util.Arrays;

/** Durations in ascending order with how each ended; at one time the events come before the censored. */
final class Durations {
    private Durations() {}

    /** @return the rows by time, rows of one time with an ending (not 0) first; stable */
    static int[] order(double[] time, int[] ending) {
        if (time.length != ending.length) {
            throw new IllegalArgumentException(time.length + " times but " + ending.length + " endings");
        }
        Integer[] order = new Integer[time.length];
        Arrays.setAll(order, i -> i);
        for (double t : time) {
            if (!(t >= 0 && t < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("duration " + t);
            }
        }
        Arrays.sort(order, (a, b) -> {
            int byTime = Double.compare(time[a], time[b]);
            return byTime != 0 ? byTime : Boolean.compare(ending[a] == 0, ending[b] == 0);
        });
        return Arrays.stream(order).mapToInt(Integer::intValue).toArray();
    }

    static int[] endings(boolean[] event) {
        int[] endings = new int[event.length];
        Arrays.setAll(endings, i -> event[i] ? 1 : 0);
        return endings;
    }
}
