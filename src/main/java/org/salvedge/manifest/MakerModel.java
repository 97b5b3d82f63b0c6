package org.salvedge.manifest;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Maker and model of a row, and what is wrong with them.
 *
 * @param description where maker or model stand in a longer text
 */
record MakerModel(
        @Nullable String maker,
        @Nullable String model,
        @Nullable Description description,
        List<Fault> faults) {
    /** @param column the heading, or null */
    record Fault(@Nullable String column, @Nullable String found, String problem, String advice) {}
}
