package org.salvedge.manifest.words;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.EnumMap;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import java.util.Set;
import java.util.regex.Pattern;
import org.salvedge.shop.Refused;

/** What a column's heading says it holds: the table of known headings, and the shop's own ahead of it. */
public final class HeadingWords {
    /** What a shop's settings may call a column. */
    public static final String FIELDS =
            "maker, model, description, inches, serial, quantity, claimed, kind, asking, asking_unit, asking_line, retail, none";

    /** Weight of a shop's own word: above all built in. */
    private static final double OWN = 2;

    /** A word broken over two lines: "Serien-", "nummer". */
    private static final Pattern HYPHENATED = Pattern.compile("(?<=\\p{L})-\\s+(?=\\p{Ll})");

    private static final double LEAST = 0.25;
    private static final double BESIDE = 0.8;
    private static final double TYPO = 0.8;
    private static final int LONGEST_HEADING = 90;
    private static final int MOST_WORDS = 10;
    private static final int TYPO_FROM = 6;
    private static final int LONGEST_PHRASE = 5;

    /** Words that say nothing about the kind of column. */
    private static final Set<String> FILLERS = Set.of(
            "no",
            "nr",
            "n",
            "num",
            "of",
            "the",
            "a",
            "de",
            "du",
            "des",
            "la",
            "le",
            "les",
            "l",
            "d",
            "del",
            "el",
            "los",
            "las",
            "der",
            "die",
            "das",
            "den",
            "in",
            "im",
            "en",
            "et",
            "and",
            "und",
            "y",
            "pro",
            "per",
            "je",
            "par",
            "por",
            "eur",
            "euro",
            "euros",
            "usd",
            "gbp",
            "chf",
            "cm",
            "mm",
            "net",
            "netto",
            "excl",
            "ht",
            "ohne",
            "mwst",
            "vat",
            "tva",
            "iva",
            "ca",
            "incl",
            "inkl",
            "sin",
            "hors",
            "tax",
            "if",
            "any",
            "falls",
            "approx",
            "tv",
            "tvs",
            "1",
            "2",
            "3",
            "zzgl",
            "each",
            "item",
            "unit",
            "as",
            "seller",
            "given",
            "by",
            "our",
            "your",
            "zoll",
            "inch",
            "inches",
            "pouces",
            "pulgadas");

    /**
     * What a heading was taken for.
     *
     * @param score 0 to about 1; a shop's own word scores 2
     * @param words of the heading that were recognised
     */
    public record Match(Field field, double score, String words) {}

    private record Entry(Field field, double weight, int words) {}

    private final Map<String, List<Entry>> phrases = new HashMap<>();
    private final Map<String, List<Entry>> endings = new HashMap<>();
    private final Map<String, List<String>> typoKeys = new HashMap<>();

    /** @param own heading words of the shop = field name */
    public HeadingWords(Map<String, String> own) {
        for (WordTable.Entry entry : WordTable.load("headings.tsv")) {
            String[] key = entry.key().split(":", -1);
            add(Field.valueOf(key[0]), Double.parseDouble(key[1]), entry.phrase());
        }
        own.entrySet().stream().sorted(Map.Entry.comparingByKey()).forEach(entry -> {
            String heading = Folded.fold(entry.getKey());
            if (Folded.words(heading).isEmpty()) {
                throw new Refused("shop.toml, [columns]: \"" + entry.getKey() + "\" is no heading");
            }
            add(field(entry.getKey(), entry.getValue()), OWN, heading);
        });
    }

    /** The field that a shop's settings name. */
    private static Field field(String heading, String name) {
        return switch (name.strip().toLowerCase(Locale.ROOT)) {
            case "maker" -> Field.MAKER;
            case "model" -> Field.MODEL;
            case "description" -> Field.DESCRIPTION;
            case "inches" -> Field.INCHES;
            case "serial" -> Field.SERIAL;
            case "quantity" -> Field.QUANTITY;
            case "claimed" -> Field.CLAIM;
            case "kind" -> Field.KIND;
            case "asking" -> Field.ASK;
            case "asking_unit" -> Field.ASK_UNIT;
            case "asking_line" -> Field.ASK_LINE;
            case "retail" -> Field.RETAIL;
            case "none" -> Field.NONE;
            default ->
                throw new Refused("shop.toml, [columns], \"" + heading + "\": \"" + name
                        + "\" is not a field of a manifest. Use one of " + FIELDS);
        };
    }

