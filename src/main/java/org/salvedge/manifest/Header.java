package org.salvedge.manifest;

import java.util.List;
import org.salvedge.manifest.words.HeadingWords;

/**
 * The headings over a table, of one row or two.
 *
 * @param lastIndex of the rows that it takes, in the sheet's own count
 * @param row as a spreadsheet program shows it; the lower where there are two
 * @param fields of the record that it stands in; -1 where the format has no records
 */
record Header(int lastIndex, int row, int fields, List<Heading> headings) {
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
