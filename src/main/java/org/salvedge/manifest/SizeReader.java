package org.salvedge.manifest;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.EnumMap;
import java.util.List;
import java.util.Map;
import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.words.Folded;
import org.salvedge.manifest.words.Goods;
import org.salvedge.manifest.words.Kept;
import org.salvedge.manifest.words.RowWords;
import org.salvedge.shop.Quantity;

/** Screen diagonals: inches, centimetres, millimetres; numbers, numbers with units, number words. */
final class SizeReader {
    /** What a number without a unit of its own is in. */
    enum Unit {
        INCH,
        CENTIMETRE,
        MILLIMETRE
    }

    /**
     * A size met within a text.
     *
     * @param from where it begins in the folded text
     * @param to where it ends
     */
    record Found(Quantity inches, int from, int to) {}

    private static final BigDecimal CENTIMETRES = new BigDecimal("2.54");
    private static final BigDecimal LARGEST = new BigDecimal("150");
    private static final int LONGEST = 200;
    private static final int LONGEST_TEXT = 1_000;
    private static final BigDecimal SMALLEST_IN_TEXT = BigDecimal.TEN;
    private static final String NUMBER = "(\\d{1,4}(?:[.,]\\d{1,3})?)(\\s?1/2)?";
    private static final Pattern INCHES = Pattern.compile(
            NUMBER
                    + "\\s?-?\\s?(?:\"\"?|''|''|inch(?:es)?\\b|inchs\\b|zoll\\b|pouces?\\b|pulgadas?\\b|pulg\\b|pul\\b|po\\b|ins\\b)");
    private static final Pattern SHORT_IN =
            Pattern.compile(NUMBER + "(?:-?in\\b|\\s-?\\s?in(?:\\.|$|[,;)]|\\s(?=led|lcd|tv|class"
                    + "|smart|4k|uhd|oled|qled|full|screen|diag|-)))");
    /** 55 Z, short for Zoll; in a description it may be the end of a model number. */
    private static final Pattern SHORT_ZOLL = Pattern.compile("^" + NUMBER + "\\s?-?\\s?z\\b");

    private static final Pattern METRIC =
            Pattern.compile(NUMBER + "\\s?-?\\s?(cm|zentimeter|centimetr\\w*|mm|millimet\\w*|milimetros|m)\\b");
    private static final List<Pattern> IN_TEXTS = List.of(INCHES, SHORT_IN, METRIC);
    private static final List<Pattern> IN_CELLS = List.of(INCHES, SHORT_IN, SHORT_ZOLL, METRIC);
    private static final Pattern BARE = Pattern.compile("[~+]?\\s*" + NUMBER + "\\s?-?");
    private static final Pattern PAIR = Pattern.compile(NUMBER + "\\s?[/(|]\\s?" + NUMBER + "\\s?\\)?");
    private static final Pattern BARE_AND_WORDS =
            Pattern.compile("(\\d{2,3}(?:[.,]\\d{1,2})?)[\\s-]+(\\p{L}[\\p{L}\\p{N}\\s/+.-]*)");
    private static final Pattern RANGE_BEFORE =
            Pattern.compile("(^|[^\\p{L}\\p{N}.-])\\d{1,3}\\s*(\"|''|inch|zoll|cm|mm)?\\s*(-|x|\\*|to|bis|a|by)\\s*$");
    private static final Pattern MORE_AFTER =
            Pattern.compile("\\s*(x|\\*)\\s*\\d|\\s*(-|to|bis)\\s*\\d+\\s*(\"|''|inch|zoll|cm|in\\b)");
    private static final Pattern AROUND =
            Pattern.compile("^['(\\s]*((size|diag|diagonal|diagonale|groesse|grosse|taille|tamano|approx|ca"
                    + "|about|circa|env|aprox|led|lcd|tv|oled)[.:\\s]+)*|[.)'\\s]+$");
    private static final Pattern IN_UNIT = Pattern.compile("\\bin[\\s(\\[]+((cm|mm|zenti|centi|milli)\\w*)");
    private static final Set<String> CENTIMETRE_WORDS =
            Set.of("cm", "cms", "zentimeter", "centimetre", "centimetres", "centimeter", "centimeters", "centimetros");
    private static final Set<String> MILLIMETRE_WORDS =
            Set.of("mm", "millimeter", "millimetre", "millimetres", "milimetros");
    private static final Set<String> INCH_WORDS =
            Set.of("inch", "inches", "in", "zoll", "z", "pouces", "pouce", "pulgadas", "pulg", "po");

