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
    private static int sheetOf(Problem p, List<Sheet> sheets) {
        int first = -1;
        for (int i = 0; i < sheets.size(); i++) {
            Sheet sheet = sheets.get(i);
            if (!sheet.isVisible() || p.sheet() != null && !p.sheet().equals(sheet.name())) {
                continue;
            }
            first = first < 0 ? i : first;
            if (p.sheet() != null || p.row() == 0 || holds(sheet, p)) {
                return i;
            }
        }
        return Math.max(0, first);
    }

    private static boolean holds(Sheet sheet, Problem p) {
        for (int i = 0; i < sheet.size() && sheet.number(i) <= p.row(); i++) {
            if (sheet.number(i) == p.row()) {
                for (Cell cell : sheet.row(i)) {
                    if (p.found() == null || cell.shown().equals(p.found())) {
                        return true;
                    }
                }
            }
        }
        return false;
    }

    /** The problems of one sheet. */
    final class OnSheet {
        private final String name;
        private final Map<Integer, List<Problem>> byRow = new HashMap<>();

        private OnSheet(String name) {
            this.name = name;
        }

        private void add(Problem p) {
            byRow.computeIfAbsent(p.row(), k -> new ArrayList<>()).add(p);
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
