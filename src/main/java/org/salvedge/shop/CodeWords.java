package org.salvedge.shop;

import java.util.Collections;
import java.util.LinkedHashMap;
import java.util.Map;
import java.util.regex.Pattern;

/** The form of codes. Apart from {@link Codes}, which needs the code types, which need this. */
final class CodeWords {
    private static final Pattern WORD = Pattern.compile("[a-z][a-z0-9]*(_[a-z0-9]+)*");
    private static final int LONGEST = 40;

    private CodeWords() {}

    static void require(String code) {
        if (!WORD.matcher(code).matches() || code.length() > LONGEST) {
            throw new IllegalArgumentException("\"" + code
                    + "\" is not a code; use lower-case words joined by _, at most " + LONGEST + " characters");
        }
    }

    @SafeVarargs
    static <K> Map<K, String> ordered(Map.Entry<K, String>... entries) {
        Map<K, String> map = new LinkedHashMap<>();
        for (Map.Entry<K, String> e : entries) {
            map.put(e.getKey(), e.getValue());
        }
        return Collections.unmodifiableMap(map);
    }
}
