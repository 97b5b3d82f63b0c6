package org.salvedge.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.salvedge.yield.MonthReview;

/** The monthly review as an XLSX workbook: a first page that fits one sheet of paper, then what stands behind it. */
public final class MonthWorkbook {
    private static final int CHART_ROWS = 14;
    private static final int TALL_CHART_ROWS = 18;

    private MonthWorkbook() {}

    /**
     * Begins to load what writes workbooks in the background. Not needed, but a command that has something to read first saves that
     * time.
     */
    public static CompletableFuture<Void> prepare() {
        return CompletableFuture.runAsync(Book::practise);
    }

    /** @throws IOException if the file cannot be written; then nothing of it is left */
    public static void write(MonthReview review, Paper paper, Path file) throws IOException {
        try (Book book = book(review, paper)) {
            WholeFile.write(file, book::writeTo);
        }
    }

    private static Book book(MonthReview review, Paper paper) {
        String month = review.month().toString();
        Book book = new Book(paper, "Month " + month);
        MonthTables tables = new MonthTables(review);
        XSSFSheet front = book.sheet("Month");
        Charted byMonth = Charted.on(
                book,
                "By month",
                "Thirteen months. Sets stand under the month they were decided in, margins under that of the exit.",
                tables.byMonth());
        book.longTable(
                "Yield",
                "Attempts on sets decided in " + month + ", by family and fix.",
                YieldSheets.ofMonth("Yield by family and fix", review.byFamilyAndFix()),
                2);
        Charted time = Charted.on(
                book,
                "Time per fix",
                "Attempts on sets decided in " + month + "; failures are charged too.",
                tables.timePerFix());
        book.table("Money", "Sets that left in " + month + ", over their whole time in the shop.", tables.money(), 1);
        book.longTable(
                "Margin",
                "Sets decided in " + month + " and margins of sets that left in it, by family.",
                YieldSheets.ofMonth("Margin by family", review.byFamily()),
                1);
        Charted faults = Charted.on(
                book,
                "Faults",
                "Sets decided in " + month + " by the fault of their deciding attempt.",
                tables.faults());
        book.longTable("Lots", "Every lot, as it stood when " + month + " ended.", tables.lots(), 1);
        book.longTable(
                "Open sets", "Sets still here when " + month + " ended, those longest here first.", tables.open(), 1);
        book.table("Age", "Sets still here when " + month + " ended.", tables.ages(), 1);
        book.longTable("Comebacks", "Sold sets that came back in " + month + ".", tables.comebacks(), 2);
        DefinitionSheet.write(book);

        int below = new MonthFront(book, front, review).write();
        charts(new Charts(front), below, month, paper, byMonth, time, faults);
        Print.setUp(front, paper, false, 1);
        front.setDisplayGridlines(false);
        front.setHorizontallyCenter(true);
        return book;
    }

    private static void charts(
            Charts charts, int below, String month, Paper paper, Charted byMonth, Charted time, Charted faults) {
        int middle = below + CHART_ROWS;
        int end = middle + TALL_CHART_ROWS;
        charts.lines(
                new Charts.Place(0, below, 2, middle),
                "Yield by month, with 95 % interval",
                "0%",
                byMonth.run(Figure.MONTH, 0, ""),
                List.of(
                        byMonth.run(Figure.YIELD, 0, "yield"),
                        byMonth.run(Figure.YIELD, 1, "from"),
                        byMonth.run(Figure.YIELD, 2, "to")));
        charts.bars(
                new Charts.Place(2, below, MonthFront.COLUMNS, middle),
                "Margin of sets gone, by month (" + paper.currency().getCurrencyCode() + ")",
                "#,##0",
                false,
                byMonth.run(Figure.MONTH, 0, ""),
                List.of(byMonth.run(Figure.MARGIN_TOTAL, 0, "margin")));
        charts.bars(
                new Charts.Place(0, middle, 2, end),
                "Minutes per saved set, by fix",
                "#,##0",
                true,
                time.run(Figure.FIX, 0, ""),
                List.of(
                        time.run(Figure.MINUTES_PER_SAVED, 0, month),
                        time.run(Figure.PER_SAVED_BEFORE, 0, "month before")));
        charts.bars(
                new Charts.Place(2, middle, MonthFront.COLUMNS, end),
                "Faults met, share of sets decided",
                "0%",
                true,
                faults.run(Figure.FAULT, 0, ""),
                List.of(faults.run(Figure.SHARE, 0, month), faults.run(Figure.SHARE_BEFORE, 0, "month before")));
    }
}
