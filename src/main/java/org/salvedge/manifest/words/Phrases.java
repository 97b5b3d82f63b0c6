package org.salvedge.manifest.words;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;

/** Finds known phrases in a run of words, the longest first; a {@code *} at either end of a word stands for any rest of it. */
final class Phrases<T> {
    private static final int SHORTEST_STEM = 2;

    /** @param to after the last word */
    record Found<T>(T meaning, int from, int to) {}

    private record Phrase<T>(List<String> words, T meaning) {}

    private final Map<String, List<Phrase<T>>> byFirstWord = new HashMap<>();
    private final Map<String, List<Phrase<T>>> byFirstStem = new HashMap<>();
    private final List<Phrase<T>> byEnding = new ArrayList<>();
    private int longestStem = SHORTEST_STEM;

    /** @param phrase folded; its words may begin or end with {@code *} */
    void add(String phrase, T meaning) {
        List<String> words = words(phrase);
        if (words.isEmpty()) {
            return;
        }
        String first = words.get(0);
        Phrase<T> entry = new Phrase<>(words, meaning);
        if (first.startsWith("*")) {
            byEnding.add(entry);
        } else if (first.endsWith("*")) {
            String stem = first.substring(0, first.length() - 1);
            longestStem = Math.max(longestStem, stem.length());
            byFirstStem.computeIfAbsent(stem, k -> new ArrayList<>()).add(entry);
        } else {
            byFirstWord.computeIfAbsent(first, k -> new ArrayList<>()).add(entry);
        }
    }

    private static List<String> words(String phrase) {
        List<String> words = new ArrayList<>();
        for (String part : phrase.split("[^\\p{L}\\p{N}*#]+", -1)) {
            if (!part.isEmpty()) {
                words.add(part);
            }
        }
        return words;
    }

    /** All phrases met, left to right, none overlapping another. */
    List<Found<T>> find(List<String> words) {
        List<Found<T>> found = new ArrayList<>();
        for (int i = 0; i < words.size(); ) {
            Found<T> longest = at(words, i);
            if (longest == null) {
                i++;
            } else {
                found.add(longest);
                i = longest.to;
            }
        }
        return found;
    }

    /** The longest phrase that begins at a word; where there is none, the same with German vowels written ae, oe, ue. */
    @Nullable
    Found<T> at(List<String> words, int from) {
        Found<T> found = asWritten(words, from);
        if (found != null || !hasDoubleVowel(words.get(from))) {
            return found;
        }
        return asWritten(words.stream().map(Phrases::singleVowels).toList(), from);
    }

    private static boolean hasDoubleVowel(String word) {
        return word.contains("ae") || word.contains("oe") || word.contains("ue");
    }

    private static String singleVowels(String word) {
        return word.replace("ae", "a").replace("oe", "o").replace("ue", "u");
    }

    /** Whole words go before stems, stems before endings. */
    private @Nullable Found<T> asWritten(List<String> words, int from) {
        String first = words.get(from);
        @Nullable Phrase<T> best = longest(byFirstWord.get(first), words, from, null);
        for (int n = Math.min(longestStem, first.length()); n >= SHORTEST_STEM; n--) {
            List<Phrase<T>> stems = byFirstStem.get(first.substring(0, n));
            if (stems != null) {
                best = longest(stems, words, from, best);
            }
        }
        best = longest(byEnding, words, from, best);
        return best == null ? null : new Found<>(best.meaning, from, from + best.words.size());
    }

    private @Nullable Phrase<T> longest(
            @Nullable List<Phrase<T>> candidates, List<String> words, int from, @Nullable Phrase<T> before) {
        if (candidates == null) {
            return before;
        }
        Phrase<T> best = before;
        for (Phrase<T> candidate : candidates) {
            if ((best == null || candidate.words.size() > best.words.size()) && fits(candidate, words, from)) {
                best = candidate;
            }
        }
        return best;
    }

    private static boolean fits(Phrase<?> phrase, List<String> words, int from) {
        if (from + phrase.words.size() > words.size()) {
            return false;
        }
        for (int i = 0; i < phrase.words.size(); i++) {
            if (!fits(phrase.words.get(i), words.get(from + i))) {
                return false;
            }
        }
        return true;
    }

    private static boolean fits(String pattern, String word) {
        boolean open = pattern.endsWith("*");
        String stem = open ? pattern.substring(0, pattern.length() - 1) : pattern;
        if (stem.startsWith("*")) {
            String rest = stem.substring(1);
            return word.length() > rest.length() && (open ? word.contains(rest) : word.endsWith(rest));
        }
        return open ? word.startsWith(stem) : word.equals(stem);
    }
}
