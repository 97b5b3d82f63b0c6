package org.salvedge.manifest.grid;

/** Counts the memory that cells take, and the time since reading began, and stops before either hurts. */
final class Budget {
    private static final int CELL = 8;
    private static final int NUMBER = 8;
    private static final int TEXT = 48;
    private static final int ROW = 32;
    private static final int LOOK_EVERY = 0xfff;

    private final Limits limits;
    private final int seconds;
    private long deadlineNanos;
    private long bytes;
    private int calls;

    /** @param seconds from now until reading is given up */
    Budget(Limits limits, int seconds) {
        this.limits = limits;
        this.seconds = seconds;
        restart();
    }

    /** The time begins anew. */
    void restart() {
        deadlineNanos = System.nanoTime() + seconds * 1_000_000_000L;
    }

    Limits limits() {
        return limits;
    }

    void row() {
        take(ROW);
    }

    void cell() {
        take(CELL);
    }

    void number() {
        take(CELL + NUMBER);
    }

    void text(String text) {
        take(TEXT + 2L * text.length());
    }

    void take(long more) {
        bytes += more;
        if (bytes > limits.memoryBytes()) {
            throw BadFile.tooLarge("holds more cells than can be read with the memory at hand");
        }
        if ((++calls & LOOK_EVERY) == 0) {
            checkTime();
        }
    }

    void checkTime() {
        if (System.nanoTime() - deadlineNanos > 0) {
            throw BadFile.tooLarge("takes too long to read");
        }
    }
}
