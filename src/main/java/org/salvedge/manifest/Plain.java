package org.salvedge.manifest;

import java.text.Normalizer;
import java.util.Locale;
import java.util.regex.Pattern;

/** Text made comparable: lower case, no accents, words of letters and digits with one space between. */
final class Plain {
    private static final Pattern MARKS = Pattern.compile("\\p{M}+");
    private static final Pattern OTHERS = Pattern.compile("[^a-z0-9]+");

    private Plain() {}

    static String of(String text) {
        String s = text.toLowerCase(Locale.ROOT)
                .replace("ß", "ss")
                .replace("œ", "oe")
                .replace("æ", "ae");
        s = MARKS.matcher(Normalizer.normalize(s, Normalizer.Form.NFKD)).replaceAll("");
        return OTHERS.matcher(s).replaceAll(" ").strip();
    }

    /** Keeps commas, full stops and the like as one mark each, for the reading of symptoms. */
    static String clauses(String text) {
        String s = text.toLowerCase(Locale.ROOT)
                .replace("ß", "ss")
                .replace("œ", "oe")
                .replace("æ", "ae");
        s = MARKS.matcher(Normalizer.normalize(s, Normalizer.Form.NFKD)).replaceAll("");
        s = s.replaceAll("['’`´]", " ")
                .replaceAll("[,;:/|\\n]+|\\s[-–—]+\\s|[–—]|(?<=[a-z]{6})\\.\\s+(?=[a-z]{2,}\\s)", " , ");
        return s.replaceAll("[^a-z0-9,]+", " ").strip();
    }
}
