package org.salvedge.report;

/** A count with its noun. */
public final class Plural {
    private Plural() {}

    /** {@code 1 set}, {@code 2 sets}, thousands apart as in tables. */
    public static String of(long n, String one) {
        return Digits.grouped(n) + " " + one + (n == 1 ? "" : "s");
    }
}
