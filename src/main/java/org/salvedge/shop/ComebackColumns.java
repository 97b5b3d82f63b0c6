package org.salvedge.shop;

/** Comebacks, by row; each set's stand side by side once built. */
final class ComebackColumns implements java.io.Serializable {
    final IntColumn set;
    final IntColumn day;
    final IntColumn restocked;
    final IntColumn fault;
    final LongColumn cost;

    ComebackColumns() {
        set = new IntColumn();
        day = new IntColumn();
        restocked = new IntColumn();
        fault = new IntColumn();
        cost = new LongColumn();
    }

    /** The rows named, in that order. */
    ComebackColumns(ComebackColumns from, int[] rows) {
        set = new IntColumn(); // which set is known from the starts
        day = from.day.pick(rows);
        restocked = from.restocked.pick(rows);
        fault = from.fault.pick(rows);
        cost = from.cost.pick(rows);
    }
}
