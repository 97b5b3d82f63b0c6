package org.salvedge.ledger;

import java.nio.ByteBuffer;
import java.nio.charset.StandardCharsets;
import java.sql.PreparedStatement;
import java.sql.SQLException;
import java.util.zip.CRC32C;
import org.jspecify.annotations.Nullable;

/** Rows of one table as SQLite keeps them: each cell a whole number, a text, or nothing. */
final class Cells {
    /** Stands for nothing among numbers; out of the range of every column. */
    static final long NULL = Long.MIN_VALUE;

    private static final int START_CAPACITY = 512;

    private final int columns;
    private final long[] numbers;
    private final @Nullable String[] texts;
    private final CRC32C crc = new CRC32C();
    private ByteBuffer bytes = ByteBuffer.allocate(START_CAPACITY);

    Cells(int rows, int columns) {
        this.columns = columns;
        numbers = new long[rows * columns];
        texts = new String[rows * columns];
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

    /** Checksum of a row: its table and entry, and each cell with its kind, in order. */
    int crc(char table, long entry, int row) {
        ByteBuffer out = bytes.clear();
        out.putChar(table).putLong(entry);
        for (int i = row * columns; i < (row + 1) * columns; i++) {
            String text = texts[i];
            if (text != null) {
                byte[] utf8 = text.getBytes(StandardCharsets.UTF_8);
                out = room(out, utf8.length + Long.BYTES);
                out.put((byte) 2).putInt(utf8.length).put(utf8);
            } else if (numbers[i] == NULL) {
                out = room(out, 1).put((byte) 0);
            } else {
                out = room(out, 1 + Long.BYTES).put((byte) 1).putLong(numbers[i]);
            }
        }
        crc.reset();
        crc.update(out.flip());
        return (int) crc.getValue();
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
