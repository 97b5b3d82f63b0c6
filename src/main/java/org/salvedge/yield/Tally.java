package org.salvedge.yield;

import java.util.Arrays;

/** The additive figures of each cell, in whole numbers, so that no order of counting shows in them. */
final class Tally {
    private static final int START = 64;

    int[] sets = new int[START];
    int[] attempts = new int[START];
    int[] decided = new int[START];
    int[] saved = new int[START];
    int[] inProgress = new int[START];
    int[] firstTried = new int[START];
    int[] firstPassed = new int[START];
    int[] gone = new int[START];
    /** Millionths of a minute that count for the minutes per saved set. */
    long[] micros = new long[START];
    /** Minor units. */
    long[] margin = new long[START];
    /** Millionths of a minute of the gone sets. */
    long[] goneMicros = new long[START];

    /** Makes room for a cell. */
    void reach(int cell) {
        if (cell < sets.length) {
            return;
        }
        int size = Math.max(cell + 1, sets.length * 2);
        sets = Arrays.copyOf(sets, size);
        attempts = Arrays.copyOf(attempts, size);
        decided = Arrays.copyOf(decided, size);
        saved = Arrays.copyOf(saved, size);
        inProgress = Arrays.copyOf(inProgress, size);
        firstTried = Arrays.copyOf(firstTried, size);
        firstPassed = Arrays.copyOf(firstPassed, size);
        gone = Arrays.copyOf(gone, size);
        micros = Arrays.copyOf(micros, size);
        margin = Arrays.copyOf(margin, size);
        goneMicros = Arrays.copyOf(goneMicros, size);
    }
}
