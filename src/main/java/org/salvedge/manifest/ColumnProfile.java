package org.salvedge.manifest;

import java.util.HashSet;
import java.util.Set;
import java.util.regex.Pattern;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.words.ClaimReader;
import org.salvedge.manifest.words.Field;

/** What the cells under a heading look like: shares of the cells that hold something. */
final class ColumnProfile {
    private static final double SURE_CLAIM = 0.6;
    private static final int FEW = 3;

    /** A heading that says plainly what its column is keeps it, so that cells which are nothing of the kind are told. */
    private static final double UNFIT = 0.4;

    private static final Pattern MODEL = Pattern.compile("(?=.*\\p{L})(?=.*\\d)[\\p{L}\\d][\\p{L}\\d./_+-]{2,23}");
    private static final Pattern CODE = Pattern.compile("\\p{L}?\\d?|\\p{L}{1,2}|\\p{L}[+-]?");
    private static final Pattern YES_NO = Pattern.compile("(?i)y|n|yes|no|ja|nein|oui|non|s[ií]|x|true|false|j|o|0|1");
    private static final Pattern BARCODE = Pattern.compile("\\d{12,14}");

    private int filled;
    private int numbers;
    private int dates;
    private int digits;
    private int wordy;
    private int spaced;
    private int models;
    private int sizes;
    private int sizesWithUnit;
    private int amounts;
    private int currency;
    private int counts;
    private int claims;
    private int codes;
    private int yesNo;
    private int barcodes;
    private int steps;
    private int makerLed;
    private int coded;
    private double last = Double.NaN;
    private final Set<String> distinct = new HashSet<>();

    void add(Cell cell, SizeReader sizeReader, SizeReader.Unit unit, Amount amount, ClaimReader claimReader) {
        if (cell.isBlank() || cell.kind() == Cell.Kind.ERROR || cell.kind() == Cell.Kind.DAMAGED) {
            return;
        }
        filled++;
        String text = cell.shown();
        distinct.add(text);
        dates += cell.kind() == Cell.Kind.DATE || DateText.isDate(text) ? 1 : 0;
        double number = number(cell, text);
        if (!Double.isNaN(number)) {
            numbers++;
            steps += number == last + 1 || Double.isNaN(last) && number == 1 ? 1 : 0;
            last = number;
        }
        boolean digit = text.chars().anyMatch(Character::isDigit);
        digits += digit ? 1 : 0;
        wordy += !digit && text.chars().anyMatch(Character::isLetter) ? 1 : 0;
        spaced += text.strip().indexOf(' ') > 0 ? 1 : 0;
        models += MODEL.matcher(text).matches() ? 1 : 0;
        Reading<?> size = sizeReader.read(cell, unit);
        sizes += size.value() != null && isScreen(cell, text, number, unit) ? 1 : 0;
        sizesWithUnit += cell.kind() == Cell.Kind.TEXT && sizeReader.findIn(text) != null ? 1 : 0;
        amounts += amount.read(cell).value() != null ? 1 : 0;
        currency += text.chars().anyMatch(c -> Character.getType(c) == Character.CURRENCY_SYMBOL) ? 1 : 0;
        counts += CountReader.read(cell).value() != null || number == 0 ? 1 : 0;
        ClaimReader.Reading claim = claimReader.read(text);
        claims += !claim.matched().isEmpty() && claim.sureness() >= SURE_CLAIM && Double.isNaN(number) ? 1 : 0;
        codes += CODE.matcher(text).matches() ? 1 : 0;
        yesNo += YES_NO.matcher(text).matches() ? 1 : 0;
        barcodes += BARCODE.matcher(text).matches() ? 1 : 0;
        makerLed += isMakerLed(text) ? 1 : 0;
        coded += text.indexOf(' ') > 0 && RowSorter.holdsCode(text) ? 1 : 0;
    }

    private static boolean isScreen(Cell cell, String text, double number, SizeReader.Unit unit) {
        if (Double.isNaN(number)) {
            return cell.kind() == Cell.Kind.TEXT && text.length() < 40;
        }
        return unit != SizeReader.Unit.INCH || number >= 10;
    }

    /** A name, then a word with a digit: "Kestrel KX-75F11". */
    private static boolean isMakerLed(String text) {
        int space = text.indexOf(' ');
        return space > 1
                && text.substring(0, space).chars().noneMatch(Character::isDigit)
                && Character.isUpperCase(text.codePointAt(0))
                && text.substring(space).chars().anyMatch(Character::isDigit);
    }

