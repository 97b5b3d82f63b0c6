package org.salvedge.shop;

/** Sets, by row. */
final class SetColumns implements java.io.Serializable {
    final IntColumn id;
    final IntColumn lot;
    final IntColumn family;
    final IntColumn maker;
    final IntColumn model;
    final IntColumn claimed;
    final IntColumn listedMaker;
    final IntColumn listedModel;
    final IntColumn flags;
    final LongColumn inches;
    final LongColumn listedInches;
    final LongColumn asking;
    final LongColumn landed;

    SetColumns() {
        id = new IntColumn();
        lot = new IntColumn();
        family = new IntColumn();
        maker = new IntColumn();
        model = new IntColumn();
        claimed = new IntColumn();
        listedMaker = new IntColumn();
        listedModel = new IntColumn();
        flags = new IntColumn();
        inches = new LongColumn();
        listedInches = new LongColumn();
        asking = new LongColumn();
        landed = new LongColumn();
    }

    /** The rows named, in that order. */
    SetColumns(SetColumns from, int[] rows) {
        id = from.id.pick(rows);
        lot = from.lot.pick(rows);
        family = from.family.pick(rows);
        maker = from.maker.pick(rows);
        model = from.model.pick(rows);
        claimed = from.claimed.pick(rows);
        listedMaker = from.listedMaker.pick(rows);
        listedModel = from.listedModel.pick(rows);
        flags = from.flags.pick(rows);
        inches = from.inches.pick(rows);
        listedInches = from.listedInches.pick(rows);
        asking = from.asking.pick(rows);
        landed = from.landed.pick(rows);
    }
}
