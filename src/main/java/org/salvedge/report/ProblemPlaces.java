package org.salvedge.report;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.salvedge.manifest.ColumnReading;
import org.salvedge.manifest.Manifest;
import org.salvedge.manifest.TableReading;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.grid.Sheet;
import org.salvedge.shop.Problem;

/** Where on a seller's sheets each problem stands. */
final class ProblemPlaces {
    private final Manifest manifest;
    private final List<OnSheet> sheets = new ArrayList<>();

    ProblemPlaces(Manifest manifest, List<Sheet> from) {
        this.manifest = manifest;
        from.forEach(sheet -> sheets.add(new OnSheet(sheet.name() == null ? "" : sheet.name())));
        for (Problem p : manifest.problems()) {
            sheets.get(sheetOf(p, from)).add(p);
        }
    }

    OnSheet of(int sheet) {
        return sheets.get(sheet);
    }

    /** By name; tables without names by the text found in the row. */
    private int sheetOf(Problem p, List<Sheet> from) {
        int first = -1;
        for (int i = 0; i < from.size(); i++) {
            Sheet sheet = from.get(i);
            if (!sheet.isVisible() || p.sheet() != null && !p.sheet().equals(sheet.name())) {
                continue;
            }
            first = first < 0 ? i : first;
            if (p.sheet() != null || p.row() == 0 || sheets.get(i).holds(p, sheet)) {
                return i;
            }
        }
        return Math.max(0, first);
    }

    /** The problems of one sheet. */
    final class OnSheet {
        private final String name;
        private final Map<Integer, List<Problem>> byRow = new HashMap<>();
        private final Map<Integer, Integer> indexOfRow = new HashMap<>();

        private OnSheet(String name) {
            this.name = name;
        }

        /** Whether the row of a problem holds the text found. */
        private boolean holds(Problem p, Sheet sheet) {
            if (indexOfRow.isEmpty()) {
                for (int i = 0; i < sheet.size(); i++) {
                    indexOfRow.put(sheet.number(i), i);
                }
            }
            Integer at = indexOfRow.get(p.row());
            if (at == null) {
                return false;
            }
            for (Cell cell : sheet.row(at)) {
                if (p.found() == null || cell.shown().equals(p.found())) {
                    return true;
                }
            }
            return false;
        }

        private void add(Problem p) {
            byRow.computeIfAbsent(p.row(), k -> new ArrayList<>()).add(p);
        }

        boolean any() {
            return !byRow.isEmpty();
        }

        List<Problem> at(int row) {
            return byRow.getOrDefault(row, List.of());
        }

        List<Problem> ofTheWhole() {
            return at(0);
        }

        /** The column that a problem is about: by its heading, else by the text found, else the first that holds something; -1 = none. */
        int column(Problem p, Cell[] row) {
            int found = p.column() == null ? -1 : headed(p);
            for (int c = 0; c < row.length && found < 0; c++) {
                found = p.found() != null && row[c].shown().equals(p.found()) ? c : -1;
            }
            for (int c = 0; c < row.length && found < 0; c++) {
                found = row[c].isBlank() ? -1 : c;
            }
            return found;
        }

        private int headed(Problem p) {
            int column = -1;
            for (TableReading table : manifest.tables()) {
                if (!table.sheet().equals(name) || table.headerRow() > p.row()) {
                    continue;
                }
                for (ColumnReading c : table.columns()) {
                    if (c.heading().equals(p.column())) {
                        column = index(c.letter());
                        break;
                    }
                }
            }
            return column;
        }

        private static int index(String letters) {
            int index = 0;
            for (int i = 0; i < letters.length(); i++) {
                index = index * 26 + letters.charAt(i) - 'A' + 1;
            }
            return index - 1;
        }
    }
}
