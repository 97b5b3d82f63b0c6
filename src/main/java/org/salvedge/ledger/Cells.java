package org.salvedge.ledger;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.List;
import java.util.Objects;
import java.util.zip.CRC32C;
import org.jspecify.annotations.Nullable;

/** Rows of one table as SQLite keeps them: each cell a whole number, a text, or nothing. */
final class Cells {
    /** Stands for nothing among numbers; out of the range of every column. */
    static final long NULL = Long.MIN_VALUE;

    private static final int START_CAPACITY = 512;

    /** What the checksum says before each cell. */
    private static final byte EMPTY = 0;

    private static final byte NUMBER = 1;
    private static final byte TEXT = 2;
    private static final byte LATER = 3;

    private final int columns;
    private final Column<?, ?>[] later;
    private final boolean[] isLater;
    private final long[] numbers;
    private final @Nullable String[] texts;
    private final CRC32C crc = new CRC32C();
    private ByteBuffer bytes = ByteBuffer.allocate(START_CAPACITY);

    Cells(int rows, List<? extends Column<?, ?>> of) {
        columns = of.size();
        later = of.stream().filter(c -> c.before() != null).toArray(Column<?, ?>[]::new);
        isLater = new boolean[columns];
        for (Column<?, ?> column : later) {
            isLater[column.index()] = true;
        }
        numbers = new long[rows * columns];
        texts = new String[rows * columns];
    }

    /** What a cell holds. */
    record Cell(long number, @Nullable String text) {
        static final Cell EMPTY = new Cell(NULL, null);

        static Cell of(long number) {
            return new Cell(number, null);
        }

        static Cell of(String text) {
            return new Cell(NULL, text);
        }
    }

    void number(int row, int column, long value) {
        numbers[row * columns + column] = value;
        texts[row * columns + column] = null;
    }

    void text(int row, int column, @Nullable String value) {
        numbers[row * columns + column] = NULL;
        texts[row * columns + column] = value;
    }

    long number(int row, int column) {
        return numbers[row * columns + column];
    }

    /**
     * Checksum of a row: its table and entry, each cell with its kind, in order. A later column comes after them with its name, and
     * only where it holds something else than what the rows before it were given: their checksums stay as they were written.
     */
    int crc(char table, long entry, int row) {
        ByteBuffer out = bytes.clear();
        out.putChar(table).putLong(entry);
        for (int column = 0; column < columns; column++) {
            if (!isLater[column]) {
                out = cell(out, row * columns + column);
            }
        }
        for (Column<?, ?> column : later) {
            int i = row * columns + column.index();
            Cell before = Objects.requireNonNull(column.before());
            if (numbers[i] != before.number() || !Objects.equals(texts[i], before.text())) {
                out = text(out, LATER, column.name());
                out = cell(out, i);
            }
        }
        crc.reset();
        crc.update(out.flip());
        return (int) crc.getValue();
    }

    private ByteBuffer cell(ByteBuffer buffer, int i) {
        String text = texts[i];
        if (text != null) {
            return text(buffer, TEXT, text);
        }
        return numbers[i] == NULL
                ? room(buffer, 1).put(EMPTY)
                : room(buffer, 1 + Long.BYTES).put(NUMBER).putLong(numbers[i]);
    }

    private ByteBuffer text(ByteBuffer buffer, byte kind, String text) {
        byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
        return room(buffer, utf8.length + Long.BYTES)
                .put(kind)
                .putInt(utf8.length)
                .put(utf8);
    }

    private ByteBuffer room(ByteBuffer buffer, int more) {
        if (buffer.remaining() >= more) {
            return buffer;
        }
        ByteBuffer larger = ByteBuffer.allocate(Math.max(buffer.capacity() * 2, buffer.position() + more));
        larger.put(buffer.flip());
        bytes = larger;
        return larger;
    }

    /** Sets the parameters from {@code first} on. */
    void bind(PreparedStatement statement, int first, int row) throws SQLException {
        for (int c = 0; c < columns; c++) {
            int i = row * columns + c;
            String text = texts[i];
            if (text != null) {
                statement.setString(first + c, text);
            } else if (numbers[i] == NULL) {
                statement.setNull(first + c, java.sql.Types.NULL);
            } else {
                statement.setLong(first + c, numbers[i]);
            }
        }
    }
}
