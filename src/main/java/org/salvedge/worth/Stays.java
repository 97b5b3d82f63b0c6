package org.salvedge.worth;

import java.util.Arrays;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Grade;
import org.salvedge.shop.History;
import org.salvedge.shop.Timeline;

/**
 * Every set's first stay in the shop, from its arrival until it first left: what was found, what came of it, and what it cost
 * and brought. What followed a comeback is kept apart as one sum. Money in book currency, minutes in minutes.
 */
final class Stays {
    /** Nothing has been done to it. */
    static final byte UNTOUCHED = 0;
    /** Passed, or sold after a pass. */
    static final byte SAVED = 1;
    /** Left otherwise: sold as it was, stripped or recycled. */
    static final byte NOT_SAVED = 2;
    /** Begun and still open: diagnosed, or tried in vain so far. */
    static final byte OPEN = 3;
    /** Returned or lost. */
    static final byte ASIDE = 4;
    /** Was on the manifest and did not come. */
    static final byte MISSING = 5;

    private static final ExitKind[] EXIT_KINDS = ExitKind.values();

    final History history;
    private final PartPrices prices;
    final byte[] result;
    /** Code of the fault in the history's dictionary; -1 = none recorded. */
    final int[] fault;
    /** Fix of the deciding attempt; -1 = none. */
    final int[] fix;
    /** Ordinal of {@link ExitKind} of the exit that ended the stay; -1 = still here. */
    final byte[] exit;

    final int[] exitDay;
    /** Day of the first attempt or exit; {@link Integer#MAX_VALUE} = none yet. */
    final int[] begun;
    /** Day of the pass before the exit; 0 = none. */
    final int[] passDay;

    final float[] gross;
    final float[] costs;
    /** Takings for parts while the set stood here, less their costs. */
    final float[] takings;

    final float[] parts;
    /** Bench minutes; NaN where some are not known. */
    final float[] bench;
    /** Minutes of the exit; NaN if not known. */
    final float[] packing;
    /** Ordinal of {@link Grade}; -1 = not known. */
    final byte[] grade;
    /** Day of the first comeback; 0 = none. */
    final int[] comebackDay;
    /** What all that followed the first exit brought, less what it cost. */
    final float[] afterwards;
    /** Whether the set is back on the bench, so that {@link #afterwards} is not complete. */
    final boolean[] backHere;

    Stays(History history, PartPrices prices, double perMinute) {
        this.history = history;
        this.prices = prices;
        int n = history.sets();
        result = new byte[n];
        fault = new int[n];
        fix = new int[n];
        exit = new byte[n];
        exitDay = new int[n];
        passDay = new int[n];
        begun = new int[n];
        Arrays.fill(begun, Integer.MAX_VALUE);
        gross = new float[n];
        costs = new float[n];
        takings = new float[n];
        parts = new float[n];
        bench = new float[n];
        packing = new float[n];
        grade = new byte[n];
        comebackDay = new int[n];
        afterwards = new float[n];
        backHere = new boolean[n];
        Arrays.fill(exit, (byte) -1);
        Arrays.fill(grade, (byte) -1);
        double minor = Math.pow(10, Math.max(0, history.currency().getDefaultFractionDigits()));
        int none = history.fixes().find(Fix.NONE.code());
        int unknown = history.faults().find(Fault.UNKNOWN.code());
        Timeline timeline = new Timeline();
        for (int s = 0; s < n; s++) {
            read(s, timeline, minor, perMinute, none, unknown);
        }
    }

