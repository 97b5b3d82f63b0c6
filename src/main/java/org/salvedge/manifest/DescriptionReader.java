package org.salvedge.manifest;

import java.util.ArrayList;
import java.util.List;
import java.util.Set;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.words.ClaimReader;
import org.salvedge.manifest.words.Folded;
import org.salvedge.manifest.words.Goods;
import org.salvedge.manifest.words.Kept;

/**
 * Takes a description apart: the model is the first word that holds a digit and is no size, the maker the words before it, without
 * those that every description is filled with.
 */
final class DescriptionReader {
    private static final Pattern TECHNICAL =
            Pattern.compile("\\d+k|\\d+k[-/]?(uhd|tv|led)|\\d{3,4}[pi]|\\d{2,3} ?hz|hdr\\d*\\+?|hdmi\\d*"
                    + "|usb\\d*([.]\\d)?|dvb[-]?[a-z]*\\d*|wifi\\d?|\\d+(bit|w|kg|cm|mm|xhdmi|xusb)|\\d+[x×]\\d+|\\d+[.]\\d|bt\\d([.]\\d)?|hd\\d?"
                    + "|3d|mp4|h26[45]|ci\\+?|ps\\d|\\d+%|\\d+x|x\\d+|\\d+/\\d+|a\\++|uhd4k|4k\\w*uhd|full-?hd|\\d+(st|nd|rd|th)|\\d+\"|\\d+''|#\\d+"
                    + "|[#(]?\\d{1,2}[.)]|\\d+-?in(ch)?|\\d+(pcs?|stk|uds?)|g\\d{2}|v\\d");
    private static final Pattern YEAR = Pattern.compile("(19|20)\\d\\d");
    private static final Pattern SMALL_NUMBER = Pattern.compile("\\d{1,3}([.,]\\d)?");
    private static final Pattern EDGES =
            Pattern.compile("^[\\s,;:()\\[\\]\"'*.!?|•·<>=–—-]+|[\\s,;:()\\[\\]\"'*.!?|•·<>=–—-]+$");
    private static final Pattern START = Pattern.compile("^[\\s,;:)\\]\"'*.!|•·<>=–—-]+");
    private static final Set<String> LABELS = Set.of(
            "model",
            "modell",
            "modele",
            "modelo",
            "mod",
            "typ",
            "type",
            "tipo",
            "no",
            "nr",
            "number",
            "num",
            "art",
            "artikel",
            "brand",
            "marke",
            "marque",
            "marca",
            "make",
            "maker",
            "hersteller",
            "fabr",
            "ref",
            "item",
            "code",
            "set",
            "used",
            "new",
            "neu",
            "neuf",
            "nuevo",
            "the",
            "a",
            "ein",
            "eine",
            "un",
            "une",
            "one",
            "lot",
            "pallet",
            "refurbished",
            "gebraucht",
            "occasion",
            "usado",
            "pcs",
            "stk",
            "stuck",
            "pc",
            "x",
            "with",
            "mit",
            "and",
            "und",
            "de",
            "of",
            "von",
            "zoll",
            "inch",
            "inches",
            "pouces",
            "pulgadas",
            "cm",
            "diagonal",
            "diagonale",
            "series",
            "serie",
            "gen",
            "class",
            "colour",
            "black",
            "schwarz",
            "negro",
            "noir",
            "silver",
            "silber",
            "grey",
            "white",
            "salvage",
            "defective",
            "qty");
    private static final int MOST_MAKER_WORDS = 4;

    /** What stands further behind names no set. */
    private static final int LONGEST = 1_000;

    private final Goods goods;
    private final ClaimReader claims;
    private final SizeReader sizes;
    private final Kept<Description> kept = new Kept<>(this::readAfresh);

    DescriptionReader(Goods goods, ClaimReader claims, SizeReader sizes) {
        this.goods = goods;
        this.claims = claims;
        this.sizes = sizes;
    }

    /** @param from where the word begins in the text */
    private record Word(String text, int from, int to, boolean endsPart) {
        String folded() {
            return Folded.fold(text);
        }
    }

    Description read(String text) {
        return kept.get(text);
    }

    private Description readAfresh(String whole) {
        String text = whole.length() > LONGEST ? whole.substring(0, LONGEST) : whole;
        SizeReader.@Nullable Found size = sizes.findIn(text);
        boolean sameLength = SizeReader.prepare(text).length() == text.length();
        List<Word> words = words(text, sameLength ? size : null);
        int model = findModel(words);
        List<String> makerWords = new ArrayList<>();
        int makerEnd = 0;
        if (model >= 0) {
            int first = makerBefore(words, model, makerWords);
            if (makerWords.isEmpty()) {
                makerEnd = makerAfter(words, model, makerWords);
            }
            makerEnd = Math.max(makerEnd, first < 0 ? 0 : words.get(model).to);
        } else {
            makerEnd = makerAlone(words, makerWords);
        }
        int end = Math.max(makerEnd, model >= 0 ? words.get(model).to : 0);
        if (size != null && sameLength) {
            end = Math.max(end, size.to());
        }
        String maker = makerWords.isEmpty() ? null : String.join(" ", makerWords);
        String modelText = model >= 0 ? words.get(model).text : null;
        return new Description(maker, modelText, size == null ? null : size.inches(), rest(text, words, end));
    }

