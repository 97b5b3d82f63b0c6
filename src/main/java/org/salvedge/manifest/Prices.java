package org.salvedge.manifest;

import java.math.BigDecimal;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;

/** Prices as sellers write them, in the decimal convention of their column. */
final class Prices {
    /** How a column writes its decimals. */
    enum Convention {
        POINT,
        COMMA,
        UNDECIDED
    }

    private static final Pattern FRAME = Pattern.compile(
            "(?i)^(?:eur|euro|euros|usd|gbp|chf|us\\$|[€$£¥]|fr\\.?|approx\\.?|ca\\.?|\\s)*(-?[0-9][0-9.,'’\\s]*)(?:,-|\\.-|-)?(?:eur|euro|euros|usd|gbp|chf|each|ea|pro|stk|st|[€$£¥]|\\s)*$");
    private static final Pattern GROUPED_POINT = Pattern.compile("-?[0-9]{1,3}(?:\\.[0-9]{3})+");
    private static final Pattern GROUPED_COMMA = Pattern.compile("-?[0-9]{1,3}(?:,[0-9]{3})+");
    private static final BigDecimal ABSURD = new BigDecimal("1000000");

    private Prices() {}

    static boolean isNone(String text) {
        String t = text.strip().toLowerCase(java.util.Locale.ROOT);
        return t.isEmpty() || t.matches("[-–—.]+|n/?a|n\\.a\\.|none|k\\.?a\\.?|tbc|tba|nil|s/?p|nc|null|\\?+");
    }

    /** What one text says of its column's convention. */
    static Convention hint(String text) {
        Matcher m = FRAME.matcher(text.strip());
        if (!m.matches()) {
            return Convention.UNDECIDED;
        }
        String n = m.group(1).replaceAll("[\\s'’]", "");
        int point = n.lastIndexOf('.');
        int comma = n.lastIndexOf(',');
        if (point >= 0 && comma >= 0) {
            return point > comma ? Convention.POINT : Convention.COMMA;
        }
        if (point >= 0) {
            return n.indexOf('.') != point
                    ? Convention.COMMA
                    : n.length() - point - 1 == 3 ? Convention.UNDECIDED : Convention.POINT;
        }
        if (comma >= 0) {
            return n.indexOf(',') != comma
                    ? Convention.POINT
                    : n.length() - comma - 1 == 3 ? Convention.UNDECIDED : Convention.COMMA;
        }
        return Convention.UNDECIDED;
    }

    /** The amount; null if it cannot be read or is absurd. */
    static @Nullable BigDecimal read(String text, Convention convention) {
        Matcher m = FRAME.matcher(text.strip());
        if (!m.matches()) {
            return null;
        }
        String n = m.group(1).replaceAll("[\\s'’]", "");
        if (convention == Convention.COMMA) {
            n = n.replace(".", "").replace(',', '.');
        } else if (convention == Convention.POINT) {
            n = n.replace(",", "");
        } else {
            n = GROUPED_POINT.matcher(n).matches()
                    ? n
                    : GROUPED_COMMA.matcher(n).matches() ? n.replace(",", "") : n.replace(',', '.');
            n = GROUPED_POINT.matcher(n).matches() && n.indexOf('.') != n.lastIndexOf('.') ? n.replace(".", "") : n;
        }
        try {
            BigDecimal amount = new BigDecimal(n.endsWith(".") ? n.substring(0, n.length() - 1) : n);
            return amount.signum() < 0 || amount.compareTo(ABSURD) > 0 ? null : amount;
        } catch (NumberFormatException e) {
            return null;
        }
    }
}
