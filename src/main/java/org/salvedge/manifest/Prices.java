package org.salvedge.manifest;

import java.math.BigDecimal;
import java.math.RoundingMode;
import java.util.Map;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.words.Field;

/**
 * Which of a table's amounts is the asking price of one set: what the seller asks before retail value, the price of one before
 * that of the line.
 *
 * @param unit column of the price of one set, or {@link Table#ABSENT}
 * @param line column of the price of the whole line, or {@link Table#ABSENT}
 */
record Prices(int unit, int line, Amount unitAmount, Amount lineAmount) {
    private static final int CENTS = 2;

    /** @param amounts how each column of amounts writes them */
    static Prices of(Map<Field, Integer> columns, Map<Integer, Amount> amounts, Amount none) {
        boolean asks = columns.containsKey(Field.ASK_UNIT)
                || columns.containsKey(Field.ASK)
                || columns.containsKey(Field.ASK_LINE);
        int unit = asks ? first(columns, Field.ASK_UNIT, Field.ASK) : first(columns, Field.RETAIL_UNIT, Field.RETAIL);
        int line = first(columns, asks ? Field.ASK_LINE : Field.RETAIL_LINE, Field.NONE);
        return new Prices(unit, line, amounts.getOrDefault(unit, none), amounts.getOrDefault(line, none));
    }

    private static int first(Map<Field, Integer> columns, Field best, Field other) {
        return columns.getOrDefault(best, columns.getOrDefault(other, Table.ABSENT));
    }

    int shownColumn() {
        return unit != Table.ABSENT ? unit : line;
    }

    /** The price of one set; the column it was read from is that of {@link #usedColumn}. */
    Reading<BigDecimal> read(Cell[] row, int sets) {
        int used = usedColumn(row);
        if (used == Table.ABSENT) {
            return Reading.nothing();
        }
        if (used == unit) {
            return unitAmount.read(row[unit]);
        }
        Reading<BigDecimal> whole = lineAmount.read(row[line]);
        BigDecimal value = whole.value();
        if (value == null || sets == 1) {
            return whole;
        }
        return Reading.of(value.divide(BigDecimal.valueOf(sets), CENTS, RoundingMode.HALF_UP));
    }

    /** The line's price stands in where that of one set is blank. */
    int usedColumn(Cell[] row) {
        boolean unitBlank = unit == Table.ABSENT
                || unitAmount.read(row[unit]).value() == null
                        && !unitAmount.read(row[unit]).isBad();
        return unitBlank && line != Table.ABSENT ? line : unit;
    }
}