    /** The model alone, of a text that is a model's cell but holds more than one word. */
    @Nullable
    String modelIn(String whole) {
        String text = whole.length() > LONGEST ? whole.substring(0, LONGEST) : whole;
        SizeReader.@Nullable Found size = sizes.findIn(text);
        boolean sameLength = SizeReader.prepare(text).length() == text.length();
        List<Word> words = words(text, sameLength ? size : null);
        int model = findModel(words);
        return model < 0 ? null : words.get(model).text;
    }

    private static List<Word> words(String text, SizeReader.@Nullable Found size) {
        String source = text;
        if (size != null) {
            source = text.substring(0, size.from())
                    + "\u0001".repeat(size.to() - size.from())
                    + text.substring(size.to());
        }
        List<Word> words = new ArrayList<>();
        int from = -1;
        for (int i = 0; i <= source.length(); i++) {
            char c = i < source.length() ? source.charAt(i) : ' ';
            boolean space = Character.isWhitespace(c) || c == '\u0001' || c == '\u00a0';
            if (!space && from < 0) {
                from = i;
            } else if (space && from >= 0) {
                addWord(source, from, i, words);
                from = -1;
            }
        }
        return words;
    }

    private static void addWord(String source, int from, int to, List<Word> into) {
        String raw = source.substring(from, to);
        String word = EDGES.matcher(raw).replaceAll("");
        char last = raw.charAt(raw.length() - 1);
        boolean endsPart = ",;:|".indexOf(last) >= 0 || to < source.length() && source.charAt(to) == '\n';
        if (raw.equals("&") || raw.equals("+")) {
            into.add(new Word(raw, from, to, false));
        } else if (!word.isEmpty()) {
            into.add(new Word(word, from, to, endsPart));
        } else if (!into.isEmpty()) {
            Word before = into.get(into.size() - 1);
            into.set(into.size() - 1, new Word(before.text, before.from, before.to, true));
        }
    }

    /** The first word with a digit; bare numbers that may be a size, a year or an item's number only where nothing better is. */
    private static int findModel(List<Word> words) {
        int last = -1;
        for (int i = 0; i < words.size(); i++) {
            String folded = words.get(i).folded();
            if (!holdsDigit(folded) || TECHNICAL.matcher(folded).matches() || DateText.isDate(folded)) {
                continue;
            }
            boolean bare = folded.chars().noneMatch(Character::isLetter) && folded.indexOf('-') <= 0;
            boolean unlikely = bare
                    && (SMALL_NUMBER.matcher(folded).matches()
                            || YEAR.matcher(folded).matches()
                            || i == 0);
            if (!unlikely) {
                return i;
            }
            last = last < 0 && folded.length() > 2 ? i : last;
        }
        return last;
    }

    private static boolean holdsDigit(String text) {
        return text.chars().anyMatch(c -> c >= '0' && c <= '9');
    }

    /** Collects the maker's words before the model; returns the first of them, or -1. */
    private int makerBefore(List<Word> words, int model, List<String> into) {
        int i = model - 1;
        while (i >= 0 && isFiller(words.get(i))) {
            i--;
        }
        int last = i;
        while (i >= 0 && into.size() < MOST_MAKER_WORDS) {
            Word word = words.get(i);
            boolean cut = i < last && word.endsPart;
            boolean joins = word.text.equals("&") && !into.isEmpty() && i > 0;
            if (joins) {
                into.add(0, word.text);
                i--;
                continue;
            }
            if (cut || isFiller(word) || holdsDigit(word.text) && !word.text.matches("\\p{Lu}\\p{L}+\\d")) {
                break;
            }
            into.add(0, word.text);
            i--;
        }
        return into.isEmpty() ? -1 : i + 1;
    }

    /** Some sellers put the maker behind the model. Returns where it ends. */
    private int makerAfter(List<Word> words, int model, List<String> into) {
        int i = model + 1;
        if (words.get(model).endsPart) {
            return 0;
        }
        while (i < words.size() && isFiller(words.get(i))) {
            i++;
        }
        int end = 0;
        while (i < words.size() && into.size() < 2) {
            Word word = words.get(i);
            if (isFiller(word) || !Character.isUpperCase(word.text.codePointAt(0)) || holdsDigit(word.text)) {
                break;
            }
            into.add(word.text);
            end = word.to;
            i++;
            if (word.endsPart) {
                break;
            }
        }
        return end;
    }

    /** Without a model: the first words that could be a maker's name. Returns where they end. */
    private int makerAlone(List<Word> words, List<String> into) {
        int end = 0;
        for (Word word : words) {
            boolean name = !isFiller(word) && !holdsDigit(word.text) && Character.isUpperCase(word.text.codePointAt(0));
            if (name) {
                into.add(word.text);
                end = word.to;
            } else if (!into.isEmpty()) {
                break;
            }
            if (!into.isEmpty() && (word.endsPart || into.size() == 3)) {
                break;
            }
        }
        return end;
    }

    private boolean isFiller(Word word) {
        String folded = word.folded();
        boolean capital = Character.isUpperCase(word.text.codePointAt(0));
        return LABELS.contains(folded)
                || TECHNICAL.matcher(folded).matches()
                || goods.isSetWord(word.text)
                || folded.chars().noneMatch(Character::isLetter)
                || claims.isStateWord(folded)
                || !capital && claims.knows(folded);
    }

    private String rest(String text, List<Word> words, int end) {
        int from = end;
        for (Word word : words) {
            if (word.from >= from && goods.isSetWord(word.text) && !claims.means(word.text)) {
                from = word.to;
            } else if (word.from >= from) {
                break;
            }
        }
        return from >= text.length()
                ? ""
                : START.matcher(text.substring(from)).replaceFirst("").strip();
    }
}
