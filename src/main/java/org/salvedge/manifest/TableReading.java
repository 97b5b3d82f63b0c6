package org.salvedge.manifest;

import java.util.List;

/**
 * A table of a manifest as it was understood.
 *
 * @param sheet "" where the file has no sheets
 * @param headerRow from 1
 * @param sets read from it
 */
public record TableReading(String sheet, int headerRow, List<ColumnReading> columns, int sets) {
    public TableReading {
        columns = List.copyOf(columns);
    }
}
