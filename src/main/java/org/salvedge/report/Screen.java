package org.salvedge.report;

/**
 * What the terminal can show.
 *
 * @param width columns; tables keep within it
 * @param unicode false: plain ASCII only
 * @param colour whether headings may be set off by ANSI codes; never carries a meaning
 */
public record Screen(int width, boolean unicode, boolean colour) {
    /** The widest table printed, even where the terminal is wider. */
    public static final int WIDEST = 100;

    private static final int NARROWEST = 40;

    public Screen {
        width = Math.max(NARROWEST, Math.min(WIDEST, width));
    }

    /** For files, pipes and tests. */
    public static Screen plain() {
        return new Screen(WIDEST, true, false);
    }

    /** Plain ASCII for terminals that ask for it. */
    public static Screen ascii() {
        return new Screen(WIDEST, false, false);
    }
}
