package org.salvedge.manifest.grid;

/** Numbers as files store them: digits, a point, an exponent; nothing else that Java would take. */
final class Numbers {
    private static final int LONGEST = 400;
    private static final int SHORT = 15;

    private Numbers() {}

    /** Adds the number, or a damaged cell where the text is none. */
    static void parse(CharSequence text, int column, int style, SheetBuilder sheet) {
        double value = parse(text);
        if (Double.isNaN(value)) {
            sheet.damaged(column, text.toString().strip(), "is stored as a number but is none");
        } else {
            sheet.number(column, value, style);
        }
    }

    /** The number, NaN where the text is none; may be infinite. */
    static double parse(CharSequence text) {
        int n = text.length();
        if (n == 0 || n > LONGEST) {
            return Double.NaN;
        }
        boolean plain = n <= SHORT;
        long whole = 0;
        for (int i = 0; i < n; i++) {
            char c = text.charAt(i);
            if (c >= '0' && c <= '9') {
                whole = whole * 10 + (c - '0');
            } else if (c == '.' || c == '-' || c == '+' || c == 'e' || c == 'E' || c == ' ' || c == '\n') {
                plain = false;
            } else {
                return Double.NaN;
            }
        }
        if (plain) {
            return whole;
        }
        try {
            return Double.parseDouble(text.toString());
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }
}