    private static double number(Cell cell, String text) {
        if (cell.isNumber()) {
            return cell.number();
        }
        boolean plain = text.length() < 12 && text.chars().allMatch(c -> c >= '0' && c <= '9' || c == '.' || c == ',');
        if (!plain || !Character.isDigit(text.charAt(text.length() - 1))) {
            return Double.NaN;
        }
        try {
            return Double.parseDouble(text.replace(',', '.'));
        } catch (NumberFormatException e) {
            return Double.NaN;
        }
    }

    private double share(int count) {
        return filled == 0 ? 0 : (double) count / filled;
    }

    boolean isCounter() {
        return filled >= 2 && share(steps) > 0.8 && distinct.size() > 0.9 * filled;
    }

    boolean holdsMakerAndModel() {
        return share(makerLed) >= 0.5;
    }

    /** Whether most texts are one word of letters and digits. */
    boolean holdsBareModels() {
        return filled >= 2 && share(models) >= 0.7 && share(spaced) < 0.3;
    }

    /** Whether most texts are of several words, one of them of letters and digits. */
    boolean holdsModelsAmongWords() {
        return share(coded) >= 0.5;
    }

    boolean holdsSizesWithUnit() {
        return share(sizesWithUnit) >= 0.3;
    }

    boolean holdsClaims() {
        return share(claims) >= 0.25;
    }

    /** How well the cells fit a field that the heading names: about 1 where they do. */
    double fit(Field field) {
        if (filled < 2) {
            return 1;
        }
        return switch (field) {
            case MAKER -> share(numbers) > 0.5 ? 0.2 : share(wordy) >= 0.6 ? 1.05 : 0.6;
            case MODEL -> model();
            case DESCRIPTION -> description();
            case INCHES -> share(sizes) >= 0.5 ? 1.05 : share(dates) > 0.5 ? 0.9 : UNFIT;
            case SERIAL -> isCounter() || share(wordy) > 0.8 && distinct.size() < 0.5 * filled ? 0.25 : 1.02;
            case QUANTITY -> isCounter() && filled > FEW ? 0.3 : share(counts) >= 0.5 ? 1.05 : UNFIT;
            case CLAIM -> claim();
            case KIND -> share(numbers) > 0.5 ? 0.2 : share(claims) > 0.6 ? 0.5 : share(models) > 0.6 ? 0.4 : 1.02;
            case ASK, ASK_UNIT, ASK_LINE, RETAIL, RETAIL_UNIT, RETAIL_LINE ->
                isCounter() ? 0.25 : share(amounts) < 0.3 ? UNFIT : 1.02;
            case NONE -> 1;
        };
    }

    private double model() {
        if (isCounter()) {
            return 0.15;
        }
        if (share(barcodes) > 0.6) {
            return 0.3;
        }
        if (share(dates) > 0.8 || share(claims) > 0.6 && share(digits) < 0.3) {
            return 0.3;
        }
        return share(digits) >= 0.5 ? 1.05 : distinct.size() <= Math.max(6, filled / 8) ? 0.45 : 0.75;
    }

    private double description() {
        if (share(numbers) > 0.5) {
            return 0.15;
        }
        if (share(claims) > 0.6 && share(digits) < 0.3) {
            return 0.4;
        }
        return share(spaced) >= 0.5 ? 1.05 : 0.75;
    }

    private double claim() {
        if (share(numbers) > 0.5) {
            return 0.2;
        }
        if (share(claims) >= 0.4) {
            return 1.05;
        }
        return share(codes) > 0.7 || share(yesNo) > 0.7 ? 0.4 : 0.95;
    }

    /** How strongly the cells alone, under a heading that says nothing, speak for a field; 0 = they do not. */
    double alone(Field field) {
        if (filled < FEW) {
            return 0;
        }
        return switch (field) {
            case CLAIM -> share(claims) >= 0.6 && share(digits) < 0.4 ? 0.44 : 0;
            case INCHES -> share(sizesWithUnit) >= 0.7 && share(spaced) < 0.8 && share(claims) < 0.5 ? 0.44 : 0;
            case DESCRIPTION ->
                share(makerLed) >= 0.6 || share(spaced) >= 0.8 && share(sizesWithUnit) >= 0.6 && share(digits) >= 0.8
                        ? 0.42
                        : 0;
            case MODEL -> share(models) >= 0.8 && distinct.size() < filled && !isCounter() ? 0.4 : 0;
            case MAKER ->
                share(wordy) >= 0.9
                                && distinct.size() <= 0.6 * filled
                                && distinct.size() > 1
                                && share(claims) < 0.2
                                && share(codes) < 0.2
                                && share(yesNo) < 0.2
                        ? 0.33
                        : 0;
            case ASK -> share(currency) >= 0.7 && share(amounts) >= 0.7 ? 0.36 : 0;
            default -> 0;
        };
    }
}
