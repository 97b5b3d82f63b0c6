package org.salvedge.worth;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.salvedge.shop.History;

/**
 * How long sets were worked on for one fault, and what came of it: minutes summed over a set's attempts at that fault (or at that
 * fault with one fix) until the first pass, or until it was given up or left as it is so far.
 */
final class Turns {
    /** How it ended. */
    enum End {
        PASSED,
        /** Given up: another fault or fix was turned to, or the set went. */
        GIVEN_UP,
        /** Still on the bench with nothing after it. */
        OPEN
    }

    /**
     * One set's time at one fault.
     *
     * @param fix -1 = all fixes together
     * @param parts cost of parts, book currency
     */
    record Turn(int set, int family, int fault, int fix, double minutes, double parts, End end) {}

    private final History h;
    private final double minor;

    Turns(History history) {
        h = history;
        minor = Math.pow(10, Math.max(0, history.currency().getDefaultFractionDigits()));
    }

    /** Every turn whose minutes are all known, in order of sets; for each fault once for all fixes and once for each. */
    List<Turn> all() {
        List<Turn> turns = new ArrayList<>();
        List<Integer> rows = new ArrayList<>();
        List<int[]> done = new ArrayList<>();
        for (int s = 0; s < h.sets(); s++) {
            rows.clear();
            for (int a = h.attemptStart(s); a < h.attemptStart(s + 1); a++) {
                rows.add(a);
            }
            rows.sort(Comparator.<Integer>comparingInt(h::attemptDay)
                    .thenComparingInt(h::attemptSecond)
                    .thenComparingInt(h::attemptNumber));
            done.clear();
            for (int i = 0; i < rows.size(); i++) {
                int fault = h.attemptFault(rows.get(i));
                once(turns, rows, done, s, fault, -1);
                once(turns, rows, done, s, fault, h.attemptFix(rows.get(i)));
            }
        }
        return turns;
    }

    private void once(List<Turn> turns, List<Integer> rows, List<int[]> done, int set, int fault, int fix) {
        for (int[] d : done) {
            if (d[0] == fault && d[1] == fix) {
                return;
            }
        }
        done.add(new int[] {fault, fix});
        double minutes = 0;
        double parts = 0;
        boolean known = true;
        boolean passed = false;
        int last = -1;
        for (int i = 0; i < rows.size() && !passed; i++) {
            int a = rows.get(i);
            if (h.attemptFault(a) == fault && (fix < 0 || h.attemptFix(a) == fix)) {
                last = i;
                known &= h.attemptFixMicros(a) >= 0 || h.attemptDiagnosisMicros(a) >= 0;
                minutes += Math.max(0, h.attemptFixMicros(a)) / 1e6 + Math.max(0, h.attemptDiagnosisMicros(a)) / 1e6;
                parts += h.attemptParts(a) / minor;
                passed = h.attemptPassed(a) == 1;
            }
        }
        if (known && minutes > 0) {
            boolean open = last == rows.size() - 1 && !gone(set) && h.attemptPassed(rows.get(last)) != 0;
            End end = passed ? End.PASSED : open ? End.OPEN : End.GIVEN_UP;
            turns.add(new Turn(set, h.setFamily(set), fault, fix, minutes, parts, end));
        }
    }

    private boolean gone(int set) {
        for (int e = h.exitStart(set); e < h.exitStart(set + 1); e++) {
            if (h.exitGone(e) == 1) {
                return true;
            }
        }
        return false;
    }
}