    private void add(Field field, double weight, String phrase) {
        if (phrase.startsWith("*")) {
            endings.computeIfAbsent(phrase.substring(1), k -> new ArrayList<>()).add(new Entry(field, weight * 0.9, 1));
            return;
        }
        List<String> words = Folded.words(phrase);
        if (words.isEmpty()) {
            return;
        }
        String key = String.join(" ", words);
        phrases.computeIfAbsent(key, k -> new ArrayList<>()).add(new Entry(field, weight, words.size()));
        if (words.size() == 1 && key.length() >= TYPO_FROM) {
            typoKeys.computeIfAbsent(key.substring(0, 1), k -> new ArrayList<>())
                    .add(key);
        }
    }

    /** What the heading may mean, best first; at most one match a field; empty where it says nothing known. */
    public List<Match> match(String heading) {
        if (heading.length() > LONGEST_HEADING) {
            return List.of();
        }
        List<String> words = Folded.wordsOf(HYPHENATED.matcher(heading).replaceAll(""));
        if (words.isEmpty() || words.size() > MOST_WORDS) {
            return List.of();
        }
        List<Match> matches = match(words);
        String folded = Folded.fold(heading);
        boolean doubled = folded.contains("ae") || folded.contains("oe") || folded.contains("ue");
        return matches.isEmpty() && doubled
                ? match(words.stream()
                        .map(w -> w.replace("ae", "a").replace("oe", "o").replace("ue", "u"))
                        .toList())
                : matches;
    }

    private List<Match> match(List<String> words) {
        Map<Field, Match> best = new EnumMap<>(Field.class);
        boolean anyKnown = false;
        int reached = 0;
        for (int from = 0; from < words.size(); from++) {
            for (int to = Math.min(words.size(), from + LONGEST_PHRASE); to > reached && to > from; to--) {
                String phrase = String.join(" ", words.subList(from, to));
                List<Entry> entries = phrases.getOrDefault(phrase, List.of());
                if (!entries.isEmpty()) {
                    anyKnown = true;
                    reached = to; // what lies within a longer known phrase says nothing more
                    for (Entry entry : entries) {
                        offer(best, entry, phrase, words, from, to);
                    }
                    break;
                }
            }
        }
        if (!anyKnown) {
            matchLoosely(words, best);
        }
        return best.values().stream()
                .filter(match -> match.score >= LEAST)
                .sorted(Comparator.comparingDouble((Match match) -> -match.score)
                        .thenComparing(Match::field))
                .toList();
    }

    /** German compounds by their end, and words one slip of the finger away. */
    private void matchLoosely(List<String> words, Map<Field, Match> best) {
        for (int i = 0; i < words.size(); i++) {
            String word = words.get(i);
            for (int from = 1; from < word.length() - 2; from++) {
                for (Entry entry : endings.getOrDefault(word.substring(from), List.of())) {
                    offer(best, entry, word, words, i, i + 1);
                }
            }
            if (best.isEmpty() && word.length() >= TYPO_FROM - 1) {
                for (String known : typoKeys.getOrDefault(word.substring(0, 1), List.of())) {
                    if (isOneSlipAway(word, known)) {
                        for (Entry entry : phrases.getOrDefault(known, List.of())) {
                            offer(best, new Entry(entry.field, entry.weight * TYPO, 1), known, words, i, i + 1);
                        }
                    }
                }
            }
        }
    }

    private static void offer(
            Map<Field, Match> best, Entry entry, String phrase, List<String> words, int from, int to) {
        int others = 0;
        for (int i = 0; i < words.size(); i++) {
            if ((i < from || i >= to) && !FILLERS.contains(words.get(i))) {
                others++;
            }
        }
        double covered = (double) entry.words / (entry.words + others);
        double score = entry.weight * (0.45 + 0.55 * covered) + 0.02 * (entry.words - 1);
        if (entry.field == Field.NONE && others > 0) {
            score *= BESIDE; // "customer comment" is a comment first
        }
        Match before = best.get(entry.field);
        if (before == null || before.score < score) {
            best.put(entry.field, new Match(entry.field, score, phrase));
        }
    }

    /** One letter wrong, missing, too many, or two exchanged. */
    static boolean isOneSlipAway(String word, String known) {
        int a = word.length();
        int b = known.length();
        if (Math.abs(a - b) > 1 || word.equals(known)) {
            return false;
        }
        int i = 0;
        while (i < a && i < b && word.charAt(i) == known.charAt(i)) {
            i++;
        }
        if (a == b) {
            boolean exchanged = i + 1 < a
                    && word.charAt(i) == known.charAt(i + 1)
                    && word.charAt(i + 1) == known.charAt(i)
                    && word.substring(i + 2).equals(known.substring(i + 2));
            return exchanged || word.substring(i + 1).equals(known.substring(i + 1));
        }
        return a > b
                ? word.substring(i + 1).equals(known.substring(i))
                : word.substring(i).equals(known.substring(i + 1));
    }
}
