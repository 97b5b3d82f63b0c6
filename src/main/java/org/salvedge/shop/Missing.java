package org.salvedge.shop;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/**
 * Sets of a manifest's line that were not on the pallet.
 *
 * @param sheet null = not said
 * @param line row of the sheet, from 1
 * @param sets how many; null = not said
 */
public record Missing(
        @Nullable String sheet, int line, @Nullable Integer sets) {
    private static final Pattern ONE =
            Pattern.compile("\\s*(?:(?:'((?:[^']|'')+)'|([^,!']+))!)?(\\d{1,7})(?:[xX\u00d7](\\d{1,5}))?\\s*(?:,|$)");

    /**
     * Reads {@code [SHEET!]LINE[xN],…}; a sheet's name that holds a comma or an exclamation mark stands in single quotes.
     *
     * @throws Refused naming the text that is none of this
     */
    public static List<Missing> parse(String text) {
        List<Missing> all = new ArrayList<>();
        Matcher one = ONE.matcher(text);
        int at = 0;
        while (at < text.length()) {
            if (!one.find(at) || one.start() != at) {
                throw new Refused("--missing: \"" + text.substring(at)
                        + "\" is not a line. Write [SHEET!]LINE[xN], as in 14 or Pallet 2!14x3, several with commas");
            }
            String quoted = one.group(1);
            String sheet = quoted == null ? one.group(2) : quoted.replace("''", "'");
            String sets = one.group(4);
            int line = Integer.parseInt(one.group(3));
            if (line < 1 || sets != null && Integer.parseInt(sets) < 1) {
                throw new Refused("--missing: \"" + one.group().strip() + "\": lines and numbers of sets count from 1");
            }
            all.add(new Missing(
                    sheet == null ? null : sheet.strip(), line, sets == null ? null : Integer.valueOf(sets)));
            at = one.end();
        }
        return all;
    }

    @Override
    public String toString() {
        return (sheet == null ? "" : sheet + "!") + line + (sets == null ? "" : "x" + sets);
    }
}
