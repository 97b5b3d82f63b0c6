package org.salvedge.demo;

import java.time.LocalDate;
import java.util.List;

/**
 * A seller of lots.
 *
 * @param truth chance that its claim for a set says what the fault looks like
 * @param glass chance that a set has broken glass that is not claimed
 * @param badFrom day from which both turn worse; null = never
 * @param missing chance that a listed set is not on the pallet
 */
record DemoSupplier(
        String name,
        double truth,
        double glass,
        @org.jspecify.annotations.Nullable LocalDate badFrom,
        double missing) {
    static final List<DemoSupplier> ALL = List.of(
            new DemoSupplier("Northquay", .72, .07, null, .008),
            new DemoSupplier("Greywharf", .55, .13, null, .015),
            new DemoSupplier("Eastmoor", .66, .09, null, .01),
            new DemoSupplier("Lindmark", .80, .06, null, .005),
            new DemoSupplier("Tidewell", .70, .08, LocalDate.of(2025, 10, 1), .02));

    boolean badOn(LocalDate day) {
        return badFrom != null && !day.isBefore(badFrom);
    }
}