    private final Goods goods;
    private final RowWords rowWords;
    private final Map<Unit, Kept<Reading<Quantity>>> kept = new EnumMap<>(Unit.class);

    SizeReader(Goods goods, RowWords rowWords) {
        this.goods = goods;
        this.rowWords = rowWords;
        for (Unit unit : Unit.values()) {
            kept.put(unit, new Kept<>(text -> readAfresh(text, unit)));
        }
    }

    /** The unit that a heading gives; inches where it gives none or both. "in" before another unit is none: "Größe in cm". */
    static Unit unitOf(String heading) {
        List<String> words = Folded.words(IN_UNIT.matcher(Folded.fold(heading)).replaceAll(" $1"));
        if (words.stream().anyMatch(INCH_WORDS::contains) || heading.indexOf('"') >= 0) {
            return Unit.INCH;
        }
        if (words.stream().anyMatch(CENTIMETRE_WORDS::contains)) {
            return Unit.CENTIMETRE;
        }
        return words.stream().anyMatch(MILLIMETRE_WORDS::contains) ? Unit.MILLIMETRE : Unit.INCH;
    }

    Reading<Quantity> read(Cell cell, Unit unit) {
        return switch (cell.kind()) {
            case BLANK -> Reading.nothing();
            case NUMBER ->
                cell.format().isTelling()
                        ? ofTellingNumber(cell, unit)
                        : inRange(BigDecimal.valueOf(cell.number()), unit);
            case DATE -> turnedIntoDate();
            case ERROR, DAMAGED -> notASize();
            case TEXT -> read(cell.shown(), unit);
        };
    }

    /** A display format may carry the unit: {@code 0 "cm"}. */
    private Reading<Quantity> ofTellingNumber(Cell cell, Unit unit) {
        Reading<Quantity> shown = read(cell.shown(), unit);
        return shown.value() != null ? shown : inRange(BigDecimal.valueOf(cell.number()), unit);
    }

    Reading<Quantity> read(String text, Unit unit) {
        Kept<Reading<Quantity>> answers = kept.get(unit);
        return answers == null ? readAfresh(text, unit) : answers.get(text);
    }

    private Reading<Quantity> readAfresh(String text, Unit unit) {
        if (rowWords.isNone(text)) {
            return Reading.nothing();
        }
        if (text.length() > LONGEST) {
            return notASize();
        }
        String folded = prepare(text);
        if (DateText.isDate(folded)) {
            return turnedIntoDate();
        }
        if (folded.startsWith("-")) {
            return notASize();
        }
        Found found = find(folded, false);
        if (found != null) {
            return Reading.of(found.inches);
        }
        Matcher withUnit = INCHES.matcher(folded);
        if (withUnit.find() && withUnit.start() == 0) {
            return inRange(number(withUnit), Unit.INCH);
        }
        Matcher metric = METRIC.matcher(folded);
        if (metric.find() && metric.start() == 0) {
            return inRange(number(metric), metric.group(3).startsWith("mm") ? Unit.MILLIMETRE : Unit.CENTIMETRE);
        }
        return bare(folded, unit);
    }

    private Reading<Quantity> bare(String text, Unit unit) {
        String folded = AROUND.matcher(text).replaceAll("");
        Matcher bare = BARE.matcher(folded);
        if (bare.matches()) {
            return inRange(number(bare), unit);
        }
        Matcher pair = PAIR.matcher(folded);
        if (pair.matches()) {
            BigDecimal first = decimal(pair.group(1));
            BigDecimal second = decimal(pair.group(3));
            BigDecimal ratio = first.signum() > 0 ? second.divide(first, 3, RoundingMode.HALF_UP) : BigDecimal.ZERO;
            boolean both = ratio.subtract(CENTIMETRES).abs().compareTo(new BigDecimal("0.12")) < 0;
            return both ? inRange(first, Unit.INCH) : notASize();
        }
        Matcher words = BARE_AND_WORDS.matcher(folded);
        if (words.matches()) {
            boolean setWords = Folded.words(words.group(2)).stream().allMatch(goods::isSetWord);
            if (setWords) {
                return inRange(decimal(words.group(1)), unit);
            }
        }
        int spelled = NumberWords.read(folded);
        return spelled > 0 ? inRange(BigDecimal.valueOf(spelled), unit) : notASize();
    }

