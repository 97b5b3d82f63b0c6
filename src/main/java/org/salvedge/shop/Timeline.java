package org.salvedge.shop;

import java.util.Arrays;
import org.jspecify.annotations.Nullable;

/**
 * The history of one set as the counting rules read it: order of its events, result of each attempt, state, decided, saved,
 * deciding attempt, and whether the history is possible at all. Every part of the program asks this class, so that they agree.
 *
 * <p>Reusable, for walks over a million sets: {@link #start}, add events in any order, {@link #settle}, read. Days are epoch
 * days. Attempts and exits are spoken of by the order in which they were added, from 0. Not safe for threads.
 */
public final class Timeline {
    /** Result of an attempt. A diagnosis without a verdict has none. */
    public enum Result {
        PASS,
        FAIL,
        PENDING,
        NONE
    }

    public enum State {
        ON_BENCH,
        PASSED,
        GONE
    }

    /** Why a history cannot have happened. */
    public enum Impossible {
        NOT_ARRIVED("is about a set that never arrived; only a seller's credit (returned) can be booked for it"),
        ATTEMPT_BEFORE_ARRIVAL("is before the day the set was received"),
        ATTEMPT_AFTER_EXIT("is after the set has gone"),
        EXIT_BEFORE_ARRIVAL("is before the day the set was received"),
        EXIT_AFTER_EXIT(
                "is after the set has gone; a set can leave again only after a comeback that put it back in stock"),
        COMEBACK_WITHOUT_SALE("is of a set that was not sold at that time");

        private final String words;

        Impossible(String words) {
            this.words = words;
        }

        /** Predicate of a sentence whose subject is the event. */
        public String words() {
            return words;
        }
    }

    /** Kinds of events, in their order within one day; a comeback of an earlier day's exit comes before all. */
    public enum Kind {
        ATTEMPT,
        EXIT,
        COMEBACK
    }

    private static final ExitKind[] EXIT_KINDS = ExitKind.values();
    private static final int START_CAPACITY = 16;

    private boolean arrived;
    private int arrivalDay;

    private int n;
    private int attempts;
    private int exits;
    private int comebacks;
    private Kind[] kind = new Kind[START_CAPACITY];
    private int[] day = new int[START_CAPACITY];
    private long[] within = new long[START_CAPACITY];
    private int[] index = new int[START_CAPACITY]; // among its own kind, in order of addition
    private int[] detail =
            new int[START_CAPACITY]; // attempt: passed and fixed; exit: kind and gone; comeback: restocked
    private int[] order = new int[START_CAPACITY];
    private Result[] results = new Result[START_CAPACITY];

    private State state = State.ON_BENCH;
    private @Nullable ExitKind lastExitKind;
    private int lastExit;
    private int lastExitDay;
    private int lastPass;
    private int lastPassDay;
    private boolean passBeforeExit;
    private int deciding;
    private int firstFix;
    private @Nullable Impossible impossible;
    private @Nullable Kind impossibleKind;
    private int impossibleIndex;

    /** Forgets everything and begins a set. */
    public void start(boolean setArrived, int firstDay) {
        arrived = setArrived;
        arrivalDay = firstDay;
        n = 0;
        attempts = 0;
        exits = 0;
        comebacks = 0;
    }

    /**
     * @param second of the day
     * @param number the attempt's own number
     * @param fixed whether a fix other than none was used
     * @param passed 1, 0, or -1 for no retest
     */
    public void attempt(int onDay, int second, int number, boolean fixed, int passed) {
        add(Kind.ATTEMPT, onDay, ((long) second << 32) | number, attempts++, (passed + 1) << 1 | (fixed ? 1 : 0));
    }

    public void exit(int onDay, int seq, ExitKind exitKind, boolean gone) {
        add(Kind.EXIT, onDay, seq, exits++, exitKind.ordinal() << 1 | (gone ? 1 : 0));
    }

    public void comeback(int onDay, boolean restocked) {
        add(Kind.COMEBACK, onDay, 0, comebacks++, restocked ? 1 : 0);
    }

