package org.salvedge.manifest.grid;

/** Cell references as workbooks write them: {@code B7}, {@code $B$7}, {@code A1:C3}. */
final class Reference {
    private static final int MOST_ROWS = 1 << 20;
    private static final int MOST_COLUMNS = 1 << 14;

    private Reference() {}

    /** Column from 0, or -1 where it is no reference. */
    static int column(String reference) {
        int column = 0;
        for (int i = 0; i < reference.length(); i++) {
            char c = reference.charAt(i);
            if (c >= 'A' && c <= 'Z') {
                column = column * 26 + (c - 'A' + 1);
            } else if (c >= 'a' && c <= 'z') {
                column = column * 26 + (c - 'a' + 1);
            } else if (c != '$') {
                break;
            }
            if (column > MOST_COLUMNS) {
                return -1;
            }
        }
        return column - 1;
    }

    /** Row from 1, or -1 where it is no reference. */
    static int row(String reference) {
        long row = 0;
        boolean digits = false;
        for (int i = 0; i < reference.length(); i++) {
            char c = reference.charAt(i);
            if (c >= '0' && c <= '9') {
                row = row * 10 + (c - '0');
                digits = true;
            } else if (digits) {
                return -1;
            }
            if (row > MOST_ROWS) {
                return -1;
            }
        }
        return row > 0 ? (int) row : -1;
    }

    /** Adds the range {@code A1:C3} to the merges; what is no range is left out. */
    static void merge(String range, SheetBuilder sheet) {
        int colon = range.indexOf(':');
        if (colon < 0) {
            return;
        }
        String from = range.substring(0, colon);
        String to = range.substring(colon + 1);
        sheet.merge(row(from), column(from), row(to), column(to));
    }

    /** The letters of a column from 0: A, B, ..., Z, AA. */
    static String letters(int column) {
        StringBuilder letters = new StringBuilder();
        for (int c = column + 1; c > 0; c = (c - 1) / 26) {
            letters.insert(0, (char) ('A' + (c - 1) % 26));
        }
        return letters.toString();
    }
}
