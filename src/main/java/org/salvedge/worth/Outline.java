package org.salvedge.worth;

import org.salvedge.shop.History;

/** What is left to know of {@link Records} once everything is estimated: all but the sets, so that a kept fit is small. */
final class Outline implements java.io.Serializable {
    private static final double DAYS_A_MONTH = 365.25 / 12;

    /** Lots and dictionaries, without any set. */
    final History history;

    final Codebook codes;
    final int asOf;
    /** Number of sets on record. */
    final int sets;
    /** Epoch day of the latest purchase, attempt or exit; {@link Integer#MIN_VALUE} = none. */
    final int latest;
    /** As in {@link Records}. */
    final double[] familyLogInches;

    Outline(Records r) {
        history = r.history.withoutSets();
        codes = r.codes;
        asOf = r.asOf;
        sets = r.history.sets();
        latest = latest(r.history);
        familyLogInches = r.familyLogInches;
    }

    private static int latest(History history) {
        int day = Integer.MIN_VALUE;
        for (int l = 0; l < history.lots(); l++) {
            day = Math.max(day, history.lotBought(l));
        }
        for (int a = 0; a < history.attempts(); a++) {
            day = Math.max(day, history.attemptDay(a));
        }
        for (int e = 0; e < history.exits(); e++) {
            day = Math.max(day, history.exitDay(e));
        }
        return day;
    }

    /** Months from a day to the day the record is as of; negative for days before. */
    double months(int day) {
        return (day - asOf) / DAYS_A_MONTH;
    }
}
