package org.salvedge.ledger;

import java.time.Instant;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Fact;

/**
 * One entry of the ledger.
 *
 * @param number from 1, in order of recording; amendments and undoings have numbers of their own
 * @param fact what it put on record; null for an undoing
 * @param recordedAt null where it came by import: then it counts as recorded on the day it happened
 * @param supersedes number of the entry it replaces or undoes; 0 = none
 * @param supersededBy number of the entry that replaced or undid it; 0 = it stands
 * @param why reason given for a correction
 */
public record Entry(
        long number,
        @Nullable Fact fact,
        @Nullable Instant recordedAt,
        long supersedes,
        long supersededBy,
        @Nullable String why) {
    public boolean stands() {
        return supersededBy == 0 && fact != null;
    }
}
