package org.salvedge.manifest.grid;

/** Text as it may leave the grid: no control characters but the line feed, no outer spaces, no endless length. */
final class CellText {
    private static final char ESCAPE = '\u001b';
    private static final int LONGEST_SEQUENCE = 24;

    private CellText() {}

    static String clean(String text, int longest) {
        int n = text.length();
        boolean simple = n <= longest;
        for (int i = 0; simple && i < n; i++) {
            char c = text.charAt(i);
            simple = c > ' ' && c < 0x7f || c == ' ' && i > 0 && i < n - 1 || c > 0xbf && c < 0x2000;
        }
        return simple ? text : cleaned(text, longest);
    }

    /** A text of XLSX with its escapes undone: {@code _x000D_} is a carriage return (ECMA-376 Part 1, 22.9.2.19, ST_Xstring). */
    static String unescaped(CharSequence escaped) {
        String text = escaped.toString();
        int at = text.indexOf("_x");
        if (at < 0) {
            return text;
        }
        StringBuilder out = new StringBuilder(text.length());
        int from = 0;
        while (at >= 0) {
            int code = at + 7 <= text.length() && text.charAt(at + 6) == '_' ? hex(text, at + 2) : -1;
            if (code < 0) {
                at = text.indexOf("_x", at + 1);
            } else {
                out.append(text, from, at).append((char) code);
                from = at + 7;
                at = text.indexOf("_x", from);
            }
        }
        return out.append(text, from, text.length()).toString();
    }

    /** Four hexadecimal digits, or -1. */
    private static int hex(String text, int at) {
        int code = 0;
        for (int i = at; i < at + 4; i++) {
            int digit = text.charAt(i) < 0x80 ? Character.digit(text.charAt(i), 16) : -1;
            if (digit < 0) {
                return -1;
            }
            code = code * 16 + digit;
        }
        return code;
    }

    private static String cleaned(String text, int longest) {
        StringBuilder out = new StringBuilder(Math.min(text.length(), longest));
        for (int i = 0; i < text.length() && out.length() < longest; i++) {
            char c = text.charAt(i);
            if (c == ESCAPE) {
                i = endOfSequence(text, i);
            } else if (c == '\r') {
                boolean pair = i + 1 < text.length() && text.charAt(i + 1) == '\n';
                if (!pair) {
                    out.append('\n');
                }
            } else if (c == '\n') {
                out.append('\n');
            } else if (Character.isISOControl(c) || Character.isSpaceChar(c) || c == '\uFFFE' || c == '\uFFFF') {
                out.append(' ');
            } else if (!isInvisible(c)) {
                out.append(c);
            }
        }
        int length = out.length();
        if (length > 0 && Character.isHighSurrogate(out.charAt(length - 1))) {
            out.setLength(length - 1);
        }
        return out.toString().strip();
    }

    /** The last place of a terminal's control sequence, ESC [ ... letter, or of the bare ESC. */
    private static int endOfSequence(String text, int escape) {
        int i = escape + 1;
        if (i >= text.length() || text.charAt(i) != '[') {
            return escape;
        }
        i++;
        while (i < text.length() && i < escape + LONGEST_SEQUENCE && text.charAt(i) >= ' ' && text.charAt(i) < '@') {
            i++;
        }
        return i < text.length() && text.charAt(i) >= '@' && text.charAt(i) <= '~' ? i : escape;
    }

    /** Zero-width marks, byte order marks, and the marks that turn the direction of writing. */
    private static boolean isInvisible(char c) {
        return c == '\u00AD'
                || c >= '\u200B' && c <= '\u200F'
                || c >= '\u202A' && c <= '\u202E'
                || c >= '\u2060' && c <= '\u206F'
                || c == '\uFEFF';
    }
}
