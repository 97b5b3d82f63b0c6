package org.salvedge.shop;

import java.util.Comparator;

/** Rules for text that is kept: labels without control characters, and the order that does not depend on a locale. */
public final class Text {
    /** Order by Unicode code points (not by UTF-16 units), as the history package sorts its rows. */
    public static final Comparator<String> CODE_POINTS = Text::compareCodePoints;

    private static final int LONGEST_LABEL = 100;

    private Text() {}

    static void requireLabel(String value) {
        if (value.isEmpty() || value.length() > LONGEST_LABEL || !value.equals(value.strip())) {
            throw new IllegalArgumentException("\"" + value + "\" is not a label; use 1 to " + LONGEST_LABEL
                    + " characters, no spaces at the ends");
        }
        for (int i = 0; i < value.length(); i++) {
            if (Character.isISOControl(value.charAt(i))) {
                throw new IllegalArgumentException("a label must not hold control characters");
            }
        }
    }

    /** Whether {@link #isCommand} is so of any character. */
    public static boolean holdsCommand(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if ((c < 0x20 || c > 0x7e) && isCommand(text.codePointAt(i))) {
                return true;
            }
            i += Character.isHighSurrogate(c)
                    ? 1
                    : 0; // its other half was looked at with it, or it was half a character
        }
        return false;
    }

    /** Whether a terminal may obey the character, or it changes how its neighbours are read, as marks of direction do. */
    public static boolean isCommand(int codePoint) {
        return switch (Character.getType(codePoint)) {
            case Character.CONTROL, Character.LINE_SEPARATOR, Character.PARAGRAPH_SEPARATOR, Character.SURROGATE ->
                true;
            case Character.FORMAT ->
                codePoint != 0x00ad && codePoint != 0x200c && codePoint != 0x200d; // soft hyphen and joiners do no harm
            default -> false;
        };
    }

    private static int compareCodePoints(String a, String b) {
        int n = Math.min(a.length(), b.length());
        for (int i = 0; i < n; i++) {
            char x = a.charAt(i);
            char y = b.charAt(i);
            if (x != y) {
                // A surrogate stands for a code point above every other char.
                return Character.isSurrogate(x) == Character.isSurrogate(y) ? x - y : Character.isSurrogate(x) ? 1 : -1;
            }
        }
        return a.length() - b.length();
    }
}
