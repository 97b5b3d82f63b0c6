package org.salvedge.manifest;

import java.util.Set;
import java.util.regex.Matcher;
import java.util.regex.Pattern;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.words.Folded;

/** How many sets a line stands for. */
final class CountReader {
    static final int MOST = 1_000;

    private static final Pattern COUNT = Pattern.compile(
            "(?:(?:x|\\*|×|qty|ca|\\()[.:]?\\s*)?(-?\\d{1,9})(?:[.,](0{1,3}))?\\s*(?:x|\\*|×)?\\s*([\\p{L}()./ ]{0,24})");
    private static final Set<String> UNITS = Set.of(
            "x",
            "pc",
            "pcs",
            "pce",
            "pces",
            "piece",
            "pieces",
            "unit",
            "units",
            "set",
            "sets",
            "ea",
            "each",
            "off",
            "no",
            "nos",
            "item",
            "items",
            "tv",
            "tvs",
            "stk",
            "stck",
            "stuck",
            "st",
            "mal",
            "gerat",
            "gerate",
            "fernseher",
            "u",
            "un",
            "unite",
            "unites",
            "ex",
            "exemplaires",
            "appareil",
            "appareils",
            "ud",
            "uds",
            "unidad",
            "unidades",
            "pza",
            "pzas",
            "pz",
            "pieza",
            "piezas",
            "equipo",
            "equipos",
            "televisor",
            "televisores",
            "s",
            "televiseur",
            "televiseurs",
            "only",
            "nur",
            "qty",
            "e");

    /** Line with a count at its beginning: {@code 2x 55" ...}. */
    private static final Pattern LEADING = Pattern.compile(
            "(\\d{1,3})\\s?(?:x|×|\\*)\\s+(?=\\S)|(\\d{1,3})\\s?(?:pcs?|stk|stck|stuck|uds?|pces?)\\.?\\s+(?=\\S)");

    private CountReader() {}

    /** 1 for a blank cell; a problem for zero, negative, unreadable and absurd counts. */
    static Reading<Integer> read(Cell cell) {
        return switch (cell.kind()) {
            case BLANK -> Reading.of(1);
            case NUMBER -> ofNumber(cell.number());
            case TEXT -> ofText(cell.shown());
            default -> unreadable();
        };
    }

    private static Reading<Integer> ofNumber(double number) {
        if (number != Math.rint(number)) {
            return unreadable();
        }
        if (number > MOST) {
            return Reading.bad("is more sets than a line can stand for", "Ask the seller how many there are");
        }
        if (number <= 0) {
            return Reading.bad(
                    number == 0 ? "sets: the line stands for none" : "is less than no set",
                    "Ask the seller whether the set is there");
        }
        return Reading.of((int) number);
    }

    private static Reading<Integer> ofText(String text) {
        String folded = Folded.fold(text).strip();
        Matcher m = COUNT.matcher(folded);
        if (!m.matches() || !Folded.words(m.group(3)).stream().allMatch(UNITS::contains)) {
            return unreadable();
        }
        return ofNumber(Double.parseDouble(m.group(1)));
    }

    private static Reading<Integer> unreadable() {
        return Reading.bad("is not a number of sets", "Ask the seller how many there are");
    }

    /** The count that a description begins with, 1 where it begins with none. */
    static int leading(String description) {
        Matcher m = LEADING.matcher(Folded.fold(description));
        if (!m.lookingAt()) {
            return 1;
        }
        int count = Integer.parseInt(m.group(1) != null ? m.group(1) : m.group(2));
        return count >= 1 && count <= MOST ? count : 1;
    }

    /** Where the description proper begins behind its count. */
    static int leadingEnd(String description) {
        Matcher m = LEADING.matcher(Folded.fold(description));
        return m.lookingAt() ? m.end() : 0;
    }
}
