package org.salvedge.demo;

import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Grade;
import org.salvedge.shop.UnitId;

/** One set of the invented shop as it really is, which the shop finds out by and by. */
final class DemoSet {
    final UnitId unit;
    final DemoFamily family;
    final int variant;
    final Fault fault;
    final Claim claim;
    final boolean arrived;
    /** What its lot's sets share: added to the chance of success on the logit scale. */
    final double fate;

    int tries;
    /** Whether its ways are tried in the other order. */
    boolean cableFirst;

    boolean masked;

    @Nullable
    Grade grade;

    DemoSet(UnitId unit, DemoFamily family, int variant, Fault fault, Claim claim, boolean arrived, double fate) {
        this.unit = unit;
        this.family = family;
        this.variant = variant;
        this.fault = fault;
        this.claim = claim;
        this.arrived = arrived;
        this.fate = fate;
    }
}
