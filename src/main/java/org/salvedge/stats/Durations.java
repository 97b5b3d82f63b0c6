package org.salvedge.stats;

import java.util.Arrays;

/** Durations in ascending order with how each ended; at one time the events come before the censored. */
final class Durations {
    private static final int MOST_DAYS = 10_000;

    private Durations() {}

    /** @return the rows by time, rows of one time with an ending (not 0) first; stable */
    static int[] order(double[] time, int[] ending) {
        if (time.length != ending.length) {
            throw new IllegalArgumentException(time.length + " times but " + ending.length + " endings");
        }
        boolean whole = true;
        for (double t : time) {
            if (!(t >= 0 && t < Double.POSITIVE_INFINITY)) {
                throw new IllegalArgumentException("duration " + t);
            }
            whole &= t < MOST_DAYS && t == (int) t;
        }
        if (whole) {
            return counted(time, ending);
        }
        Integer[] order = new Integer[time.length];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, (a, b) -> {
            int byTime = Double.compare(time[a], time[b]);
            return byTime != 0 ? byTime : Boolean.compare(ending[a] == 0, ending[b] == 0);
        });
        return Arrays.stream(order).mapToInt(Integer::intValue).toArray();
    }

    /** Whole numbers, as days are, in one pass. */
    private static int[] counted(double[] time, int[] ending) {
        int[] start = new int[2 * MOST_DAYS + 1];
        for (int i = 0; i < time.length; i++) {
            start[2 * (int) time[i] + (ending[i] == 0 ? 1 : 0) + 1]++;
        }
        for (int k = 1; k < start.length; k++) {
            start[k] += start[k - 1];
        }
        int[] order = new int[time.length];
        for (int i = 0; i < time.length; i++) {
            order[start[2 * (int) time[i] + (ending[i] == 0 ? 1 : 0)]++] = i;
        }
        return order;
    }

    static int[] endings(boolean[] event) {
        int[] endings = new int[event.length];
        Arrays.setAll(endings, i -> event[i] ? 1 : 0);
        return endings;
    }
}
