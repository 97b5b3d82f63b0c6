package org.salvedge.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.Comparator;
import java.util.List;
import java.util.stream.Collectors;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.salvedge.yield.Key;
import org.salvedge.yield.YieldRow;
import org.salvedge.yield.YieldTable;

/** A yield table as an XLSX workbook: a first page with the whole and the rows that weigh most, then every row. */
public final class YieldWorkbook {
    private static final int MOST = 15;
    /** Longer names would push one another off the charts. */
    private static final int LONGEST_NAME = 32;

    private static final int CHART_ROWS = 20;
    private static final int COLUMNS = 5;
    private static final int FIRST_WIDTH = 34;
    private static final int OTHER_WIDTH = 17;
    private static final int UNITS = 256;
    private static final List<Figure> SHOWN = List.of(
            Figure.SETS,
            Figure.DECIDED,
            Figure.SAVED,
            Figure.IN_PROGRESS,
            Figure.FIRST_PASS_YIELD,
            Figure.MINUTES_MEDIAN,
            Figure.MINUTES_P90,
            Figure.MINUTES_PER_SAVED,
            Figure.GONE,
            Figure.MARGIN_TOTAL,
            Figure.MARGIN_PER_SET,
            Figure.MARGIN_PER_HOUR);

    private YieldWorkbook() {}

    /**
     * @param yields the table
     * @param whole the same record without any keys; null where nothing is on record
     * @throws IOException if the file cannot be written; then nothing of it is left
     */
    public static void write(YieldTable yields, YieldTable whole, Paper paper, Path file) throws IOException {
        try (Book book = book(yields, whole.row(List.of()), paper)) {
            WholeFile.write(file, book::writeTo);
        }
    }

    private static Book book(YieldTable yields, YieldRow whole, Paper paper) {
        String keys = yields.by().stream().map(Key::code).collect(Collectors.joining(", "));
        Book book = new Book(paper, "Yield by " + keys);
        XSSFSheet front = book.sheet("Summary");
        Charted most = Charted.on(
                book, "Most decided", "The rows with most decided, for the charts of the first page.", most(yields));
        Table every = YieldSheets.table("Yield by " + keys, yields);
        book.longTable(
                "Yield",
                yields.by().stream().anyMatch(Key::ofAttempts)
                        ? "Rows count attempts; margins stand with the deciding attempt of each set."
                        : "Rows count sets.",
                every,
                yields.by().size());
        Defined defined = new Defined();
        defined.add(
                "Summary", Table.of(SHOWN.stream().map(Figure::column).toList()).build());
        defined.add("Most decided", most.table());
        defined.add("Yield", every);
        DefinitionSheet.write(book, defined);
        int below = figures(book, front, keys, whole);
        charts(new Charts(front), below, paper, most);
        Print.setUp(front, paper, false, 1);
        front.setDisplayGridlines(false);
        front.setHorizontallyCenter(true);
        return book;
    }

    private static Table most(YieldTable yields) {
        Table.Builder table = Table.of(
                        Figure.ROW.column(),
                        Figure.DECIDED.column(),
                        Figure.YIELD_SHRUNK.column(),
                        Figure.MINUTES_PER_SAVED.column(),
                        Figure.MARGIN_TOTAL.column())
                .title("Rows with most decided");
        yields.rows().stream()
                .filter(row -> row.decided() > 0)
                .sorted(Comparator.comparingInt(YieldRow::decided).reversed())
                .limit(MOST)
                .forEach(row -> table.row(
                        DisplayWidth.cut(
                                row.keys().stream().filter(k -> !k.isEmpty()).collect(Collectors.joining(", ")),
                                LONGEST_NAME,
                                "\u2026"),
                        row.decided(),
                        YieldSheets.value(Figure.YIELD_SHRUNK, row),
                        row.minutesPerSaved(),
                        row.marginTotal()));
        return table.build();
    }

    private static int figures(Book book, XSSFSheet sheet, String keys, YieldRow whole) {
        sheet.setColumnWidth(0, FIRST_WIDTH * UNITS);
        for (int c = 1; c < COLUMNS; c++) {
            sheet.setColumnWidth(c, OTHER_WIDTH * UNITS);
        }
        book.writer()
                .title(sheet, "Yield by " + keys, "The whole record first; every row stands on the sheet \"Yield\".");
        Row heading = sheet.createRow(SheetWriter.HEADING_ROW);
        String[] headings = {"the whole record, by sets", "", "from", "to", ""};
        for (int c = 0; c < COLUMNS; c++) {
            SheetWriter.words(heading.createCell(c), headings[c], book.styles().heading(c > 0));
        }
        int next = SheetWriter.FIRST_ROW;
        Row yield = sheet.createRow(next++);
        interval(book, yield, "yield (Wilson 95 %)", whole.raw(), whole.rawLow(), whole.rawHigh());
        Row shrunk = sheet.createRow(next++);
        interval(book, shrunk, "yield, shrunk (95 %)", whole.shrunk(), whole.shrunkLow(), whole.shrunkHigh());
        for (Figure figure : SHOWN) {
            Row row = sheet.createRow(next++);
            SheetWriter.words(row.createCell(0), figure.words(), book.styles().of(Kind.TEXT));
            book.writer().put(row, 1, figure.column().kind(), YieldSheets.value(figure, whole));
            if (row.getCell(1) != null) {
                String format = book.styles().formatWithCode(figure.column().kind());
                row.getCell(1).setCellStyle(book.styles().number(format));
            }
        }
        return next + 1;
    }

    private static void interval(Book book, Row row, String name, double value, double low, double high) {
        SheetWriter.words(row.createCell(0), name, book.styles().of(Kind.TEXT));
        book.writer().put(row, 1, Kind.RATIO, value);
        book.writer().put(row, 2, Kind.RATIO, low);
        book.writer().put(row, 3, Kind.RATIO, high);
    }

    private static void charts(Charts charts, int below, Paper paper, Charted most) {
        charts.bars(
                new Charts.Place(0, below, 2, below + CHART_ROWS),
                "Yield (shrunk) where most was decided",
                "0\\ %",
                true,
                most.run(Figure.ROW, 0, ""),
                List.of(most.run(Figure.YIELD_SHRUNK, 0, "yield")));
        charts.bars(
                new Charts.Place(2, below, COLUMNS, below + CHART_ROWS),
                "Margin there (" + paper.currency().getCurrencyCode() + ")",
                "#,##0",
                true,
                most.run(Figure.ROW, 0, ""),
                List.of(most.run(Figure.MARGIN_TOTAL, 0, "margin")));
    }
}