    private void read(int s, Timeline timeline, double minor, double perMinute, int none, int unknown) {
        History h = history;
        int end = firstLeaving(s);
        int lastDay = end < 0 ? Integer.MAX_VALUE : h.exitDay(end);
        timeline.start(h.arrived(s), h.lotArrival(h.setLot(s)));
        int first = h.attemptStart(s);
        int[] kept = new int[h.attemptStart(s + 1) - first];
        int count = 0;
        double minutes = 0;
        double later = 0;
        for (int a = first; a < h.attemptStart(s + 1); a++) {
            double spent = known(h.attemptDiagnosisMicros(a)) + known(h.attemptFixMicros(a));
            if (h.attemptDay(a) > lastDay) {
                later -= h.attemptParts(a) / minor + prices.beyond(a) + spent * perMinute;
                continue;
            }
            timeline.attempt(
                    h.attemptDay(a),
                    h.attemptSecond(a),
                    h.attemptNumber(a),
                    h.attemptFix(a) != none,
                    h.attemptPassed(a));
            kept[count++] = a;
            begun[s] = Math.min(begun[s], h.attemptDay(a));
            minutes += spent;
            parts[s] += (float) (h.attemptParts(a) / minor + prices.beyond(a));
        }
        bench[s] = (float) minutes;
        for (int e = h.exitStart(s); e < h.exitStart(s + 1); e++) {
            double net = (h.exitGross(e) - h.exitCosts(e)) / minor;
            if (e == end) {
                timeline.exit(h.exitDay(e), h.exitSeq(e), EXIT_KINDS[h.exitKind(e)], true);
                exit[s] = (byte) h.exitKind(e);
                exitDay[s] = h.exitDay(e);
                begun[s] = Math.min(begun[s], exitDay[s]);
                gross[s] = (float) (h.exitGross(e) / minor);
                costs[s] = (float) (h.exitCosts(e) / minor);
                packing[s] = h.exitMicros(e) < 0 ? Float.NaN : (float) (h.exitMicros(e) / 1e6);
                grade[s] = (byte) h.exitGrade(e);
            } else if (h.exitGone(e) == 0 && h.exitDay(e) <= lastDay) {
                takings[s] += (float) (net - known(h.exitMicros(e)) * perMinute);
            } else {
                later += net - known(h.exitMicros(e)) * perMinute;
            }
        }
        later -= asStripped(s, later);
        for (int c = h.comebackStart(s); c < h.comebackStart(s + 1); c++) {
            later -= h.comebackCost(c) / minor;
            if (comebackDay[s] == 0 || h.comebackDay(c) < comebackDay[s]) {
                comebackDay[s] = h.comebackDay(c);
            }
        }
        afterwards[s] = (float) later;
        timeline.settle();
        classify(s, timeline, kept, count, end >= 0, unknown);
        if (comebackDay[s] != 0) {
            h.walk(s, timeline);
            backHere[s] = timeline.state() != Timeline.State.GONE;
        }
    }

    /** What a donor's boards brought, one by one, counts as if it had been stripped of them at once; returns what came later. */
    private double asStripped(int s, double later) {
        double moved = prices.moved(s);
        boolean stripped = exit[s] == ExitKind.STRIPPED.ordinal() || exit[s] == ExitKind.RECYCLED.ordinal();
        if (moved <= 0 || !stripped) {
            return 0;
        }
        double before = Math.min(moved, Math.max(0, takings[s]));
        double after = Math.min(moved - before, Math.max(0, later));
        exit[s] = (byte) ExitKind.STRIPPED.ordinal();
        takings[s] -= (float) before;
        gross[s] += (float) (before + after);
        return after;
    }

    private void classify(int s, Timeline timeline, int[] kept, int count, boolean left, int unknown) {
        History h = history;
        int deciding = timeline.decidingAttempt();
        fault[s] = deciding < 0 ? -1 : h.attemptFault(kept[deciding]);
        fix[s] = deciding < 0 ? -1 : h.attemptFix(kept[deciding]);
        if (fault[s] == unknown) {
            for (int i = count - 1; i >= 0; i--) {
                if (h.attemptFault(kept[i]) != unknown) {
                    fault[s] = h.attemptFault(kept[i]);
                    break;
                }
            }
        }
        for (int i = 0; i < count; i++) {
            if (grade[s] < 0 && timeline.result(i) == Timeline.Result.PASS) {
                grade[s] = (byte) h.attemptGrade(kept[i]);
            }
        }
        if (!h.arrived(s)) {
            result[s] = MISSING;
        } else if (timeline.aside()) {
            result[s] = ASIDE;
        } else if (timeline.saved()) {
            result[s] = SAVED;
            passDay[s] = timeline.lastPassDay();
        } else if (left) {
            result[s] = NOT_SAVED;
        } else {
            result[s] = count == 0 ? UNTOUCHED : OPEN;
        }
    }

    private int firstLeaving(int s) {
        int found = -1;
        for (int e = history.exitStart(s); e < history.exitStart(s + 1); e++) {
            if (history.exitGone(e) == 1 && (found < 0 || earlier(e, found))) {
                found = e;
            }
        }
        return found;
    }

    private boolean earlier(int e, int f) {
        return history.exitDay(e) != history.exitDay(f)
                ? history.exitDay(e) < history.exitDay(f)
                : history.exitSeq(e) < history.exitSeq(f);
    }

    private static double known(long micros) {
        return micros < 0 ? 0 : micros / 1e6;
    }

    /** Net recovery of the set so far, minutes that are not known left out. */
    double net(int s, double perMinute) {
        double minutes = bench[s] + (exit[s] < 0 || Float.isNaN(packing[s]) ? 0 : packing[s]);
        return gross[s] - costs[s] + takings[s] - parts[s] - perMinute * minutes + afterwards[s];
    }

    boolean sold(int s) {
        return exit[s] == ExitKind.SOLD.ordinal();
    }

    /** Screen diagonal, inches; NaN = not known. */
    double inches(int s) {
        long micros = history.setInches(s);
        return micros < 0 ? Double.NaN : micros / 1e6;
    }
}
