package org.salvedge.yield;

/**
 * Something worth doing, and what it is worth in a month like the last three.
 *
 * @param what fix, supplier or family
 * @param where fault; "" where it does not matter
 * @param instead the fix that is worse, for {@link Kind#PREFER}
 * @param worth units of the currency a month, with its 95 % interval
 * @param sets a month that it is counted on; no set is counted under two deeds of one review
 */
public record Deed(Kind kind, String what, String where, String instead, Range worth, double sets) {
    /** What to do. */
    public enum Kind {
        /** Try this fix first on that fault. */
        PREFER,
        /** Give sets of that fault up at once: no fix tried on it pays. */
        GIVE_UP,
        /** Find out what happened to a fix that works less often than it did. */
        MEND,
        /** Pay that supplier less. */
        PAY_LESS,
        /** Pay less for that family, or leave it. */
        LEAVE,
        /** Test longer before selling what that fix has mended. */
        TEST_LONGER
    }
}
