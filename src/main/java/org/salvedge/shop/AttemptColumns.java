package org.salvedge.shop;

/** Attempts, by row; each set's stand side by side once built. */
final class AttemptColumns implements java.io.Serializable {
    final IntColumn set;
    final IntColumn day;
    final IntColumn second;
    final IntColumn number;
    final IntColumn fault;
    final IntColumn fix;
    final IntColumn technician;
    final IntColumn passed;
    final IntColumn grade;
    final LongColumn diagnosisMicros;
    final LongColumn fixMicros;
    final LongColumn parts;

    AttemptColumns() {
        set = new IntColumn();
        day = new IntColumn();
        second = new IntColumn();
        number = new IntColumn();
        fault = new IntColumn();
        fix = new IntColumn();
        technician = new IntColumn();
        passed = new IntColumn();
        grade = new IntColumn();
        diagnosisMicros = new LongColumn();
        fixMicros = new LongColumn();
        parts = new LongColumn();
    }

    /** The rows named, in that order. */
    AttemptColumns(AttemptColumns from, int[] rows) {
        set = new IntColumn(); // which set is known from the starts
        day = from.day.pick(rows);
        second = from.second.pick(rows);
        number = from.number.pick(rows);
        fault = from.fault.pick(rows);
        fix = from.fix.pick(rows);
        technician = from.technician.pick(rows);
        passed = from.passed.pick(rows);
        grade = from.grade.pick(rows);
        diagnosisMicros = from.diagnosisMicros.pick(rows);
        fixMicros = from.fixMicros.pick(rows);
        parts = from.parts.pick(rows);
    }
}
