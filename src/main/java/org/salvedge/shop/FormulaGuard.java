package org.salvedge.shop;

/**
 * Text in CSV that a spreadsheet program would take for a formula. Whoever opens the file may have it split at commas, at semicolons
 * or at tabs, whatever we wrote and however we put it in quotes, so a formula may begin at the start of the text and after each
 * semicolon, tab or line break in it; there an apostrophe is put before it. Where the text has such an apostrophe of its own it
 * gets another, so that every text comes back as it was.
 */
public final class FormulaGuard {
    private static final char MARK = '\'';

    private FormulaGuard() {}

    /** As it is written. */
    public static String shown(String text) {
        if (isPlain(text)) {
            return text;
        }
        StringBuilder out = new StringBuilder(text.length() + 4);
        boolean[] live = live(text);
        for (int i = 0; i < text.length(); i++) {
            if (isEdge(text, i) && live[i]) {
                out.append(MARK);
            }
            out.append(text.charAt(i));
        }
        return out.toString();
    }

    /** What a cell means that was written so. */
    public static String meant(String cell) {
        if (isPlain(cell)) {
            return cell;
        }
        StringBuilder out = new StringBuilder(cell.length());
        boolean[] live = live(cell);
        for (int i = 0; i < cell.length(); i++) {
            if (!(isEdge(cell, i) && cell.charAt(i) == MARK && live[i])) {
                out.append(cell.charAt(i));
            }
        }
        return out.toString();
    }

    /** Whether a cell of that text alone would be taken for a formula. */
    public static boolean isFormula(String text) {
        return !text.isEmpty() && live(text)[0];
    }

    /** Most texts: nothing in them can begin a formula. */
    private static boolean isPlain(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            if (isEdge(text, i) && (isSign(c) || isSkipped(c))) {
                return false;
            }
        }
        return true;
    }

    private static boolean isEdge(String text, int i) {
        return i == 0 || isSplit(text.charAt(i - 1));
    }

    private static boolean isSplit(char c) {
        return c == ';' || c == '\t' || c == '\r' || c == '\n';
    }

    /** For each place, whether a cell that began there would be a formula. */
    private static boolean[] live(String text) {
        boolean[] live = new boolean[text.length()];
        boolean after = false;
        for (int i = live.length - 1; i >= 0; i--) {
            char c = text.charAt(i);
            after = isSign(c) || after && isSkipped(c);
            live[i] = after;
        }
        // A cell that begins with a tab or a return is one to be careful with whatever follows.
        for (int i = 0; i < live.length && !live[0] && isSkipped(text.charAt(i)); i++) {
            live[0] = text.charAt(i) == '\t' || text.charAt(i) == '\r';
        }
        return live;
    }

    private static boolean isSign(char c) {
        return switch (c) {
            case '=', '+', '-', '@', '\uff1d', '\uff0b', '\uff0d', '\uff20' -> true;
            default -> false;
        };
    }

    /** What a spreadsheet program may drop before it looks for a formula: our mark, quotes, space, what is not to be seen. */
    private static boolean isSkipped(char c) {
        return c == MARK
                || c == '"'
                || Character.isSpaceChar(c)
                || Character.isISOControl(c)
                || Character.getType(c) == Character.FORMAT;
    }
}
