package org.salvedge.shop;

/** Lots, by row. */
final class LotColumns implements java.io.Serializable {
    final IntColumn supplier;
    final IntColumn bought;
    final IntColumn arrival;
    final LongColumn cost;
    final LongColumn micros;

    LotColumns() {
        supplier = new IntColumn();
        bought = new IntColumn();
        arrival = new IntColumn();
        cost = new LongColumn();
        micros = new LongColumn();
    }

    /** The rows named, in that order. */
    LotColumns(LotColumns from, int[] rows) {
        supplier = from.supplier.pick(rows);
        bought = from.bought.pick(rows);
        arrival = from.arrival.pick(rows);
        cost = from.cost.pick(rows);
        micros = from.micros.pick(rows);
    }
}
