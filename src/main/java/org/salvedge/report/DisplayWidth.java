package org.salvedge.report;

/** How many cells of a terminal a text takes: marks none, East Asian wide characters and emoji two (Unicode TR 11). */
final class DisplayWidth {
    private static final int[][] WIDE = {
        {0x1100, 0x115f},
        {0x2e80, 0xa4cf},
        {0xac00, 0xd7a3},
        {0xf900, 0xfaff},
        {0xfe30, 0xfe6f},
        {0xff00, 0xff60},
        {0xffe0, 0xffe6},
        {0x1f300, 0x1faff},
        {0x20000, 0x3fffd}
    };

    private DisplayWidth() {}

    static int of(String text) {
        int cells = 0;
        for (int i = 0; i < text.length(); i += Character.charCount(text.codePointAt(i))) {
            cells += of(text.codePointAt(i));
        }
        return cells;
    }

    private static int of(int c) {
        if (c < 0x300) {
            return 1;
        }
        int type = Character.getType(c);
        if (type == Character.NON_SPACING_MARK || type == Character.ENCLOSING_MARK || type == Character.FORMAT) {
            return 0;
        }
        for (int[] range : WIDE) {
            if (c >= range[0] && c <= range[1]) {
                return 2;
            }
        }
        return 1;
    }

    /** The beginning of a text that fits, with a sign that something was cut off. */
    static String cut(String text, int cells, String sign) {
        if (of(text) <= cells) {
            return text;
        }
        int room = cells - of(sign);
        StringBuilder out = new StringBuilder();
        for (int i = 0; i < text.length(); ) {
            int c = text.codePointAt(i);
            if (of(c) > room) {
                break;
            }
            room -= of(c);
            out.appendCodePoint(c);
            i += Character.charCount(c);
        }
        return out.append(sign).toString();
    }
}
