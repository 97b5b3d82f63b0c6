package org.salvedge.manifest.words;

import java.util.HashMap;
import java.util.Map;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;

/** Answers already given: the same words come again and again in a list. Holds so many and no more, and always the latest. */
public final class Kept<T> {
    private static final int MOST = 20_000;
    private static final int LONGEST = 400;

    private final Map<String, T> answers = new HashMap<>();
    private final Function<String, T> ask;
    private @Nullable String latestText;
    private @Nullable T latest;

    /** @param ask gives the same answer to the same text */
    public Kept(Function<String, T> ask) {
        this.ask = ask;
    }

    public T get(String text) {
        @Nullable T again = latest;
        if (again != null && text.equals(latestText)) {
            return again;
        }
        @Nullable T known = answers.get(text);
        if (known == null) {
            known = ask.apply(text);
            if (answers.size() < MOST && text.length() <= LONGEST) {
                answers.put(text, known);
            }
        }
        latestText = text;
        latest = known;
        return known;
    }
}