    private void add(Kind k, int onDay, long rank, int ofKind, int what) {
        if (n == day.length) {
            int size = n * 2;
            kind = Arrays.copyOf(kind, size);
            day = Arrays.copyOf(day, size);
            within = Arrays.copyOf(within, size);
            index = Arrays.copyOf(index, size);
            detail = Arrays.copyOf(detail, size);
            order = Arrays.copyOf(order, size);
            results = Arrays.copyOf(results, size);
        }
        kind[n] = k;
        day[n] = onDay;
        within[n] = rank;
        index[n] = ofKind;
        detail[n] = what;
        n++;
    }

    /** Puts the events in order and walks them once. */
    public void settle() {
        sort();
        state = State.ON_BENCH;
        lastExitKind = null;
        lastExit = -1;
        lastExitDay = Integer.MIN_VALUE;
        lastPass = -1;
        lastPassDay = Integer.MIN_VALUE;
        passBeforeExit = false;
        deciding = -1;
        firstFix = -1;
        impossible = null;
        impossibleKind = null;
        impossibleIndex = -1;
        boolean gone = false;
        boolean sold = false;
        boolean lastAttemptPassed = false;
        boolean lastResultPassed = false;
        boolean fixSeen = false;
        int open = -1; // an attempt with a fix and no verdict yet
        for (int i = 0; i < n; i++) {
            int e = order[i];
            switch (kind[e]) {
                case ATTEMPT -> {
                    check(e, arrived ? null : Impossible.NOT_ARRIVED);
                    check(e, day[e] < arrivalDay ? Impossible.ATTEMPT_BEFORE_ARRIVAL : null);
                    check(e, gone ? Impossible.ATTEMPT_AFTER_EXIT : null);
                    if (open >= 0) {
                        results[open] = Result.FAIL;
                        lastResultPassed = false;
                        open = -1;
                    }
                    boolean fixed = (detail[e] & 1) == 1;
                    int passed = (detail[e] >> 1) - 1;
                    Result r = passed == 1
                            ? Result.PASS
                            : passed == 0 ? Result.FAIL : fixed ? Result.PENDING : Result.NONE;
                    results[index[e]] = r;
                    if (r == Result.PENDING) {
                        open = index[e];
                    } else if (r != Result.NONE) {
                        lastResultPassed = r == Result.PASS;
                    }
                    lastAttemptPassed = r == Result.PASS;
                    if (r == Result.PASS) {
                        lastPass = index[e];
                        lastPassDay = day[e];
                    }
                    if (fixed || !fixSeen) {
                        deciding = index[e];
                    }
                    if (fixed && !fixSeen) {
                        firstFix = index[e];
                        fixSeen = true;
                    }
                }
                case EXIT -> {
                    ExitKind how = EXIT_KINDS[detail[e] >> 1];
                    check(e, arrived || how == ExitKind.RETURNED ? null : Impossible.NOT_ARRIVED);
                    check(e, day[e] < arrivalDay ? Impossible.EXIT_BEFORE_ARRIVAL : null);
                    if ((detail[e] & 1) == 0) {
                        break; // takings for a part: the set stays as it was
                    }
                    check(e, gone ? Impossible.EXIT_AFTER_EXIT : null);
                    if (open >= 0) {
                        results[open] = Result.FAIL;
                        lastResultPassed = false;
                        open = -1;
                    }
                    gone = true;
                    sold = how == ExitKind.SOLD;
                    lastExitKind = how;
                    lastExit = index[e];
                    lastExitDay = day[e];
                    passBeforeExit = lastResultPassed;
                }
                case COMEBACK -> {
                    check(e, gone && sold ? null : Impossible.COMEBACK_WITHOUT_SALE);
                    if (detail[e] == 1) {
                        gone = false;
                        lastAttemptPassed = false;
                    }
                }
            }
        }
        state = gone ? State.GONE : lastAttemptPassed ? State.PASSED : State.ON_BENCH;
    }

    private void check(int event, @Nullable Impossible found) {
        if (found != null && impossible == null) {
            impossible = found;
            impossibleKind = kind[event];
            impossibleIndex = index[event];
        }
    }

