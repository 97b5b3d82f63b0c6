package org.salvedge.report;

import java.util.Locale;

/** A chance in words that people bet by. */
final class Odds {
    private static final int[] OUT_OF = {2, 3, 4, 5, 10, 20, 100};
    private static final double CLOSE = 1e-9;

    private Odds() {}

    /** 0.8: 4 times in 5. */
    static String words(double chance) {
        for (int n : OUT_OF) {
            double times = chance * n;
            if (Math.abs(times - Math.rint(times)) < CLOSE * n && times >= 1 - CLOSE) {
                long t = Math.round(times);
                return t + (t == 1 ? " time in " : " times in ") + n;
            }
        }
        return "with a chance of " + String.format(Locale.ROOT, "%s", chance);
    }
}
