package org.salvedge.manifest.grid;

import java.time.LocalDate;
import java.time.LocalDateTime;

/**
 * Days as spreadsheets count them. ECMA-376 Part 1, 18.17.4: base 1900 counts a 29 February 1900 that never was, base 1904
 * starts at 1904-01-01 = 0.
 */
final class SerialDate {
    private static final LocalDate BASE_1900 = LocalDate.of(1899, 12, 30);
    private static final LocalDate BASE_1904 = LocalDate.of(1904, 1, 1);
    private static final int PHANTOM_DAY = 60;
    private static final double LAST = 2_958_466;
    private static final long DAY_MILLIS = 86_400_000L;

    private SerialDate() {}

    /** ISO 8601 date, with the time where it is not midnight; the bare number where it is no date. */
    static String show(double serial, boolean from1904) {
        if (!(serial >= 0 && serial < LAST) || (!from1904 && Math.floor(serial) == PHANTOM_DAY)) {
            return Double.toString(serial);
        }
        long day = (long) Math.floor(serial);
        long millis = Math.round((serial - day) * DAY_MILLIS);
        LocalDate base = from1904 ? BASE_1904 : day < PHANTOM_DAY ? BASE_1900.plusDays(1) : BASE_1900;
        LocalDateTime at = base.plusDays(day).atStartOfDay().plusNanos(millis * 1_000_000L);
        return millis == 0 ? at.toLocalDate().toString() : at.withNano(0).toString();
    }
}
