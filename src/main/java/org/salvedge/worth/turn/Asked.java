package org.salvedge.worth.turn;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;

/** Answers that are worked out once and remembered while the program runs; a fit that is read back remembers none. */
final class Asked<K, V> implements java.io.Serializable {
    private transient Map<K, V> answers = new HashMap<>();

    V of(K key, Function<K, V> answer) {
        return answers.computeIfAbsent(key, answer);
    }

    private Object readResolve() {
        return new Asked<K, V>();
    }
}
