package org.salvedge.manifest.grid;

import java.io.IOException;
import java.io.Reader;

/** A text read forward, in which one may go back as far as the last mark. */
final class TextWindow {
    static final int END = -1;

    private final Reader reader;
    private char[] chars = new char[1 << 15];
    private int mark;
    private int position;
    private int limit;
    private boolean ended;

    TextWindow(Reader reader) {
        this.reader = reader;
    }

    /** The next character without taking it, or {@link #END}. */
    int peek() throws IOException {
        return position < limit || fill() ? chars[position] : END;
    }

    int take() throws IOException {
        return position < limit || fill() ? chars[position++] : END;
    }

    /** Remembers this place; what lies before it is forgotten. */
    void mark() {
        mark = position;
    }

    void back() {
        position = mark;
    }

    /** Characters taken since the mark. */
    int sinceMark() {
        return position - mark;
    }

    private boolean fill() throws IOException {
        if (ended) {
            return false;
        }
        if (mark > 0) {
            System.arraycopy(chars, mark, chars, 0, limit - mark);
            limit -= mark;
            position -= mark;
            mark = 0;
        }
        if (limit == chars.length) {
            chars = java.util.Arrays.copyOf(chars, chars.length * 2);
        }
        int n = reader.read(chars, limit, chars.length - limit);
        ended = n < 0;
        limit += Math.max(n, 0);
        return n > 0 || !ended && fill();
    }
}
