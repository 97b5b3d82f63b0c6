package org.salvedge.report;

import org.apache.poi.xssf.usermodel.XSSFSheet;

/** A sheet of one table whose figures charts draw on. */
record Charted(XSSFSheet sheet, Table table) {

    static Charted on(Book book, String name, String about, Table table) {
        return new Charted(book.table(name, about, table, 1), table);
    }

    /**
     * @param part of an interval: 0 the figure, 1 its lower end, 2 its upper end
     * @param name in the legend
     */
    Charts.Run run(Figure figure, int part, String name) {
        int last = SheetWriter.FIRST_ROW + Math.max(1, table.rows().size()) - 1;
        return new Charts.Run(sheet, SheetWriter.column(table, figure) + part, SheetWriter.FIRST_ROW, last, name);
    }
}
