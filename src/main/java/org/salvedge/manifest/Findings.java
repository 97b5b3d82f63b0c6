package org.salvedge.manifest;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Locale;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Problem;

/** Sets and problems of a file as they are met, and the serials met so far. */
final class Findings {
    private static final int LONGEST_FOUND = 120;

    private final String file;
    private final List<ListedSet> sets = new ArrayList<>();
    private final List<Problem> problems = new ArrayList<>();
    private final Map<String, Place> serials = new HashMap<>();
    private @Nullable String sheet;

    private record Place(@Nullable String sheet, int row) {}

    /** @param file name without its folder */
    Findings(String file) {
        this.file = file;
    }

    void startSheet(@Nullable String name) {
        sheet = name;
    }

    String sheetName() {
        return sheet == null ? "" : sheet;
    }

    void add(ListedSet set) {
        sets.add(set);
    }

    /** @param column the heading, or null for the whole row */
    void problem(int row, @Nullable String column, @Nullable String found, String problem, String advice) {
        problems.add(new Problem(file, sheet, row, column, shorten(found), problem, advice));
    }

    private static @Nullable String shorten(@Nullable String text) {
        if (text == null || text.isEmpty()) {
            return null;
        }
        String line = text.indexOf('\n') < 0 ? text : text.replace('\n', ' ');
        if (line.length() <= LONGEST_FOUND) {
            return line;
        }
        int end = Character.isHighSurrogate(line.charAt(LONGEST_FOUND - 1)) ? LONGEST_FOUND - 1 : LONGEST_FOUND;
        return line.substring(0, end) + "...";
    }

    /** Remembers a serial; where it was met before, says where. */
    @Nullable
    String metBefore(String serial, int row) {
        String key = serial.toUpperCase(Locale.ROOT);
        Place before = serials.putIfAbsent(key, new Place(sheet, row));
        if (before == null) {
            return null;
        }
        boolean sameSheet = before.sheet == null || before.sheet.equals(sheet);
        return sameSheet ? "row " + before.row : "sheet \"" + before.sheet + "\", row " + before.row;
    }

    int setCount() {
        return sets.size();
    }

    boolean isEmpty() {
        return sets.isEmpty() && problems.isEmpty();
    }

    List<ListedSet> sets() {
        return sets;
    }

    List<Problem> problems() {
        return problems;
    }
}
