package org.salvedge.report;

import java.util.regex.Pattern;

/** Sentences for paper and page, where a number stays on one line with its sign, its thousands and its unit. */
final class Unbroken {
    private static final Pattern GAP =
            Pattern.compile("(?<=[0-9]) (?=[0-9]{3}(?![0-9])|%|[A-Z]{3}(?![A-Za-z])|points?(?![a-z]))");

    /** A hyphen would be left behind at the end of a line. */
    private static final Pattern MINUS = Pattern.compile("(?<![0-9A-Za-z])-(?=[0-9])");

    private Unbroken() {}

    static String text(String sentence) {
        return MINUS.matcher(GAP.matcher(sentence).replaceAll("\u00a0")).replaceAll("\u2212");
    }
}
