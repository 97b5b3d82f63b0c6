package org.salvedge.yield;

import org.salvedge.shop.History;

/** The order of a set's attempts in time. */
final class AttemptOrder {
    private AttemptOrder() {}

    /** Whether an attempt with a fix is its set's first with one at that fault. */
    static boolean first(History h, int set, int attempt, int noFix) {
        for (int a = h.attemptStart(set); a < h.attemptStart(set + 1); a++) {
            if (a != attempt
                    && h.attemptFault(a) == h.attemptFault(attempt)
                    && h.attemptFix(a) != noFix
                    && before(h, a, attempt)) {
                return false;
            }
        }
        return true;
    }

    static boolean before(History h, int a, int b) {
        if (h.attemptDay(a) != h.attemptDay(b)) {
            return h.attemptDay(a) < h.attemptDay(b);
        }
        return h.attemptSecond(a) != h.attemptSecond(b)
                ? h.attemptSecond(a) < h.attemptSecond(b)
                : h.attemptNumber(a) < h.attemptNumber(b);
    }
}
