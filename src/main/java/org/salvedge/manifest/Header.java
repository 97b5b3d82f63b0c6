package org.salvedge.manifest;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Set;
import org.salvedge.manifest.words.HeadingWords;

/**
 * The headings over a table, of one row or two.
 *
 * @param lastIndex of the rows that it takes, in the sheet's own count
 * @param row as a spreadsheet program shows it; the lower where there are two
 * @param firstColumn that belongs to the table
 * @param endColumn the first to the right of it that does not
 * @param fields of the record that it stands in; -1 where the format has no records
 */
record Header(int lastIndex, int row, int fields, List<Heading> headings, int firstColumn, int endColumn) {
    /** Over the whole width of a sheet. */
    Header(int lastIndex, int row, int fields, List<Heading> headings) {
        this(lastIndex, row, fields, headings, 0, Integer.MAX_VALUE);
    }

    /**
     * One column's heading.
     *
     * @param text as written, white space as single spaces
     * @param matches what it may mean, best first
     */
    record Heading(int column, String text, List<HeadingWords.Match> matches) {
        double best() {
            return matches.isEmpty() ? 0 : matches.get(0).score();
        }
    }

    /** Whether every heading is known beyond doubt. */
    boolean isSure() {
        return headings.size() > 1 && headings.stream().allMatch(heading -> heading.best() >= 0.95);
    }

    /** The headers of tables that stand side by side: where the first heading comes again, another table begins. */
    List<Header> sideBySide() {
        List<Integer> starts = new ArrayList<>();
        Set<String> within = new HashSet<>();
        String first = "";
        boolean repeated = false;
        for (Heading heading : headings) {
            String text = heading.text.toLowerCase(Locale.ROOT);
            if (starts.isEmpty() || text.equals(first)) {
                starts.add(heading.column);
                first = text;
            } else {
                repeated |= starts.size() > 1 && within.contains(text);
                within.add(text);
            }
        }
        if (starts.size() < 2 || !repeated) {
            return List.of(this);
        }
        List<Header> parts = new ArrayList<>();
        for (int i = 0; i < starts.size(); i++) {
            int from = i == 0 ? 0 : starts.get(i);
            int end = i + 1 < starts.size() ? starts.get(i + 1) : Integer.MAX_VALUE;
            List<Heading> own = headings.stream()
                    .filter(h -> h.column >= from && h.column < end)
                    .toList();
            parts.add(new Header(lastIndex, row, -1, own, from, end));
        }
        return parts;
    }

    /** Whether another header says the same in the same columns. */
    boolean repeats(Header other) {
        if (headings.size() != other.headings.size()) {
            return false;
        }
        for (int i = 0; i < headings.size(); i++) {
            Heading a = headings.get(i);
            Heading b = other.headings.get(i);
            if (a.column != b.column || !a.text.equalsIgnoreCase(b.text)) {
                return false;
            }
        }
        return true;
    }
}
