package org.salvedge.manifest;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Set;
import java.util.regex.Pattern;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.words.Folded;
import org.salvedge.manifest.words.RowWords;

/**
 * Amounts of money as sellers write them. The convention (decimal comma or point) is that of the column: what can only be read
 * one way votes, what could be read two ways follows.
 */
final class Amount {
    private static final BigDecimal LARGEST = new BigDecimal("10000000");
    private static final int DIGITS = 4;
    private static final int LONGEST = 60;
    private static final Pattern SCIENTIFIC = Pattern.compile("[+]?\\d+([.,]\\d+)?e[+-]?\\d{1,3}");
    /** A minus before the digits, at the beginning or behind a currency; in {@code EUR-120} it may as well be a hyphen. */
    private static final Pattern MINUS = Pattern.compile("-|[^\\d]*[ \\p{Sc}]-[.,]?\\d");

    /**
     * Behind the digits a minus is how some books write a negative amount ({@code 120,50-}), and how some people write a price
     * without cents ({@code 120-} for {@code 120,-}): no guess is made. Before a word or with another sign it is a hyphen.
     */
    private static final Pattern MINUS_BEHIND = Pattern.compile(".*\\d[\\s\\p{L}\\p{Sc}]*-[\\s\\p{Sc}]*");

    private static final Pattern DASHED_END = Pattern.compile("([.,]\\s?[-–—=]{1,2}|[.,])$");

    /** Words that may stand beside an amount. Not those that change it: thousands and hundredths ({@code 2k}, {@code 99p}). */
    private static final Set<String> BESIDE = Set.of(
            "eur", "euro", "euros", "usd", "us", "dollar", "dollars", "gbp", "chf", "fr", "sfr", "frs", "franken",
            "francs", "kr", "dkk", "sek", "nok", "pln", "zl", "czk", "kc", "huf", "ft", "cad", "aud", "jpy", "yen", "a",
            "each", "ea", "pro", "je", "per", "par", "por", "stk", "stuck", "st", "pc", "pcs", "piece", "unit", "set",
            "net", "netto", "ht", "ttc", "brutto", "ca", "approx", "circa", "vb", "vhb", "fp", "obo", "ono", "only",
            "nur", "asking", "price", "preis", "prix", "precio", "unite", "unidad", "ud", "u", "inkl", "incl", "mwst",
            "vat", "tva", "iva", "rrp", "uvp", "pvp", "msrp", "plus", "zzgl", "ex", "excl", "exkl", "sin", "con",
            "hors");

    /** Before an amount only: behind it the letter is a cent. */
    private static final Pattern CIRCA = Pattern.compile("^c\\b");

    /** How a column writes its amounts. */
    enum Style {
        POINT,
        COMMA,
        UNKNOWN
    }

    private final Style style;
    private final boolean threeDecimals;
    private final RowWords rowWords;

    private Amount(Style style, boolean threeDecimals, RowWords rowWords) {
        this.style = style;
        this.threeDecimals = threeDecimals;
        this.rowWords = rowWords;
    }

    /** Counts the votes of a column's cells. */
    static final class Votes {
        private int points;
        private int commas;
        private int threes;

        void add(Cell cell) {
            if (cell.kind() != Cell.Kind.TEXT) {
                return;
            }
            String core = digitsAndSigns(cell.shown());
            int point = core.lastIndexOf('.');
            int comma = core.lastIndexOf(',');
            int last = Math.max(point, comma);
            if (last < 0) {
                return;
            }
            int after = core.length() - last - 1;
            boolean both = point >= 0 && comma >= 0;
            boolean repeated = core.indexOf(core.charAt(last)) != last;
            if (both && !repeated || after == 1 || after == 2 || core.startsWith("0")) {
                vote(core.charAt(last) == '.');
                threes += after == 3 ? 1 : 0;
            } else if (repeated && !both) {
                vote(core.charAt(last) != '.');
            }
        }

        private void vote(boolean point) {
            if (point) {
                points++;
            } else {
                commas++;
            }
        }

        Amount result(RowWords rowWords) {
            Style style = points > commas ? Style.POINT : commas > points ? Style.COMMA : Style.UNKNOWN;
            return new Amount(style, threes > 0 && threes * 2 > points + commas, rowWords);
        }
    }

    private static String digitsAndSigns(String text) {
        StringBuilder core = new StringBuilder();
        for (int i = 0; i < text.length() && i < LONGEST; i++) {
            char c = text.charAt(i);
            if (c >= '0' && c <= '9' || (c == '.' || c == ',') && !core.isEmpty()) {
                core.append(c);
            }
        }
        while (!core.isEmpty() && !Character.isDigit(core.charAt(core.length() - 1))) {
            core.setLength(core.length() - 1);
        }
        return core.toString();
    }

    Reading<BigDecimal> read(Cell cell) {
        return switch (cell.kind()) {
            case BLANK -> Reading.nothing();
            case NUMBER -> ofNumber(cell.number());
            case DATE -> Reading.bad("was turned into a date by a spreadsheet program", "Ask the seller for the price");
            case ERROR -> Reading.bad("is an error value where a price should be", "Ask the seller for the price");
            case DAMAGED ->
                Reading.bad(cell.damage() == null ? "cannot be read" : cell.damage(), "Ask the seller for the price");
            case TEXT -> ofText(cell.shown());
        };
    }

    private static Reading<BigDecimal> ofNumber(double number) {
        return inRange(BigDecimal.valueOf(number));
    }

