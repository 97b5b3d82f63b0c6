package org.salvedge.manifest;

import java.util.ArrayList;
import java.util.List;
import java.util.regex.Pattern;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.words.RowWords;

/** Serial numbers of a cell: one, a list, or none; those that lost digits are told apart. */
final class SerialReader {
    private static final Pattern SCIENTIFIC = Pattern.compile("\\d([.,]\\d+)?[eE]\\+?\\d{1,3}");
    private static final Pattern PARTS = Pattern.compile("[,;\\n|]|(?<=[^/]{2})/(?=[^/]{2})|\\s+&\\s+|\\s\\+\\s");
    private static final Pattern SPACES = Pattern.compile("\\s+");
    private static final Pattern LABEL =
            Pattern.compile("(?i)^(s\\s?/\\s?n|sn|ser(ial)?( ?(no|nr|number))?)\\s*[.:#]+\\s*");
    private static final int LONG_NUMBER = 17;
    private static final int COMPLETE_DIGITS = 15;
    private static final int LIKELY = 6;

    private final RowWords rowWords;

    SerialReader(RowWords rowWords) {
        this.rowWords = rowWords;
    }

    /**
     * What a cell holds.
     *
     * @param serials in order, one a set where there are as many; null = a place in the list without a serial
     * @param lost the text of a serial that has lost digits; null = none has
     */
    record Serials(List<@Nullable String> serials, @Nullable String lost) {
        static final Serials NONE = new Serials(List.of(), null);
    }

    /** @param sets how many sets the line stands for; decides whether a sign parts serials or belongs to one */
    Serials read(Cell cell, int sets) {
        return switch (cell.kind()) {
            case BLANK, ERROR, DAMAGED -> Serials.NONE;
            case NUMBER ->
                cell.hasLostDigits() ? new Serials(List.of(), cell.shown()) : new Serials(List.of(cell.shown()), null);
            case DATE -> new Serials(List.of(), cell.shown());
            case TEXT -> ofText(cell.shown(), sets);
        };
    }

    private Serials ofText(String text, int sets) {
        if (rowWords.isNone(text)) {
            return Serials.NONE;
        }
        List<@Nullable String> serials = new ArrayList<>();
        @Nullable String lost = null;
        for (String part : parts(text, sets)) {
            String serial = LABEL.matcher(part.strip()).replaceFirst("");
            if (serial.isEmpty()) {
                continue;
            }
            if (hasLostDigits(serial)) {
                lost = serial;
                serials.add(null);
            } else if (rowWords.isNone(serial) || !holdsDigit(serial) && serial.indexOf(' ') > 0) {
                serials.add(null);
            } else {
                serials.add(serial);
            }
        }
        if (serials.stream().allMatch(s -> s == null)) {
            serials.clear();
        }
        return new Serials(serials, lost);
    }

    private static List<String> parts(String text, int sets) {
        if (text.chars().allMatch(c -> Character.isLetterOrDigit(c) || c == '-' || c == '.')) {
            return List.of(text);
        }
        List<String> parts = List.of(PARTS.split(text));
        if (SCIENTIFIC.matcher(text.strip()).matches()) {
            return List.of(text);
        }
        if (sets == 1 && parts.size() > 1) {
            // A slash in one set's serial belongs to it; two that each look like serials are two.
            int least = text.chars().anyMatch(c -> c == ';' || c == '\n') ? 2 : LIKELY;
            boolean all = parts.stream()
                    .filter(p -> !p.isBlank())
                    .allMatch(p -> p.strip().length() >= least && holdsDigit(p));
            return all ? parts : List.of(text.replace('\n', ' '));
        }
        if (sets > 1 && parts.size() == 1) {
            List<String> spaced = List.of(SPACES.split(text.strip()));
            boolean all = spaced.size() > 1 && spaced.stream().allMatch(p -> p.length() >= LIKELY && holdsDigit(p));
            return all ? spaced : parts;
        }
        return parts;
    }

    /** Scientific notation, or a long number whose end is all zeros because it was once stored as a number. */
    static boolean hasLostDigits(String serial) {
        if (SCIENTIFIC.matcher(serial).matches() && (serial.indexOf('+') > 0 || serial.matches(".*[.,].*"))) {
            return true;
        }
        return serial.length() >= LONG_NUMBER
                && serial.chars().allMatch(c -> c >= '0' && c <= '9')
                && serial.substring(COMPLETE_DIGITS).chars().allMatch(c -> c == '0');
    }

    private static boolean holdsDigit(String text) {
        return text.chars().anyMatch(c -> c >= '0' && c <= '9');
    }
}
