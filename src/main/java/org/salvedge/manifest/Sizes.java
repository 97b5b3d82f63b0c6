package org.salvedge.manifest;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Locale;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Quantity;

/** Screen sizes as sellers write them: 55", 55in, 139 cm, 55 Zoll, 55 pouces, 55 pulgadas. */
final class Sizes {
    private static final String NUMBER = "([0-9]{1,4}(?:[.,][0-9]{1,2})?)";
    private static final String INCH =
            "(?:\"|''|”|“|″|´´|in\\b|in\\.|inch(?:es)?\\b|ins\\b|zoll\\b|z\\b|pouces?\\b|po\\b|pulgadas?\\b|pulg\\b\\.?|pul\\b)";
    private static final Pattern WITH_INCH = Pattern.compile("(?<![a-z0-9.,])" + NUMBER + "\\s*-?\\s*" + INCH);
    private static final Pattern WITH_CM = Pattern.compile("(?<![a-z0-9.,])" + NUMBER + "\\s*-?\\s*cm\\b");
    private static final Pattern WITH_MM = Pattern.compile("(?<![a-z0-9.,])" + NUMBER + "\\s*-?\\s*mm\\b");
    private static final Pattern BARE =
            Pattern.compile("^(?:ca\\.?\\s*|approx\\.?\\s*|~\\s*)?" + NUMBER + "\\s*(?:tv|led|lcd|class)?$");
    private static final BigDecimal CM = new BigDecimal("2.54");
    private static final BigDecimal MM = new BigDecimal("25.4");
    private static final Quantity LARGEST = Quantity.of(150);

    private Sizes() {}

    /** The size in a cell of a size column; null if it is none. {@code unit} is that of the heading. */
    static @Nullable Quantity ofCell(String text, Field unit) {
        String t = text.toLowerCase(Locale.ROOT).strip();
        Quantity said = inText(t);
        if (said != null) {
            return said;
        }
        if (WITH_INCH.matcher(t).find() || WITH_CM.matcher(t).find()) {
            return null; // said with its unit, and impossible
        }
        Matcher m = BARE.matcher(t);
        return m.matches() ? inches(m.group(1), unit) : null;
    }

    /** A size with its unit somewhere in a text; null if there is none. */
    static @Nullable Quantity inText(String text) {
        String t = text.toLowerCase(Locale.ROOT);
        Matcher m = WITH_INCH.matcher(t);
        if (m.find()) {
            return inches(m.group(1), Field.INCHES);
        }
        m = WITH_CM.matcher(t);
        if (m.find()) {
            return inches(m.group(1), Field.CENTIMETRES);
        }
        m = WITH_MM.matcher(t);
        return m.find() ? inches(m.group(1), Field.MILLIMETRES) : null;
    }

    /** Where the text says a size with its unit: what to cut out before a model is looked for. */
    static String without(String text) {
        String lower = text.toLowerCase(Locale.ROOT);
        for (Pattern p : new Pattern[] {WITH_INCH, WITH_CM, WITH_MM}) {
            Matcher m = p.matcher(lower);
            if (m.find() && lower.length() == text.length()) {
                return text.substring(0, m.start()) + " " + text.substring(m.end());
            }
        }
        return text;
    }

    private static @Nullable Quantity inches(String number, Field unit) {
        BigDecimal n = new BigDecimal(number.replace(',', '.'));
        BigDecimal inches = switch (unit) {
            case CENTIMETRES -> n.divide(CM, 1, RoundingMode.HALF_UP);
            case MILLIMETRES -> n.divide(MM, 1, RoundingMode.HALF_UP);
            default -> n;
        };
        Quantity q = Quantity.of(inches);
        return q.millionths() > 0 && q.compareTo(LARGEST) <= 0 ? q : null;
    }
}
