package org.salvedge.manifest;

import java.util.regex.Matcher;
import java.util.regex.Pattern;

/** Quantities: 3, x3, 2 pcs, 1 Stk. */
final class Quantities {
    static final int LARGEST = 1000;
    private static final Pattern FORM =
            Pattern.compile("(?iu)(?:x|qty:?|×)?\\s*([0-9]{1,9})(?:[.,]0+)?\\s*(?:x|×|[\\p{L}]{1,10}\\.?)?");

    private Quantities() {}

    /** The number; -1 where it cannot be read. */
    static int read(String text) {
        Matcher m = FORM.matcher(text.strip());
        return m.matches() ? Integer.parseInt(m.group(1)) : -1;
    }
}
