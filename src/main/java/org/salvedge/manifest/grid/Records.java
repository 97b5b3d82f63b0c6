package org.salvedge.manifest.grid;

import java.io.IOException;
import java.util.ArrayList;
import java.util.List;

/**
 * Records of delimited text by the rules of RFC 4180, section 2, and a way on where a file breaks them: a quote that is never
 * closed is taken as a letter, its record alone suffers and is marked. A quote inside a field that does not begin with one
 * (40" screens) is a letter too.
 */
final class Records {
    private static final int LONGEST_FIELD = 32_767;
    private static final int LONGEST_RECORD = 1 << 20;

    /** Each repair reads a field twice; a file with more of them has no quotes that mean anything. */
    private static final int MOST_REPAIRS = 200;

    private final TextWindow text;
    private final char delimiter;
    private final int usualFields;
    private final List<String> fields = new ArrayList<>();
    private final StringBuilder field = new StringBuilder();
    private int repairs;
    private boolean damaged;

    /** @param usualFields how many most records have; tells a quoted line break from a quote that swallows records */
    Records(TextWindow text, char delimiter, int usualFields) {
        this.text = text;
        this.delimiter = delimiter;
        this.usualFields = usualFields;
    }

    /** Reads the next record; false at the end of the text. */
    boolean next() throws IOException {
        fields.clear();
        damaged = false;
        text.mark();
        if (text.peek() == TextWindow.END) {
            return false;
        }
        if (!read(repairs < MOST_REPAIRS)) {
            repairs++;
            damaged = true;
            text.back();
            fields.clear();
            read(false);
        }
        return true;
    }

    /** Fields of the record just read, as they stand. */
    List<String> fields() {
        return fields;
    }

    /** Whether the record just read holds a quote that is never closed. */
    boolean isDamaged() {
        return damaged;
    }

    private boolean read(boolean quotes) throws IOException {
        while (true) {
            field.setLength(0);
            boolean fine = quotes && text.peek() == '"' ? quoted() : plain();
            if (!fine) {
                return false;
            }
            fields.add(field.toString());
            int c = text.take();
            if (c == delimiter) {
                continue;
            }
            if (c == '\r' && text.peek() == '\n') {
                text.take();
            }
            return true;
        }
    }

    private boolean plain() throws IOException {
        while (!isBoundary(text.peek())) {
            if (text.sinceMark() > LONGEST_RECORD) {
                throw BadFile.tooLarge("holds a line of more than " + LONGEST_RECORD + " characters");
            }
            field.append((char) text.take());
        }
        return true;
    }

    /** False where the quote does not close as quotes do. */
    private boolean quoted() throws IOException {
        text.take();
        boolean loose = false;
        boolean lines = false;
        int delimitersInLine = 0;
        while (field.length() <= LONGEST_FIELD) {
            int c = text.take();
            if (c == TextWindow.END) {
                return false;
            }
            if (c == '"') {
                int after = text.peek();
                if (after == '"') {
                    text.take();
                } else if (isBoundary(after)) {
                    return !(loose && lines);
                } else {
                    loose = true;
                }
            } else if (c == '\n' || c == '\r') {
                if (lines && delimitersInLine >= Math.max(2, usualFields - 1)) {
                    return false;
                }
                lines = true;
                delimitersInLine = 0;
            } else if (c == delimiter) {
                delimitersInLine++;
            }
            field.append((char) c);
        }
        return false;
    }

    private boolean isBoundary(int c) {
        return c == delimiter || c == '\n' || c == '\r' || c == TextWindow.END;
    }
}
