package org.salvedge.yield;

import org.salvedge.shop.History;

/** The order of a set's attempts in time. */
final class AttemptOrder {
    private AttemptOrder() {}

    static boolean before(History h, int a, int b) {
        if (h.attemptDay(a) != h.attemptDay(b)) {
            return h.attemptDay(a) < h.attemptDay(b);
        }
        return h.attemptSecond(a) != h.attemptSecond(b)
                ? h.attemptSecond(a) < h.attemptSecond(b)
                : h.attemptNumber(a) < h.attemptNumber(b);
    }
}
