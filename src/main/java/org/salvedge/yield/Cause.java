package org.salvedge.yield;

import org.salvedge.shop.Coded;

/**
 * What may be behind a change of a month against the months before it.
 *
 * @param what code of the fix, name of the supplier; "" for mix and price
 * @param effect what it did to the share of sets saved; for a price, to the price (-0.1 = a tenth less)
 * @param error standard error of the effect; not a number where there is none
 * @param p chance of a change at least as large where nothing changed
 * @param adjusted the same, allowing for how many causes were looked at (Holm)
 * @param tried attempts, sets or sales of the month that it rests on
 * @param sets of the month that the effect is a share of
 */
public record Cause(
        Kind kind, String what, double effect, double error, double p, double adjusted, int tried, int sets) {
    /** False alarms accepted over all causes looked at together. */
    public static final double LEVEL = 0.05;

    /** What kind of thing changed. */
    public enum Kind implements Coded {
        /** A fix works more or less often. */
        FIX,
        /** Sets of a supplier are better or worse than its earlier ones with the same claims. */
        SUPPLIER,
        /** Other families and faults than before. */
        MIX,
        /** The same sets sell for more or less. */
        PRICE;

        @Override
        public String code() {
            return Coded.lowerCase(this);
        }
    }

    /** Whether the change is for the better. */
    public boolean up() {
        return effect > 0;
    }

    /** More than chance, allowing for how many causes were looked at. */
    public boolean standsOut() {
        return adjusted <= LEVEL;
    }
}
