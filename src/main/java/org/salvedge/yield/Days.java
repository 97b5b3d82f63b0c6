package org.salvedge.yield;

import java.time.YearMonth;

/** A stretch of epoch days, both ends in it. */
record Days(int first, int last) {
    static Days of(YearMonth month) {
        return new Days(
                (int) month.atDay(1).toEpochDay(), (int) month.atEndOfMonth().toEpochDay());
    }

    boolean hold(int day) {
        return first <= day && day <= last;
    }
}
