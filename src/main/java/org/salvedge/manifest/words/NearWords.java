package org.salvedge.manifest.words;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Known words that an unknown one is a form or a slip of: "schwarzer" of "schwarz", "horizonal" of "horizontal". */
final class NearWords {
    private static final List<String> ENDINGS =
            List.of("es", "er", "en", "em", "e", "n", "s", "as", "os", "a", "o", "ed", "ing");
    private static final List<String> OTHER_ENDINGS = List.of("", "e", "o", "a", "en", "er", "s");
    private static final int SHORTEST_STEM = 4;
    private static final int SHORTEST_SLIP = 6;

    private final Map<String, List<String>> byStart = new HashMap<>();
    private final Map<String, String> exact = new HashMap<>();

    void add(String word) {
        exact.put(word, word);
        if (word.length() >= SHORTEST_SLIP - 1) {
            byStart.computeIfAbsent(word.substring(0, 2), k -> new ArrayList<>())
                    .add(word);
        }
    }

    /** The known word, or null. */
    @Nullable
    String find(String word) {
        String form = formOf(word);
        if (form != null || word.length() < SHORTEST_SLIP || word.chars().anyMatch(Character::isDigit)) {
            return form;
        }
        for (String known : byStart.getOrDefault(word.substring(0, 2), List.of())) {
            if (HeadingWords.isOneSlipAway(word, known)) {
                return known;
            }
        }
        return null;
    }

    private @Nullable String formOf(String word) {
        for (String ending : ENDINGS) {
            int length = word.length() - ending.length();
            if (length >= SHORTEST_STEM && word.endsWith(ending)) {
                String stem = word.substring(0, length);
                for (String other : OTHER_ENDINGS) {
                    String known = exact.get(stem + other);
                    if (known != null) {
                        return known;
                    }
                }
            }
        }
        return null;
    }
}
