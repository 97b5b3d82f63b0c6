package org.salvedge.report;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.math.BigDecimal;
import java.util.List;
import org.apache.commons.csv.CSVFormat;
import org.apache.commons.csv.CSVPrinter;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.FormulaGuard;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;

/**
 * Tables as CSV of RFC 4180: one header row, comma, CRLF, quotes only where needed, decimal point, empty where undefined.
 *
 * <p>People open these files in spreadsheet programs, so text that those would take for a formula is marked ({@link FormulaGuard});
 * characters that a terminal might obey are shown as U+FFFD. A program that needs the text exactly as it is takes JSON; the history
 * package, which has its own writer, marks such text in the same way and takes the mark off at import.
 */
public final class CsvWriter {
    private static final CSVFormat RFC_4180 = CSVFormat.RFC4180.builder().get();

    private CsvWriter() {}

    public static void write(Table table, Appendable out) {
        try {
            CSVPrinter printer = new CSVPrinter(out, RFC_4180);
            List<Column> columns = table.columns();
            for (int c = 0; c < columns.size(); c++) {
                Column column = columns.get(c);
                if (column.inData()) {
                    printer.print(column.key());
                    if (columns.get(c).kind() == Kind.INTERVAL) {
                        printer.print(column.key() + "_low");
                        printer.print(column.key() + "_high");
                    }
                }
            }
            printer.println();
            for (List<@Nullable Object> row : table.rows()) {
                for (int c = 0; c < columns.size(); c++) {
                    if (columns.get(c).inData()) {
                        print(printer, columns.get(c).kind(), row.get(c));
                    }
                }
                printer.println();
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void print(CSVPrinter printer, Kind kind, @Nullable Object value) throws IOException {
        if (kind == Kind.INTERVAL) {
            Estimate e = value == null ? Estimate.UNDEFINED : (Estimate) value;
            printer.print(number(e.value()));
            printer.print(number(e.low()));
            printer.print(number(e.high()));
        } else {
            printer.print(value == null ? "" : text(kind, value));
        }
    }

    private static String text(Kind kind, Object value) {
        if (value instanceof Money money) {
            return money.toString();
        }
        if (value instanceof Double number) {
            return number(number);
        }
        if (value instanceof Quantity || value instanceof Number || value instanceof Boolean) {
            return value instanceof BigDecimal decimal ? decimal.toPlainString() : value.toString();
        }
        return kind.isText() ? FormulaGuard.shown(Visible.text(CellText.text(value))) : value.toString();
    }

    private static String number(double value) {
        return Double.isFinite(value) ? Double.toString(value) : "";
    }
}
