package org.salvedge.shop;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;

/**
 * Which part of the record is read: what had happened by the end of one day and had been recorded by the end of another, days
 * by the shop's zone. Null = no limit. What came by import counts as recorded on the day it happened.
 */
public record AsOf(@Nullable LocalDate happened, @Nullable LocalDate recorded) {
    public static final AsOf NOW = new AsOf(null, null);

    /** What had happened and had been recorded by that day's end. */
    public static AsOf endOf(LocalDate day) {
        return new AsOf(day, day);
    }

    /** What had happened by that day's end, whenever it was recorded. */
    public static AsOf happenedBy(LocalDate day) {
        return new AsOf(day, null);
    }
}
