package org.salvedge.report;

import java.text.Normalizer;
import org.salvedge.shop.Text;

/** Text as it may go to a terminal or a file: nothing that a terminal would obey or that would hide what stands there. */
public final class Visible {
    private Visible() {}

    /** The text with each control character, line break, direction mark and lone surrogate shown as U+FFFD; tabs as spaces. */
    public static String text(String text) {
        return clean(text, true);
    }

    /** As {@link #text}, for a screen that may take ASCII only: accents are dropped, what is left becomes a question mark. */
    public static String text(String text, Screen screen) {
        return clean(text, screen.unicode());
    }

    private static String clean(String text, boolean unicode) {
        if (harmless(text)) {
            return text;
        }
        String from = unicode ? text : Normalizer.normalize(text, Normalizer.Form.NFKD);
        StringBuilder out = new StringBuilder(from.length());
        from.codePoints().forEach(c -> {
            if (c == '\t') {
                out.append(' ');
            } else if (Text.isCommand(c)) {
                out.append(unicode ? "\uFFFD" : "?");
            } else if (unicode || c < 0x7f) {
                out.appendCodePoint(c);
            } else if (Character.getType(c) != Character.NON_SPACING_MARK) {
                out.append(ascii(c));
            }
        });
        return out.toString();
    }

    private static String ascii(int c) {
        return switch (c) {
            case '\u2013', '\u2014', '\u2212', '\u2010', '\u2011' -> "-";
            case '\u00b1' -> "+-";
            case '\u00d7' -> "x";
            case '\u00df' -> "ss";
            case '\u2018', '\u2019' -> "'";
            case '\u201c', '\u201d', '\u2033' -> "\"";
            default -> "?";
        };
    }

    private static boolean harmless(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (c < 0x20 || c > 0x7e) {
                return false;
            }
        }
        return true;
    }
}
