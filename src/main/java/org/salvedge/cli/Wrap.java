package org.salvedge.cli;

import java.util.ArrayList;
import java.util.List;

/** Breaks text into lines at spaces. */
final class Wrap {
    private Wrap() {}

    /** At least one line; words longer than the width stand alone. */
    static List<String> at(int width, String text) {
        List<String> lines = new ArrayList<>();
        String rest = text;
        while (rest.length() > width) {
            int space = rest.lastIndexOf(' ', width);
            if (space <= indent(rest)) {
                space = rest.indexOf(' ', width);
            }
            if (space < 0) {
                break;
            }
            lines.add(rest.substring(0, space).stripTrailing());
            rest = rest.substring(space + 1);
        }
        lines.add(rest);
        return lines;
    }

    /** Where the first word begins: no line is broken before it. */
    private static int indent(String line) {
        return line.length() - line.stripLeading().length();
    }
}
