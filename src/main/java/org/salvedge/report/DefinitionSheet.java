package org.salvedge.report;

import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/** The sheet that defines every heading of the workbook. */
final class DefinitionSheet {
    static final String NAME = "Definitions";
    private static final int NAME_WIDTH = 24;
    private static final int TEXT_WIDTH = 68;
    private static final int WHERE_WIDTH = 30;
    private static final int UNITS = 256;
    /** Bold letters against plain ones. */
    private static final double BOLD = 1.1;

    private static final double SMALL = (Styles.POINTS - 1.0) / Styles.POINTS;
    private static final double INDENT = 1.3;

    private DefinitionSheet() {}

    static void write(Book book, Defined defined) {
        XSSFSheet sheet = book.sheet(NAME);
        sheet.setColumnWidth(0, NAME_WIDTH * UNITS);
        sheet.setColumnWidth(1, TEXT_WIDTH * UNITS);
        sheet.setColumnWidth(2, WHERE_WIDTH * UNITS);
        book.writer()
                .title(
                        sheet,
                        "What each figure means",
                        "Amounts are in " + book.paper().currency().getCurrencyCode()
                                + ", without tax that is passed on. Minutes not written down count as 0 in sums and not at all in medians.");
        Row heading = sheet.createRow(SheetWriter.HEADING_ROW);
        SheetWriter.words(heading.createCell(0), "figure", book.styles().heading(false));
        SheetWriter.words(heading.createCell(1), "definition", book.styles().heading(false));
        SheetWriter.words(heading.createCell(2), "stands on", book.styles().heading(false));
        int r = SheetWriter.FIRST_ROW;
        for (Figure figure : defined.figures()) {
            Row row = sheet.createRow(r++);
            String where = defined.where(figure);
            SheetWriter.words(row.createCell(0), figure.words(), book.styles().indented(Styles.POINTS, true));
            SheetWriter.words(row.createCell(1), figure.meaning(), book.styles().indented(Styles.POINTS, false));
            SheetWriter.words(row.createCell(2), where, book.styles().indented(Styles.POINTS - 1, false));
            int lines = Math.max(
                    TextLines.of(figure.words(), (NAME_WIDTH - INDENT) / BOLD),
                    Math.max(
                            TextLines.of(figure.meaning(), TEXT_WIDTH - INDENT),
                            TextLines.of(where, (WHERE_WIDTH - INDENT) / SMALL)));
            row.setHeightInPoints(lines * SheetWriter.LINE_POINTS);
        }
        sheet.createFreezePane(1, SheetWriter.FIRST_ROW);
        Print.setUp(sheet, book.paper(), false);
        sheet.setRepeatingRows(new CellRangeAddress(SheetWriter.HEADING_ROW, SheetWriter.HEADING_ROW, -1, -1));
    }
}
