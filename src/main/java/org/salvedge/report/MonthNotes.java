package org.salvedge.report;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a month's review says beside its figures.
 *
 * @param since the last printing; null = it was never printed
 * @param releases sales without all release checks
 * @param asOf the day by whose end it had been recorded; null = whatever is on record
 */
public record MonthNotes(
        @Nullable SincePrinting since,
        ReleaseExceptions releases,
        @Nullable LocalDate asOf) {
    public static final MonthNotes NONE = new MonthNotes(null, new ReleaseExceptions(0, List.of()), null);

    /** What stands behind the month and the shop's name in the title. */
    String behindTitle() {
        return asOf == null ? "" : ", as recorded by " + asOf;
    }
}
