package org.salvedge.manifest;

import org.jspecify.annotations.Nullable;

/**
 * What a cell was read as: a value, nothing, or a problem (with or without a value).
 *
 * @param problem follows the text found: "is not a screen size"
 * @param advice a sentence without its full stop
 */
record Reading<T>(@Nullable T value, @Nullable String problem, String advice) {
    static <T> Reading<T> of(T value) {
        return new Reading<>(value, null, "");
    }

    static <T> Reading<T> nothing() {
        return new Reading<>(null, null, "");
    }

    static <T> Reading<T> bad(String problem, String advice) {
        return new Reading<>(null, problem, advice);
    }

    boolean isBad() {
        return problem != null;
    }
}