    private static Reading<BigDecimal> inRange(BigDecimal amount) {
        if (amount.signum() < 0 || amount.compareTo(LARGEST) > 0) {
            return Reading.bad("is no price that a set can have", "Ask the seller for the price");
        }
        BigDecimal rounded = amount.scale() > DIGITS ? amount.setScale(DIGITS, RoundingMode.HALF_EVEN) : amount;
        BigDecimal plain = rounded.stripTrailingZeros();
        return Reading.of(plain.scale() < 0 ? plain.setScale(0) : plain);
    }

    private Reading<BigDecimal> ofText(String text) {
        if (rowWords.isNone(text)) {
            return Reading.nothing();
        }
        String folded = Folded.fold(text).strip();
        if (folded.length() > LONGEST) {
            return unreadable();
        }
        if (SCIENTIFIC.matcher(folded).matches()) {
            return inRange(new BigDecimal(folded.replace(',', '.').replace("+", "")));
        }
        String core = core(folded);
        if (core.isEmpty()) {
            return unreadable();
        }
        if (MINUS_BEHIND.matcher(folded).matches()) {
            return Reading.bad(
                    "has a minus behind it: a negative amount, or a price without cents",
                    "Ask the seller for the price; write digits, as in 120.50");
        }
        boolean negative = MINUS.matcher(folded).lookingAt()
                || folded.startsWith("(") && folded.endsWith(")") && core.length() > 2;
        BigDecimal amount = decimal(core);
        return amount == null ? unreadable() : inRange(negative ? amount.negate() : amount);
    }

    private static Reading<BigDecimal> unreadable() {
        return Reading.bad("is not a price", "Ask the seller for the price; write digits, as in 120.50");
    }

    /** Digits and the signs between them; "" where other things stand beside or between. */
    private static String core(String folded) {
        int from = 0;
        while (from < folded.length() && !isDigit(folded.charAt(from))) {
            from++;
        }
        int to = folded.length();
        while (to > from && !isDigit(folded.charAt(to - 1))) {
            to--;
        }
        if (from >= to
                || !isBeside(CIRCA.matcher(folded.substring(0, from)).replaceFirst(""))
                || !isBeside(folded.substring(to))) {
            return "";
        }
        if (from > 0 && folded.charAt(from - 1) == '.') {
            boolean abbreviated = from > 1 && Character.isLetter(folded.charAt(from - 2));
            from -= abbreviated ? 0 : 1;
        }
        String core = DASHED_END.matcher(folded.substring(from, to)).replaceFirst("");
        for (int i = 0; i < core.length(); i++) {
            char c = core.charAt(i);
            if (!isDigit(c) && c != '.' && c != ',' && c != '\'' && c != ' ') {
                return "";
            }
        }
        return core;
    }

    private static boolean isDigit(char c) {
        return c >= '0' && c <= '9';
    }

    /** Whether what stands before or behind the digits is a currency or a word that goes with an amount. */
    private static boolean isBeside(String text) {
        for (int i = 0; i < text.length(); i++) {
            char c = text.charAt(i);
            boolean sign = Character.getType(c) == Character.CURRENCY_SYMBOL || " .,-+()*/:=~\n'".indexOf(c) >= 0;
            if (!sign && !Character.isLetter(c)) {
                return false;
            }
        }
        return Folded.words(text).stream().allMatch(BESIDE::contains);
    }

    private @org.jspecify.annotations.Nullable BigDecimal decimal(String core) {
        String digits = core;
        if (core.indexOf(' ') >= 0 || core.indexOf('\'') >= 0) {
            if (!core.matches("\\d{1,3}([ '.,]\\d{3})*([.,]\\d{1,4})?")) {
                return null;
            }
            digits = core.replace(" ", "").replace("'", "");
        }
        int point = digits.lastIndexOf('.');
        int comma = digits.lastIndexOf(',');
        if (point < 0 && comma < 0) {
            return new BigDecimal(digits);
        }
        char last = point > comma ? '.' : ',';
        char other = last == '.' ? ',' : '.';
        int at = Math.max(point, comma);
        boolean repeated = digits.indexOf(last) != at;
        String grouped = "\\d{1,3}(\\" + (repeated ? last : other) + "\\d{3})*";
        if (repeated) {
            return digits.matches(grouped) ? new BigDecimal(digits.replace(String.valueOf(last), "")) : null;
        }
        if (digits.indexOf(other) >= 0) {
            String whole = digits.substring(0, at);
            return whole.matches(grouped)
                    ? decimal(whole.replace(String.valueOf(other), ""), digits.substring(at + 1))
                    : null;
        }
        String whole = digits.substring(0, at);
        String fraction = digits.substring(at + 1);
        return fraction.length() == 3 && isThousands(whole, last)
                ? new BigDecimal(whole + fraction)
                : decimal(whole, fraction);
    }

    /** Whether three digits after a sign are thousands: they are unless the column is known to write three decimals. */
    private boolean isThousands(String whole, char sign) {
        if (whole.isEmpty() || whole.startsWith("0") || whole.length() > 3) {
            return false;
        }
        boolean decimalSign = style == Style.POINT && sign == '.' || style == Style.COMMA && sign == ',';
        return !(decimalSign && threeDecimals);
    }

    private static BigDecimal decimal(String whole, String fraction) {
        return new BigDecimal((whole.isEmpty() ? "0" : whole) + "." + fraction);
    }

    Style style() {
        return style;
    }
}
