package org.salvedge.report;

import java.util.ArrayList;
import java.util.List;

/** Text broken between words to the width of a screen. */
final class Paragraph {
    private Paragraph() {}

    /** Every line begins with the indent, those after the first with two spaces more. */
    static List<String> lines(String indent, String text, int width) {
        return lines(indent + text, width, indent.length() + 2);
    }

    /** @param hang spaces before every line but the first */
    static List<String> lines(String text, int width, int hang) {
        List<String> lines = new ArrayList<>();
        String rest = text;
        while (DisplayWidth.of(rest) > width) {
            int space = rest.lastIndexOf(' ', Math.min(width, rest.length() - 1));
            while (space > hang && groups(rest, space)) {
                space = rest.lastIndexOf(' ', space - 1);
            }
            if (space <= hang) {
                break;
            }
            lines.add(rest.substring(0, space).stripTrailing());
            rest = " ".repeat(hang) + rest.substring(space + 1).stripLeading();
        }
        lines.add(rest);
        return lines;
    }

    /** Whether the space stands between the thousands of a number. */
    private static boolean groups(String text, int space) {
        return space + 1 < text.length()
                && Character.isDigit(text.charAt(space - 1))
                && Character.isDigit(text.charAt(space + 1));
    }
}
