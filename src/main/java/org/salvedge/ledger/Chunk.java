package org.salvedge.ledger;

import java.sql.PreparedStatement;
import java.sql.SQLException;
import org.salvedge.shop.Fact;

/** Rows of one table that are ready to be written, with entry numbers one after the other. */
final class Chunk<F extends Fact> {
    static final int ROWS = 1000;

    private final Table<F> table;
    private final Cells cells;
    private final int[] crcs = new int[ROWS];
    private final long firstEntry;
    private int rows;

    Chunk(Table<F> table, long firstEntry) {
        this.table = table;
        this.firstEntry = firstEntry;
        cells = table.newCells(ROWS);
    }

    Table<F> table() {
        return table;
    }

    boolean isFull() {
        return rows == ROWS;
    }

    int rows() {
        return rows;
    }

    void add(F fact, Codec codec) throws SQLException {
        table.encode(fact, cells, rows, codec);
        crcs[rows] = cells.crc(table.mark(), firstEntry + rows, rows);
        rows++;
    }

    /** @param insert a statement of the table's {@link Table#insert} */
    void write(PreparedStatement insert) throws SQLException {
        for (int row = 0; row < rows; row++) {
            table.bind(insert, firstEntry + row, cells, row, crcs[row]);
            insert.addBatch();
        }
        insert.executeBatch();
    }
}
