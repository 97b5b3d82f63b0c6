package org.salvedge.worth.study;

import java.util.List;

/** What is wrong with a set of which the seller truly says what he sees; shares per hundred, and how often each is claimed. */
final class Symptoms {
    /** Rows: claims; columns: faults, both in the order of {@link Words}. */
    private static final List<Shares> HONEST = List.of(
            // row col tcon light power main firm glass ports none unknown
            Shares.of(66, 4, 12, 0, 0, 3, 0, 7, 0, 4, 4), // horizontal_lines
            Shares.of(7, 64, 14, 0, 0, 0, 0, 8, 0, 3, 4), // vertical_lines
            Shares.of(20, 12, 42, 8, 0, 5, 0, 7, 0, 2, 4), // half_screen
            Shares.of(0, 0, 10, 58, 8, 10, 0, 6, 0, 4, 4), // no_picture
            Shares.of(0, 0, 0, 6, 55, 25, 0, 5, 0, 5, 4), // dead
            Shares.of(0, 0, 6, 72, 5, 0, 0, 8, 0, 5, 4), // dim_patchy
            Shares.of(0, 0, 0, 4, 10, 40, 40, 0, 0, 3, 3), // boot_loop
            Shares.of(0, 0, 0, 0, 0, 20, 8, 0, 60, 10, 2), // no_sound
            Shares.of(1, 2, 0, 0, 0, 0, 0, 95, 0, 2, 0), // cracked
            Shares.of(9, 7, 6, 18, 16, 14, 5, 15, 2, 5, 3), // untested
            Shares.of(5, 2, 3, 10, 8, 12, 12, 5, 6, 34, 3), // customer_return
            Shares.of(6, 0, 0, 8, 4, 8, 5, 8, 8, 50, 3), // working
            Shares.of(10, 8, 8, 15, 13, 13, 7, 8, 6, 6, 6)); // other

    /** What the set has where the claim is not to be trusted. */
    private static final double[] JUNK = {13, 20, 6, 11, 10, 15, 3, 14, 2, 1, 5};

    private static final double[] CLAIMED = {13, 8, 4, 13, 14, 8, 6, 3, 4, 11, 12, 2, 2};

    private Symptoms() {}

    static Shares honest(int claim) {
        return HONEST.get(claim);
    }

    static double[] junk() {
        return JUNK.clone();
    }

    static double[] claimed() {
        return CLAIMED.clone();
    }
}
