package org.salvedge.report;

import java.math.BigDecimal;
import java.math.RoundingMode;

/** Numbers as people read them on a screen: point for decimals, a space between thousands, never {@code -0}. */
public final class Digits {
    private static final int GROUP = 3;

    private Digits() {}

    /** 1 234.5, with exactly so many decimals, half up. */
    public static String grouped(BigDecimal number, int decimals) {
        BigDecimal rounded = number.setScale(decimals, RoundingMode.HALF_UP);
        String plain = rounded.abs().toPlainString();
        int point = plain.indexOf('.');
        int whole = point < 0 ? plain.length() : point;
        StringBuilder out = new StringBuilder(rounded.signum() < 0 ? "-" : "");
        for (int i = 0; i < whole; i++) {
            if (i > 0 && (whole - i) % GROUP == 0) {
                out.append(' ');
            }
            out.append(plain.charAt(i));
        }
        return out.append(plain, whole, plain.length()).toString();
    }

    /** As {@link #grouped(BigDecimal, int)}; "" where it is not a number. */
    public static String grouped(double number, int decimals) {
        return Double.isFinite(number) ? grouped(BigDecimal.valueOf(number), decimals) : "";
    }

    public static String grouped(long number) {
        return grouped(BigDecimal.valueOf(number), 0);
    }

    /** Up to so many decimals, without trailing zeros. */
    static String upTo(BigDecimal number, int decimals) {
        BigDecimal shown = number.setScale(decimals, RoundingMode.HALF_UP).stripTrailingZeros();
        return grouped(shown, Math.max(0, shown.scale()));
    }
}
