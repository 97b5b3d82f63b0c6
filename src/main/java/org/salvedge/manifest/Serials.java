package org.salvedge.manifest;

import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import java.util.regex.Pattern;

/** Serial numbers, kept as text; several in one cell are told apart. */
final class Serials {
    private static final Pattern SCIENTIFIC = Pattern.compile("[0-9][.,]?[0-9]*[eE]\\+?[0-9]{1,2}");
    private static final Pattern BETWEEN = Pattern.compile("[,;/\\n|]+|\\s+(?:and|und|et|y|&)\\s+");
    private static final Pattern NONE = Pattern.compile(
            "(?i)n/?a|n\\.a\\.|-+|–|none|no serial|unknown|ohne|keine?|sans|sin|k\\.?a\\.?|\\?+|tbc|missing|s/n|nil|null|0");

    private Serials() {}

    static boolean isNone(String text) {
        return text.isBlank() || NONE.matcher(text.strip()).matches();
    }

    static boolean isDamaged(String serial) {
        return SCIENTIFIC.matcher(serial).matches();
    }

    static List<String> list(String text) {
        List<String> all = new ArrayList<>();
        for (String s : BETWEEN.split(text, -1)) {
            if (!s.isBlank()) {
                all.add(s.strip());
            }
        }
        if (all.size() == 1 && all.get(0).contains(" ")) {
            String[] words = all.get(0).split("\\s+");
            boolean alike = words.length > 1;
            for (String w : words) {
                alike &= w.length() >= 8;
            }
            return alike ? List.of(words) : all;
        }
        return all;
    }

    static String key(String serial) {
        return serial.strip().toLowerCase(Locale.ROOT);
    }
}
