package org.salvedge.worth.turn;

import java.util.Arrays;

/**
 * When to give up a set, in minutes from taking it in hand.
 *
 * @param minute 0 = do not begin
 * @param low eight in ten of the minutes that the record leaves possible lie from here
 * @param high to here
 */
public record Stop(int minute, int low, int high) {
    private static final double TAIL = 0.1;

    /** The band of the middle eight in ten of the minutes drawn, the answer within it. */
    static Stop of(int minute, int[] drawn) {
        if (drawn.length == 0) {
            return new Stop(minute, minute, minute);
        }
        int[] sorted = drawn.clone();
        Arrays.sort(sorted);
        int cut = (int) (TAIL * sorted.length);
        return new Stop(minute, Math.min(minute, sorted[cut]), Math.max(minute, sorted[sorted.length - 1 - cut]));
    }

    /** As "70 (55-95)"; the minute alone where the record leaves nothing open. */
    public String words() {
        return minute + (low == high ? "" : " (" + low + "-" + high + ")");
    }
}
