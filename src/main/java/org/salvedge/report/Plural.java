package org.salvedge.report;

/** {@code 1 set}, {@code 2 sets}. */
final class Plural {
    private Plural() {}

    static String of(long n, String one) {
        return Digits.grouped(n) + " " + one + (n == 1 ? "" : "s");
    }
}
