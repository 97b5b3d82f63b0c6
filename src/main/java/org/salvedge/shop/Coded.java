package org.salvedge.shop;

import java.util.Arrays;
import java.util.Locale;
import java.util.Optional;
import java.util.stream.Collectors;

/** An enum whose constants have a code in files and on the command line. */
public interface Coded {
    String code();

    static String lowerCase(Enum<?> constant) {
        return constant.name().toLowerCase(Locale.ROOT);
    }

    static <E extends Enum<E> & Coded> Optional<E> find(Class<E> type, String code) {
        return Arrays.stream(type.getEnumConstants())
                .filter(e -> e.code().equals(code))
                .findFirst();
    }

    /** All codes in order, for messages: {@code A, B, C}. */
    static <E extends Enum<E> & Coded> String codes(Class<E> type) {
        return Arrays.stream(type.getEnumConstants()).map(Coded::code).collect(Collectors.joining(", "));
    }
}
