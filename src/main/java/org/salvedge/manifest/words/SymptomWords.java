package org.salvedge.manifest.words;

import java.util.ArrayList;
import java.util.EnumSet;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Takes a remark apart: clauses, and in each the ideas its words stand for. */
final class SymptomWords {
    /** Clauses end at these; a hyphen only where it stands between spaces. */
    private static final String ENDS = ",;.:/|\n!?()[]*•·+&>";

    /** "Tested: no" is one clause. */
    private static final Pattern ANSWERED_NO =
            Pattern.compile(":\\s*(no|not|nein|non|nicht|keine?|ninguno|none)(?=\\s*($|[,;/|\\n]))");

    private static final Pattern HALF = Pattern.compile("(?<![\\p{N}/.])1/2\\s+(?=\\p{L})");

    private static final Set<Idea> SHOWN = EnumSet.of(Idea.PICTURE, Idea.SOUND);

    private static final Set<Idea> STATES = EnumSet.of(
            Idea.NOT,
            Idea.CRACK,
            Idea.BROKEN,
            Idea.HARM,
            Idea.DEAD,
            Idea.RESTART,
            Idea.TEST,
            Idea.UNTESTED,
            Idea.RETURN,
            Idea.WORKING,
            Idea.FAULT,
            Idea.GLASS,
            Idea.PICTURE,
            Idea.SOUND,
            Idea.LINES,
            Idea.BLACKSCREEN,
            Idea.EXTRA);

    private final Phrases<Set<Idea>> phrases = new Phrases<>();

    private final NearWords near = new NearWords();

    SymptomWords() {
        Map<String, Set<Idea>> meanings = new LinkedHashMap<>();
        for (WordTable.Entry entry : WordTable.load("symptoms.tsv")) {
            meanings.computeIfAbsent(
                            entry.phrase().replaceAll("[^\\p{L}\\p{N}*]+", " "), k -> EnumSet.noneOf(Idea.class))
                    .add(Idea.valueOf(entry.key()));
        }
        meanings.forEach(phrases::add);
        meanings.forEach((phrase, ideas) -> {
            if (phrase.indexOf(' ') < 0 && phrase.indexOf('*') < 0 && !ideas.contains(Idea.NOT)) {
                near.add(phrase);
            }
        });
    }

    /** The clauses of a folded remark, in order. */
    List<Clause> clauses(String folded) {
        List<Clause> clauses = new ArrayList<>();
        List<String> words = new ArrayList<>();
        String spoken =
                HALF.matcher(ANSWERED_NO.matcher(folded).replaceAll(" $1")).replaceAll("half ");
        for (String part : split(spoken)) {
            words.addAll(Folded.words(part));
            if (!words.isEmpty() && !endsOpen(words)) {
                addClauses(words, clauses);
                words = new ArrayList<>();
            }
        }
        if (!words.isEmpty()) {
            addClauses(words, clauses);
        }
        return clauses;
    }

    /** The longest phrase at a word, or what the word is a form or a slip of. */
    private Phrases.@Nullable Found<Set<Idea>> at(List<String> words, int i) {
        Phrases.Found<Set<Idea>> found = phrases.at(words, i);
        if (found == null) {
            String known = near.find(words.get(i));
            Phrases.Found<Set<Idea>> instead = known == null ? null : phrases.at(List.of(known), 0);
            return instead == null ? null : new Phrases.Found<>(instead.meaning(), i, i + 1);
        }
        return found;
    }

    /** Whether the words break off after a "not" alone, as in a cell whose text was wrapped. */
    private boolean endsOpen(List<String> words) {
        Phrases.Found<Set<Idea>> last = phrases.at(words, words.size() - 1);
        return words.size() <= 2 && last != null && last.meaning().contains(Idea.NOT);
    }

    /** Words such as "but" begin a clause of their own. */
    private void addClauses(List<String> words, List<Clause> into) {
        List<Clause.Item> items = new ArrayList<>();
        for (int i = 0; i < words.size(); ) {
            Phrases.Found<Set<Idea>> found = at(words, i);
            int to = found == null ? i + 1 : found.to();
            Set<Idea> ideas = found == null ? Set.of() : found.meaning();
            if (ideas.contains(Idea.BUT)) {
                add(items, into);
                items = new ArrayList<>();
            } else {
                items.add(new Clause.Item(String.join(" ", words.subList(i, to)), ideas));
                Phrases.Found<Set<Idea>> next = to < words.size() ? at(words, to) : null;
                if (next != null && isSettled(items) && next.meaning().stream().anyMatch(SHOWN::contains)) {
                    add(items, into); // "picture ok sound dead"
                    items = new ArrayList<>();
                }
            }
            i = to;
        }
        add(items, into);
    }

    /** Whether the last two words say of picture or sound that it is well. */
    private static boolean isSettled(List<Clause.Item> items) {
        int last = items.size() - 1;
        return last == 1
                && (items.get(last).is(Idea.FINE) || items.get(last).is(Idea.OK))
                && SHOWN.stream().anyMatch(items.get(0)::is);
    }

    private static void add(List<Clause.Item> items, List<Clause> into) {
        if (!items.isEmpty()) {
            into.add(new Clause(items));
        }
    }

    /** Whether a word stands for any idea. */
    boolean knows(String word) {
        return !ideas(word).isEmpty();
    }

    /** Whether a word stands for more than a filler between others. */
    boolean means(String word) {
        return ideas(word).stream().anyMatch(idea -> idea != Idea.FILLER);
    }

    /** Whether a word tells of a state, as no name does. */
    boolean tellsState(String word) {
        return ideas(word).stream().anyMatch(STATES::contains);
    }

    private Set<Idea> ideas(String word) {
        List<String> words = Folded.wordsOf(word);
        Phrases.Found<Set<Idea>> found = words.isEmpty() ? null : phrases.at(words, 0);
        return found != null && found.to() == words.size() ? found.meaning() : Set.of();
    }

    private static List<String> split(String text) {
        List<String> parts = new ArrayList<>();
        int from = 0;
        for (int i = 0; i < text.length(); i++) {
            if (ends(text, i)) {
                parts.add(text.substring(from, i));
                from = i + 1;
            }
        }
        parts.add(text.substring(from));
        return parts;
    }

    private static boolean ends(String text, int i) {
        char c = text.charAt(i);
        boolean before = i > 0 && Character.isLetterOrDigit(text.charAt(i - 1));
        boolean after = i + 1 < text.length() && Character.isLetterOrDigit(text.charAt(i + 1));
        return switch (c) {
            case '-' -> !(before && after);
            case '/' -> !(i == 1 || i > 1 && !Character.isLetterOrDigit(text.charAt(i - 2))); // w/o, n/a
            case '.' -> !(before && after) && !isInitial(text, i);
            default -> ENDS.indexOf(c) >= 0;
        };
    }

    /** The point of {@code i.O.} or {@code horiz.}: a single letter before it. */
    private static boolean isInitial(String text, int i) {
        return i > 0
                && Character.isLetter(text.charAt(i - 1))
                && (i == 1 || !Character.isLetterOrDigit(text.charAt(i - 2)));
    }
}