    /** The first size with a unit in a description, or null; ranges (of brackets) and measures of boxes are none. */
    @Nullable
    Found findIn(String text) {
        return find(prepare(text.length() > LONGEST_TEXT ? text.substring(0, LONGEST_TEXT) : text), true);
    }

    /** Folded text in which lengths keep their places closely enough to be cut out again. */
    static String prepare(String text) {
        return Folded.fold(text.replace("½", " 1/2").replace("\u00a0", " ")).strip();
    }

    private static @Nullable Found find(String folded, boolean inText) {
        for (Pattern pattern : inText ? IN_TEXTS : IN_CELLS) {
            Matcher m = pattern.matcher(folded);
            while (m.find()) {
                BigDecimal inches = pattern == METRIC ? toInches(number(m), m.group(3)) : number(m);
                boolean plausible = inches.signum() > 0
                        && inches.compareTo(LARGEST) <= 0
                        && (!inText || inches.compareTo(SMALLEST_IN_TEXT) >= 0);
                if (plausible && !isPartOfMore(folded, m.start(), m.end())) {
                    return new Found(quantity(inches), m.start(), m.end());
                }
            }
        }
        return null;
    }

    /** Whether the number is the end of a range, of a word, or one of several measures. */
    private static boolean isPartOfMore(String text, int from, int to) {
        char last = from > 0 ? text.charAt(from - 1) : ' ';
        if (Character.isLetterOrDigit(last)
                || (last == '.' || last == ',') && from > 1 && Character.isDigit(text.charAt(from - 2))) {
            return true;
        }
        int before = from;
        while (before > 0 && Character.isWhitespace(text.charAt(before - 1))) {
            before--;
        }
        boolean mayEndRange = before > 0 && "-x*osay".indexOf(text.charAt(before - 1)) >= 0;
        return mayEndRange && RANGE_BEFORE.matcher(text.substring(0, from)).find()
                || MORE_AFTER.matcher(text).region(to, text.length()).lookingAt();
    }

    private static BigDecimal number(Matcher m) {
        BigDecimal whole = decimal(m.group(1));
        return m.group(2) == null ? whole : whole.add(new BigDecimal("0.5"));
    }

    private static BigDecimal decimal(String text) {
        return new BigDecimal(text.replace(',', '.'));
    }

    private static BigDecimal toInches(BigDecimal number, String unit) {
        if (unit.startsWith("c") || unit.startsWith("z")) {
            return number.divide(CENTIMETRES, 1, RoundingMode.HALF_UP);
        }
        if (unit.equals("m")) {
            return number.scaleByPowerOfTen(2).divide(CENTIMETRES, 1, RoundingMode.HALF_UP);
        }
        // 1.397 mm is thirteen hundred and more, with a sign between the thousands.
        BigDecimal millimetres = number.scale() == 3 ? number.scaleByPowerOfTen(3) : number;
        return millimetres.divide(CENTIMETRES.scaleByPowerOfTen(1), 1, RoundingMode.HALF_UP);
    }

    private static Reading<Quantity> inRange(BigDecimal number, Unit unit) {
        BigDecimal inches = switch (unit) {
            case INCH -> number;
            case CENTIMETRE -> toInches(number, "cm");
            case MILLIMETRE -> toInches(number, "mm");
        };
        if (number.signum() <= 0 || inches.compareTo(LARGEST) > 0) {
            return Reading.bad(
                    "is no size that a screen can have", "Ask the seller; sizes are above 0 and at most 150 inches");
        }
        return Reading.of(quantity(inches));
    }

    private static Quantity quantity(BigDecimal inches) {
        return Quantity.of(inches.setScale(2, RoundingMode.HALF_UP));
    }

    private static Reading<Quantity> notASize() {
        return Reading.bad("is not a screen size", "Ask the seller, or look at the model number");
    }

    private static Reading<Quantity> turnedIntoDate() {
        return Reading.bad("was turned into a date by a spreadsheet program", "Ask the seller for the size");
    }
}