    /** By day; within a day a comeback of an earlier day's exit, attempts, exits, a comeback of that day's exit. */
    private void sort() {
        for (int i = 0; i < n; i++) {
            order[i] = i;
        }
        for (int i = 1; i < n; i++) { // few events a set
            int e = order[i];
            int j = i;
            while (j > 0 && before(e, order[j - 1])) {
                order[j] = order[j - 1];
                j--;
            }
            order[j] = e;
        }
        for (int i = 0; i < n; i++) {
            if (kind[order[i]] == Kind.COMEBACK && !leftOnSameDay(i)) {
                continue;
            }
            if (kind[order[i]] == Kind.COMEBACK && goneBeforeThisDay(i)) {
                moveToStartOfDay(i);
            }
        }
    }

    private boolean leftOnSameDay(int i) {
        return i > 0 && day[order[i - 1]] == day[order[i]];
    }

    /** Whether the set stood sold from an earlier day when this day began. */
    private boolean goneBeforeThisDay(int i) {
        boolean gone = false;
        for (int j = 0; j < i && day[order[j]] < day[order[i]]; j++) {
            int e = order[j];
            if (kind[e] == Kind.EXIT && (detail[e] & 1) == 1) {
                gone = true;
            } else if (kind[e] == Kind.COMEBACK && detail[e] == 1) {
                gone = false;
            }
        }
        return gone;
    }

    private void moveToStartOfDay(int i) {
        int e = order[i];
        int j = i;
        while (j > 0 && day[order[j - 1]] == day[e]) {
            order[j] = order[j - 1];
            j--;
        }
        order[j] = e;
    }

    private boolean before(int a, int b) {
        if (day[a] != day[b]) {
            return day[a] < day[b];
        }
        if (kind[a] != kind[b]) {
            return kind[a].ordinal() < kind[b].ordinal();
        }
        return within[a] < within[b];
    }

    public Result result(int attempt) {
        return results[attempt];
    }

    public State state() {
        return state;
    }

    /** Passed, or gone as sold, stripped or recycled. */
    public boolean decided() {
        return arrived
                && (state == State.PASSED
                        || state == State.GONE && lastExitKind != ExitKind.RETURNED && lastExitKind != ExitKind.LOST);
    }

    /** Passed, or sold with a pass as its latest result before. */
    public boolean saved() {
        return arrived
                && (state == State.PASSED || state == State.GONE && lastExitKind == ExitKind.SOLD && passBeforeExit);
    }

    /** Gone as returned or lost: counted beside, in no yield. */
    public boolean aside() {
        return state == State.GONE && (lastExitKind == ExitKind.RETURNED || lastExitKind == ExitKind.LOST);
    }

    /** Kind of the latest exit that took the set; null before any. */
    public @Nullable ExitKind lastExitKind() {
        return lastExitKind;
    }

    /** The latest exit that took the set, by order of addition; -1 before any. */
    public int lastExit() {
        return lastExit;
    }

    /** Epoch day of {@link #lastExit}; {@link Integer#MIN_VALUE} before any. */
    public int lastExitDay() {
        return lastExitDay;
    }

    /** The latest pass, by order of addition of attempts; -1 before any. */
    public int lastPass() {
        return lastPass;
    }

    /** Epoch day of the latest pass; {@link Integer#MIN_VALUE} before any. */
    public int lastPassDay() {
        return lastPassDay;
    }

    /** The latest attempt with a fix, else the latest attempt, else -1. */
    public int decidingAttempt() {
        return deciding;
    }

    /** The first attempt with a fix, else -1. */
    public int firstFixAttempt() {
        return firstFix;
    }

    /** The first reason why this cannot have happened; null if it can. */
    public @Nullable Impossible impossible() {
        return impossible;
    }

    /** Kind of the event that {@link #impossible} is about; null if there is none. */
    public @Nullable Kind impossibleKind() {
        return impossibleKind;
    }

    /** Which event of that kind, by order of addition; -1 if there is none. */
    public int impossibleIndex() {
        return impossibleIndex;
    }
}
