package org.salvedge.worth.study;

import java.util.List;

/**
 * A lot as a bidder sees it.
 *
 * @param on epoch day on which it would be bought
 */
record Offer(String supplier, int on, List<OfferedSet> sets) {
    Offer {
        sets = List.copyOf(sets);
    }
}
