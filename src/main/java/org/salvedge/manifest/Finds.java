package org.salvedge.manifest;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.grid.Sheet;
import org.salvedge.shop.Problem;

/** Collects what is found in a file: sets, problems, the first header. */
final class Finds {
    private final String file;
    private final List<ListedSet> sets = new ArrayList<>();
    private final List<Problem> problems = new ArrayList<>();
    private final Map<String, String> serials = new HashMap<>();
    private @Nullable Header first;
    private @Nullable Sheet firstSheet;

    final ClaimReader claims;

    Finds(String file, ClaimReader claims) {
        this.file = file;
        this.claims = claims;
    }

    void header(Sheet sheet, Header header) {
        if (first == null) {
            first = header;
            firstSheet = sheet;
        }
    }

    @Nullable
    Header first() {
        return first;
    }

    String firstSheet() {
        return firstSheet == null || firstSheet.name() == null ? "" : firstSheet.name();
    }

    void set(ListedSet set) {
        sets.add(set);
    }

    /** Where this serial was met before; null if it is new. */
    @Nullable
    String serialMetBefore(String serial, String where) {
        return serials.putIfAbsent(Serials.key(serial), where);
    }

    void problem(Sheet sheet, int row, @Nullable String column, @Nullable String found, String problem, String advice) {
        problems.add(new Problem(file, sheet.name(), row, column, found, problem, advice));
    }

    List<ListedSet> sets() {
        return sets;
    }

    List<Problem> problems() {
        return problems;
    }
}
