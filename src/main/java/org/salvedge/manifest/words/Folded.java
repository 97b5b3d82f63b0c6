package org.salvedge.manifest.words;

import java.text.Normalizer;
import java.util.ArrayList;
import java.util.List;

/** Text brought down to what matters for comparing words: lower case, no accents, words of letters or digits. */
public final class Folded {
    private Folded() {}

    /** Lower case without accents; ligatures and full-width signs taken apart; apostrophes straight. */
    public static String fold(String text) {
        boolean ascii = true;
        boolean lower = true;
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            ascii &= c < 0x80;
            lower &= c < 'A' || c > 'Z';
        }
        if (ascii) {
            return lower ? text : lowerAscii(text);
        }
        String apart = Normalizer.normalize(text.replace('\u00b4', '\''), Normalizer.Form.NFKD); // it would be a space
        StringBuilder out = new StringBuilder(apart.length());
        for (int i = 0; i < apart.length(); i++) {
            char c = apart.charAt(i);
            if (Character.getType(c) == Character.NON_SPACING_MARK) {
                continue;
            }
            switch (c) {
                case 'ß' -> out.append("ss");
                case 'ø', 'Ø' -> out.append('o');
                case 'æ', 'Æ' -> out.append("ae");
                case 'œ', 'Œ' -> out.append("oe");
                case '’', '‘', '´', '`', '′' -> out.append('\'');
                case '“', '”', '„', '″', '«', '»' -> out.append('"');
                case '–', '—', '−', '‐', '‑' -> out.append('-');
                default -> out.append(Character.toLowerCase(c));
            }
        }
        return out.toString();
    }

    private static String lowerAscii(String text) {
        char[] chars = text.toCharArray();
        for (int i = 0; i < chars.length; i++) {
            if (chars[i] >= 'A' && chars[i] <= 'Z') {
                chars[i] = (char) (chars[i] + 'a' - 'A');
            }
        }
        return new String(chars);
    }

    /** The words of a folded text: runs of letters and digits; {@code #} is a word of its own. */
    public static List<String> words(String folded) {
        List<String> words = new ArrayList<>();
        int from = -1;
        for (int i = 0; i <= folded.length(); i++) {
            char c = i < folded.length() ? folded.charAt(i) : ' ';
            if (Character.isLetterOrDigit(c)) {
                from = from < 0 ? i : from;
            } else {
                if (from >= 0) {
                    words.add(folded.substring(from, i));
                    from = -1;
                }
                if (c == '#') {
                    words.add("#");
                }
            }
        }
        return words;
    }

    /** The words of any text. */
    public static List<String> wordsOf(String text) {
        return words(fold(text));
    }
}
