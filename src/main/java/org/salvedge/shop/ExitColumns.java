package org.salvedge.shop;

/** Exits, by row; each set's stand side by side once built. */
final class ExitColumns implements java.io.Serializable {
    final IntColumn set;
    final IntColumn day;
    final IntColumn seq;
    final IntColumn kind;
    final IntColumn gone;
    final IntColumn channel;
    final IntColumn grade;
    final LongColumn gross;
    final LongColumn costs;
    final LongColumn micros;

    ExitColumns() {
        set = new IntColumn();
        day = new IntColumn();
        seq = new IntColumn();
        kind = new IntColumn();
        gone = new IntColumn();
        channel = new IntColumn();
        grade = new IntColumn();
        gross = new LongColumn();
        costs = new LongColumn();
        micros = new LongColumn();
    }

    /** The rows named, in that order. */
    ExitColumns(ExitColumns from, int[] rows) {
        set = new IntColumn(); // which set is known from the starts
        day = from.day.pick(rows);
        seq = from.seq.pick(rows);
        kind = from.kind.pick(rows);
        gone = from.gone.pick(rows);
        channel = from.channel.pick(rows);
        grade = from.grade.pick(rows);
        gross = from.gross.pick(rows);
        costs = from.costs.pick(rows);
        micros = from.micros.pick(rows);
    }
}
