package org.salvedge.report;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.List;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.salvedge.worth.Appraisal;
import org.salvedge.worth.LineWorth;
import org.salvedge.worth.Predictive;

/**
 * The answer to a buyer as a bid sheet: price, premium, freight, labour and target are live cells, from which profit, chance of a
 * loss and highest bid are worked out by formulas over stored quantiles; then every line of the list, and what all rests on.
 */
public final class BidWorkbook {
    /** Steps between the stored quantiles. */
    static final int STEPS = 400;

    static final String QUANTILES = "Quantiles";
    private static final int BARS = 40;
    private static final double TAIL = 0.0025;
    private static final int CHART_ROWS = 15;
    private static final int UNITS = 256;

    private BidWorkbook() {}

    /**
     * @param labourRate per hour, as the answer was made with
     * @param from where the list was read from, in words
     * @throws IOException if the file cannot be written; then nothing of it is left
     */
    public static void write(Appraisal a, BigDecimal labourRate, String from, Paper paper, Path file)
            throws IOException {
        try (Book book = book(a, labourRate, from, paper)) {
            WholeFile.write(file, book::writeTo);
        }
    }

    private static Book book(Appraisal a, BigDecimal labourRate, String from, Paper paper) {
        Book book = new Book(paper, "Bid sheet");
        XSSFSheet front = book.sheet("Bid");
        XSSFSheet quantiles = quantiles(book, a.worth().recovery());
        Table shape = shape(a.worth().recovery());
        XSSFSheet bars = book.table("Distribution", "Shares of the simulated outcomes, for the chart.", shape, 1);
        BidSheet sheet = new BidSheet(book, front, a, labourRate);
        int below = sheet.write(from);
        int last = SheetWriter.FIRST_ROW + BARS - 1;
        new Charts(front)
                .bars(
                        new Charts.Place(0, below, BidSheet.COLUMNS, below + CHART_ROWS),
                        "What the lot should bring before it is paid for ("
                                + paper.currency().getCurrencyCode() + ")",
                        "0\\ %",
                        false,
                        new Charts.Run(bars, 0, SheetWriter.FIRST_ROW, last, ""),
                        List.of(new Charts.Run(bars, 1, SheetWriter.FIRST_ROW, last, "share of outcomes")));
        int prices = sheet.lossByPrice(quantiles);
        new Charts(front)
                .lines(
                        new Charts.Place(0, below + CHART_ROWS, BidSheet.COLUMNS, below + CHART_ROWS + CHART_ROWS - 2),
                        "Chance of a loss by price",
                        "0\\ %",
                        new Charts.Run(quantiles, 3, SheetWriter.FIRST_ROW, prices, ""),
                        List.of(new Charts.Run(quantiles, 4, SheetWriter.FIRST_ROW, prices, "chance of a loss")));
        book.longTable("Lines", "Every line of the list; what they bring adds up to the mean of the lot.", lines(a), 2);
        book.table("Notes", "What could sink it, and what is assumed.", notes(a), 1);
        Print.setUp(front, paper, false, 1);
        front.setDisplayGridlines(false);
        front.setHorizontallyCenter(true);
        book.recalculate();
        return book;
    }

    /** Outcomes that are reached with a chance of 1 - p; of p = 0 the smallest. */
    private static XSSFSheet quantiles(Book book, Predictive r) {
        XSSFSheet sheet = book.sheet(QUANTILES);
        book.writer()
                .title(
                        sheet,
                        "Stored quantiles",
                        "Recovery not reached with chance p, at the answer's labour rate; for the bid sheet.");
        Row heading = sheet.createRow(SheetWriter.HEADING_ROW);
        String[] headings = {"p", "recovery", "", "price", "chance\nof a loss"};
        for (int c = 0; c < headings.length; c++) {
            if (!headings[c].isEmpty()) {
                SheetWriter.words(
                        heading.createCell(c), headings[c], book.styles().heading(true));
            }
        }
        heading.setHeightInPoints(SheetWriter.TWO_LINES);
        for (int i = 0; i <= STEPS; i++) {
            Row row = sheet.createRow(SheetWriter.FIRST_ROW + i);
            double p = (double) i / STEPS;
            row.createCell(0).setCellValue(p);
            row.getCell(0).setCellStyle(book.styles().number("0.0000"));
            row.createCell(1).setCellValue(r.reachedWith(1 - p));
            row.getCell(1).setCellStyle(book.styles().of(Kind.MONEY));
        }
        for (int c = 0; c < headings.length; c++) {
            sheet.setColumnWidth(c, 14 * UNITS);
        }
        sheet.createFreezePane(0, SheetWriter.FIRST_ROW);
        Print.setUp(sheet, book.paper(), false, 1);
        // The quantiles are there for the formulas; on paper the chances of a loss are of use.
        Print.firstRows(sheet, SheetWriter.FIRST_ROW + BidSheet.PRICES, headings.length);
        return sheet;
    }

    private static Table shape(Predictive r) {
        Table.Builder table = Table.of(
                        Column.of("middle", "recovery,\nmiddle of bar", Kind.COUNT),
                        Column.of("share", "share of\noutcomes", Kind.RATIO))
                .title("Distribution");
        double low = r.quantile(TAIL);
        double high = r.quantile(1 - TAIL);
        double width = (high - low) / BARS;
        for (int i = 0; i < BARS; i++) {
            double from = low + i * width;
            table.row(Math.round(from + width / 2), r.below(i == BARS - 1 ? high : from + width) - r.below(from));
        }
        return table.build();
    }

    private static Table lines(Appraisal a) {
        Table.Builder table = Table.of(
                        Column.of("sheet", "sheet", Kind.TEXT),
                        Column.of("line", "line", Kind.COUNT),
                        Column.of("sets", "sets", Kind.COUNT),
                        Column.of("model", "model", Kind.TEXT),
                        Column.of("family", "family", Kind.TEXT),
                        Column.of("claimed", "claimed", Kind.TEXT),
                        Column.of("brings", "should\nbring", Kind.MONEY_EACH),
                        Column.of("each", "each", Kind.MONEY_EACH),
                        Column.of("spread", "give or\ntake", Kind.MONEY_EACH),
                        Column.of("saved", "share\nsaved", Kind.RATIO),
                        Column.of("minutes", "bench\nminutes", Kind.MINUTES),
                        Column.of("route", "most\nlikely", Kind.TEXT),
                        Column.of("basis", "rests on", Kind.TEXT))
                .title("Lines of the list");
        for (LineWorth l : a.worth().lines()) {
            table.row(
                    l.sheet(),
                    l.line(),
                    l.sets(),
                    l.model(),
                    l.family(),
                    l.claimed(),
                    l.recoveryMean(),
                    l.recoveryMean() / l.sets(),
                    l.recoverySd(),
                    l.pSaved(),
                    l.minutesMean(),
                    l.route(),
                    l.basis());
        }
        return table.build();
    }

    private static Table notes(Appraisal a) {
        Table.Builder table = Table.of(Column.of("kind", "kind", Kind.TEXT), Column.of("words", "what", Kind.TEXT))
                .title("Notes");
        a.grounds().doubts().forEach(d -> table.row("doubt", d));
        a.grounds().assumed().forEach(d -> table.row("assumed", d));
        return table.note("The answer rests on " + a.worth().historyLots() + " lots and "
                        + a.worth().historySets() + " sets of the shop's own record"
                        + (a.grounds().latest() == null
                                ? ""
                                : " up to " + a.grounds().latest()) + ".")
                .note("Another labour rate moves every outcome by the mean bench hours: near, not exact.")
                .build();
    }
}
