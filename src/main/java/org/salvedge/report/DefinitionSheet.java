package org.salvedge.report;

import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFSheet;

/** The sheet that defines every heading of the workbook. */
final class DefinitionSheet {
    static final String NAME = "Definitions";
    private static final int NAME_WIDTH = 30;
    private static final int TEXT_WIDTH = 100;
    private static final int UNITS = 256;

    private DefinitionSheet() {}

    static void write(Book book) {
        XSSFSheet sheet = book.sheet(NAME);
        sheet.setColumnWidth(0, NAME_WIDTH * UNITS);
        sheet.setColumnWidth(1, TEXT_WIDTH * UNITS);
        book.writer()
                .title(
                        sheet,
                        "What each figure means",
                        "Amounts are in " + book.paper().currency().getCurrencyCode()
                                + ", without tax that is passed on. Minutes not written down count as 0 in sums and not at all in medians.");
        Row heading = sheet.createRow(SheetWriter.HEADING_ROW);
        SheetWriter.words(heading.createCell(0), "figure", book.styles().heading(false));
        SheetWriter.words(heading.createCell(1), "definition", book.styles().heading(false));
        int r = SheetWriter.FIRST_ROW;
        for (Figure figure : Figure.values()) {
            Row row = sheet.createRow(r++);
            SheetWriter.words(row.createCell(0), figure.words(), book.styles().bold());
            SheetWriter.words(row.createCell(1), figure.meaning(), book.styles().wrapped());
            int lines = 1 + figure.meaning().length() / TEXT_WIDTH;
            row.setHeightInPoints(lines * SheetWriter.LINE_POINTS);
        }
        sheet.createFreezePane(1, SheetWriter.FIRST_ROW);
        Print.setUp(sheet, book.paper(), true);
        sheet.setRepeatingRows(new CellRangeAddress(SheetWriter.HEADING_ROW, SheetWriter.HEADING_ROW, -1, -1));
    }
}
