package org.salvedge.yield;

import org.salvedge.stats.StudentT;

/**
 * A cause with its test, before it is set beside the others.
 *
 * @param t distance from no change, in standard errors
 * @param freedom degrees of freedom of the error
 * @param looks how many tests it is the likeliest of
 */
record Suspect(Cause.Kind kind, String what, double effect, double t, double freedom, int looks, int sets) {
    /** Where the error rests on a year of months and all lots in it. */
    static final double FREEDOM = 24;

    double p() {
        return Math.min(1, looks * StudentT.twoSided(t, Math.max(1, freedom)));
    }

    /** The same cause with another distance. */
    Suspect at(double other) {
        return new Suspect(kind, what, effect, other, freedom, looks, sets);
    }

    double error() {
        return t == 0 ? Double.NaN : Math.abs(effect / t);
    }
}
