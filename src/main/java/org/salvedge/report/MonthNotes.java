package org.salvedge.report;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What a month's review says beside its figures.
 *
 * @param since the last printing; null = it was never printed
 * @param releases sales without all release checks
 */
public record MonthNotes(@Nullable SincePrinting since, ReleaseExceptions releases) {
    public static final MonthNotes NONE = new MonthNotes(null, new ReleaseExceptions(0, List.of()));
}
