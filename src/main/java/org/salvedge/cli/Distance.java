package org.salvedge.cli;

import java.util.Locale;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.ScreenGeometry;
import org.salvedge.shop.TvSet;

/** The distance from which a picture is judged: one arc-minute a pixel, 16:9 (see {@link ScreenGeometry}). */
final class Distance {
    private static final double CM_A_METRE = 100;
    private static final double CM_A_FOOT = 30.48;
    private static final int[] USUAL_ROWS = {1080, 2160};

    private Distance() {}

    /** One sentence; null where the diagonal is not known. */
    static @Nullable String words(TvSet set) {
        return set.inches() == null ? null : words(set.inches().toDouble(), set.rows());
    }

    static String words(double inches, @Nullable Integer rows) {
        ScreenGeometry screen = ScreenGeometry.wide(inches);
        if (rows != null) {
            return "Judge the picture from " + metres(screen, rows) + ", and note what is seen close up.";
        }
        return "Judge the picture from " + metres(screen, USUAL_ROWS[0]) + ", or " + metres(screen, USUAL_ROWS[1])
                + " (rows not on record: `attempt --rows`).";
    }

    /** {@code 1.09 m}. */
    static String shortly(double inches, int rows) {
        return String.format(Locale.ROOT, "%.2f m", ScreenGeometry.wide(inches).viewingDistanceCm(rows) / CM_A_METRE);
    }

    private static String metres(ScreenGeometry screen, int rows) {
        double cm = screen.viewingDistanceCm(rows);
        return String.format(Locale.ROOT, "%.2f m (%.1f ft) at %d rows", cm / CM_A_METRE, cm / CM_A_FOOT, rows);
    }
}
