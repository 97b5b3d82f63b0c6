package org.salvedge.manifest.words;

import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/** Tells television sets from other goods, and from parts and accessories of sets, by the words of a description. */
public final class Goods {
    /** What a text names. */
    public enum Verdict {
        TELEVISION,
        OTHER,
        UNKNOWN
    }

    private enum Kind {
        TV,
        WEAK,
        OTHER,
        PART,
        CATEGORY
    }

    private static final Pattern SIZE =
            Pattern.compile("(\"|''|\\b(inch|inches|in|zoll|pouces?|pulgadas?|pulg|cm)\\b)");
    private static final Pattern MODEL = Pattern.compile("(?=.*[a-z])(?=.*[0-9]).{3,}");

    /** Words after which goods come along with a set. */
    private static final List<String> WITH = List.of(
            "with",
            "incl",
            "including",
            "inkl",
            "mit",
            "samt",
            "avec",
            "con",
            "inc",
            "and",
            "und",
            "et",
            "y",
            "plus",
            "without",
            "no",
            "ohne",
            "sans",
            "sin",
            "kein",
            "keine",
            "missing");

    /** Words after which a part is for a set. */
    private static final List<String> FOR =
            List.of("for", "fur", "pour", "para", "zu", "to", "fits", "passend", "de", "of");

    private static final int LONGEST = 1_000;

    private final Phrases<Kind> phrases = new Phrases<>();

    public Goods() {
        for (WordTable.Entry entry : WordTable.load("goods.tsv")) {
            phrases.add(entry.phrase(), Kind.valueOf(entry.key().toUpperCase(Locale.ROOT)));
        }
    }

    /** What a category column's text names. */
    public Verdict category(String text) {
        return categories.get(text);
    }

    private static String start(String text) {
        return text.length() > LONGEST ? text.substring(0, LONGEST) : text;
    }

    private Verdict judgeCategory(String text) {
        List<Phrases.Found<Kind>> found = phrases.find(Folded.wordsOf(start(text)));
        if (has(found, Kind.TV)) {
            return found.stream().anyMatch(f -> f.meaning() == Kind.PART) ? Verdict.OTHER : Verdict.TELEVISION;
        }
        if (has(found, Kind.OTHER) || has(found, Kind.PART) || has(found, Kind.CATEGORY)) {
            return Verdict.OTHER;
        }
        return has(found, Kind.WEAK) ? Verdict.TELEVISION : Verdict.UNKNOWN;
    }

    private final Kept<Verdict> described = new Kept<>(this::judge);
    private final Kept<Verdict> categories = new Kept<>(this::judgeCategory);
    private final Kept<Boolean> others = new Kept<>(this::holdsOtherGoods);

    /** What a description names. */
    public Verdict description(String text) {
        return described.get(text);
    }

    private Verdict judge(String text) {
        String folded = Folded.fold(start(text));
        List<String> words = Folded.words(folded);
        List<Phrases.Found<Kind>> found = phrases.find(words);
        int tv = first(found, Kind.TV);
        for (Phrases.Found<Kind> f : found) {
            boolean along = f.from() > 0 && WITH.contains(words.get(f.from() - 1));
            if (f.meaning() == Kind.OTHER && !along) {
                boolean afterTv = tv >= 0 && tv < f.from() - 1;
                return afterTv ? Verdict.TELEVISION : Verdict.OTHER;
            }
        }
        int evidence = evidence(folded, words, tv);
        int part = first(found, Kind.PART);
        if (part >= 0 && isThePartItself(found, words, part, tv, evidence)) {
            return Verdict.OTHER;
        }
        return tv >= 0 || has(found, Kind.WEAK) || SIZE.matcher(folded).find() ? Verdict.TELEVISION : Verdict.UNKNOWN;
    }

    /** Whether a text names goods that can be no part of a set's own fault: a toaster, not a loudspeaker. */
    public boolean namesOtherGoods(String text) {
        return others.get(text);
    }

    private boolean holdsOtherGoods(String text) {
        List<Phrases.Found<Kind>> found = phrases.find(Folded.wordsOf(start(text)));
        return has(found, Kind.OTHER) && !has(found, Kind.TV);
    }

    /** Whether a word is one that descriptions of sets are filled with, and so neither maker nor model. */
    public boolean isSetWord(String word) {
        List<String> words = Folded.wordsOf(word);
        if (words.isEmpty()) {
            return false;
        }
        int covered = 0;
        for (Phrases.Found<Kind> f : phrases.find(words)) {
            covered += f.meaning() == Kind.TV || f.meaning() == Kind.WEAK ? f.to() - f.from() : 0;
        }
        return covered == words.size();
    }

    private static boolean isThePartItself(
            List<Phrases.Found<Kind>> found, List<String> words, int part, int tv, int evidence) {
        if (part > 0 && WITH.contains(words.get(part - 1))) {
            return false;
        }
        int end = part + 1;
        for (Phrases.Found<Kind> f : found) {
            if (f.from() == part) {
                end = f.to();
            }
        }
        boolean leads = evidence < 0 || part < evidence;
        boolean follows = tv >= 0 && tv == part - 1 && evidence >= tv;
        boolean isFor = end < words.size() && FOR.contains(words.get(end));
        boolean ends = tv < 0 && end == words.size() && evidence >= 0 && part <= 3;
        return leads || follows || isFor || ends;
    }

    /** The first word that points to a whole set: its size, its model, or the word television. */
    private static int evidence(String folded, List<String> words, int tv) {
        int first = tv;
        for (int i = 0; i < words.size(); i++) {
            boolean telling = MODEL.matcher(words.get(i)).matches()
                    || isSize(words.get(i)) && SIZE.matcher(folded).find();
            if (telling && (first < 0 || i < first)) {
                first = i;
            }
        }
        return first;
    }

    private static boolean isSize(String word) {
        return word.length() == 2 && Character.isDigit(word.charAt(0)) && Character.isDigit(word.charAt(1));
    }

    private static boolean has(List<Phrases.Found<Kind>> found, Kind kind) {
        return first(found, kind) >= 0;
    }

    private static int first(List<Phrases.Found<Kind>> found, Kind kind) {
        for (Phrases.Found<Kind> f : found) {
            if (f.meaning() == kind) {
                return f.from();
            }
        }
        return -1;
    }
}
