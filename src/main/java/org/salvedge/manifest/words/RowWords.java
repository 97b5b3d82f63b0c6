package org.salvedge.manifest.words;

import java.util.EnumMap;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;

/** Words that make a row something else than a set: totals, headings of pallets, notes; and words that mean "nothing". */
public final class RowWords {
    private enum Kind {
        TOTAL,
        HEADING,
        NOTE,
        NONE,
        DITTO
    }

    private static final int LONGEST_NONE = 30;
    private static final int MOST_WORDS = 3;

    private final Map<Kind, Set<String>> words = new EnumMap<>(Kind.class);

    public RowWords() {
        for (Kind kind : Kind.values()) {
            words.put(kind, new HashSet<>());
        }
        for (WordTable.Entry entry : WordTable.load("rows.tsv")) {
            Kind kind = Kind.valueOf(entry.key());
            boolean whole = kind == Kind.NONE || kind == Kind.DITTO;
            of(kind).add(whole ? entry.phrase() : String.join(" ", Folded.words(entry.phrase())));
        }
    }

    private Set<String> of(Kind kind) {
        return words.getOrDefault(kind, Set.of());
    }

    private final Kept<Boolean> totals = new Kept<>(text -> begins(Kind.TOTAL, text));
    private final Kept<Boolean> nones = new Kept<>(this::meansNone);

    /** Whether the text begins with a word for a sum, an average or an amount carried over. */
    public boolean isTotal(String text) {
        return totals.get(text);
    }

    /** Whether the text begins as headings of pallets, pages and lots do. */
    public boolean isHeading(String text) {
        return begins(Kind.HEADING, text);
    }

    /** Whether the text begins as notes under or over a table do. */
    public boolean isNote(String text) {
        return begins(Kind.NOTE, text);
    }

    private boolean begins(Kind kind, String text) {
        List<String> found = Folded.wordsOf(text.length() > 60 ? text.substring(0, 60) : text);
        StringBuilder phrase = new StringBuilder();
        for (int i = 0; i < Math.min(MOST_WORDS, found.size()); i++) {
            phrase.append(i == 0 ? "" : " ").append(found.get(i));
            if (of(kind).contains(phrase.toString())) {
                return true;
            }
        }
        return false;
    }

    /** Whether the text stands for "nothing here": {@code n/a}, a dash, {@code keine}. */
    public boolean isNone(String text) {
        return text.length() <= LONGEST_NONE && mayBeNone(text) && nones.get(text);
    }

    /** Long codes of letters and digits need no look. */
    private static boolean mayBeNone(String text) {
        int digits = 0;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            digits += c >= '0' && c <= '9' ? 1 : 0;
        }
        return digits == 0;
    }

    private boolean meansNone(String text) {
        String folded = Folded.fold(text).strip();
        return folded.isEmpty()
                || isRule(folded)
                || of(Kind.NONE).contains(trimmed(folded))
                || of(Kind.NONE).contains(folded);
    }

    private static String trimmed(String folded) {
        String text = folded;
        if (text.length() > 2 && text.startsWith("(") && text.endsWith(")")) {
            text = text.substring(1, text.length() - 1).strip();
        }
        return text.endsWith(".") || text.endsWith("!") || text.endsWith(":")
                ? text.substring(0, text.length() - 1)
                : text;
    }

    /** Whether the text repeats the cell above. */
    public boolean isDitto(String text) {
        return text.length() <= 14
                && of(Kind.DITTO).contains(text.toLowerCase(Locale.ROOT).strip());
    }

    /** Whether the text is nothing but dashes, dots and the like. */
    public static boolean isRule(String text) {
        for (int i = 0; i < text.length(); i++) {
            if ("-=_*.~+|#—–─━═·• /\\".indexOf(text.charAt(i)) < 0) {
                return false;
            }
        }
        return true;
    }
}
