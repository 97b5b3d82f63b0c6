package org.salvedge.report;

/**
 * How many lines a text takes in a cell that breaks it between words. Reckoned with the widths that Adobe's font metrics give for
 * Helvetica, which those of Arial and Liberation Sans follow: no font of the machine is asked, so that every machine writes the same file.
 */
final class TextLines {
    /** Thousandths of the letter's height, from the space to the tilde. */
    private static final int[] WIDTHS = {
        278, 278, 355, 556, 556, 889, 667, 191, 333, 333, 389, 584, 278, 333, 278, 278, 556, 556, 556, 556, 556, 556,
                556, 556, 556, 556,
        278, 278, 584, 584, 584, 556, 1015, 667, 667, 722, 722, 667, 611, 778, 722, 278, 500, 667, 556, 833, 722, 778,
                667, 778, 722, 667,
        611, 722, 667, 944, 667, 667, 611, 278, 278, 278, 469, 556, 333, 556, 556, 500, 556, 556, 278, 556, 556, 222,
                222, 500, 222, 833,
        556, 556, 556, 556, 333, 500, 278, 556, 500, 722, 500, 500, 500, 334, 260, 334, 584
    };

    private static final int WIDE = 1000;
    private static final double POINTS_A_PIXEL = 0.75;
    private static final double PIXELS_A_CHARACTER = 7;
    /** Programs round the widths of letters to dots, each in its way. */
    private static final double SLACK = 1.02;

    /** What a column is wider than its characters: five pixels. */
    static final double PADDING = 5 / PIXELS_A_CHARACTER;

    private TextLines() {}

    /** @param characters width of the column, in digits of 10 points */
    static int of(String text, double characters) {
        double room = characters * PIXELS_A_CHARACTER * POINTS_A_PIXEL * WIDE / (Styles.POINTS * SLACK);
        int lines = 1;
        double line = 0;
        for (String word : text.split(" ", -1)) {
            double width = width(word);
            double joined = line == 0 ? width : line + WIDTHS[0] + width;
            if (joined <= room) {
                line = joined;
                continue;
            }
            lines += line == 0 ? 0 : 1;
            lines += (int) Math.max(0, Math.ceil(width / room) - 1);
            line = width % room;
        }
        return lines;
    }

    /** How wide a column must be, in digits of 10 points, to show a text in one line: capitals are wider than digits. */
    static int characters(String text) {
        return (int) Math.ceil(width(text) * Styles.POINTS * SLACK / (PIXELS_A_CHARACTER * POINTS_A_PIXEL * WIDE));
    }

    private static double width(String text) {
        double width = 0;
        for (int i = 0, c; i < text.length(); i += Character.charCount(c)) {
            c = text.codePointAt(i);
            width += c < ' ' + WIDTHS.length && c >= ' ' ? WIDTHS[c - ' '] : c == '\u00a0' ? WIDTHS[0] : WIDE;
        }
        return width;
    }
}
