package org.salvedge.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import java.util.Objects;
import java.util.concurrent.CompletableFuture;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.salvedge.yield.MonthReview;

/** The monthly review as an XLSX workbook: a first page that fits one sheet of paper, then what stands behind it. */
public final class MonthWorkbook {
    private static final int UPPER_CHARTS = 12;
    private static final int LOWER_CHARTS = 15;

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
        write(review, MonthNotes.NONE, paper, file);
    }

    /**
     * @throws IOException if the file cannot be written; then nothing of it is left
     */
    public static void write(MonthReview review, MonthNotes notes, Paper paper, Path file) throws IOException {
        try (Book book = book(review, notes, paper)) {
            WholeFile.write(file, book::writeTo);
        }
    }

    private static Book book(MonthReview review, MonthNotes notes, Paper paper) {
        String month = review.month().toString();
        Book book = new Book(paper, "Month " + month);
        XSSFSheet front = book.sheet("Month");
        Map<String, Charted> charted = new HashMap<>();
        Defined defined = new Defined();
        for (MonthSheets.Sheet sheet : MonthSheets.of(review, notes)) {
            defined.add(sheet.name(), sheet.table());
            if (sheet.charted()) {
                charted.put(sheet.name(), Charted.on(book, sheet.name(), sheet.about(), sheet.table()));
            } else if (sheet.lists()) {
                book.list(sheet.name(), sheet.about(), sheet.table(), sheet.frozen());
            } else {
                book.longTable(sheet.name(), sheet.about(), sheet.table(), sheet.frozen());
            }
        }
        DefinitionSheet.write(book, defined);
        MonthFront page = new MonthFront(book, front, review, notes);
        int below = page.write();
        charts(new Charts(front), below, month, paper, charted);
        page.deeds(below + UPPER_CHARTS + LOWER_CHARTS);
        Print.setUp(front, paper, false, 1);
        front.setDisplayGridlines(false);
        front.setHorizontallyCenter(true);
        return book;
    }

    private static void charts(Charts charts, int below, String month, Paper paper, Map<String, Charted> on) {
        int middle = below + UPPER_CHARTS;
        int end = middle + LOWER_CHARTS;
        String currency = paper.currency().getCurrencyCode();
        Charted months = Objects.requireNonNull(on.get(MonthSheets.CHART));
        boolean chart = !months.table().rows().isEmpty();
        if (chart) {
            charts.lines(
                    new Charts.Place(0, below, 2, middle),
                    "Yield by month, with control limits",
                    "0\\ %",
                    months.run(Figure.POINT, 0, ""),
                    List.of(
                            months.run(Figure.VALUE, 0, "yield"),
                            months.run(Figure.CENTRE, 0, "centre"),
                            months.run(Figure.LIMIT_LOW, 0, "lower"),
                            months.run(Figure.LIMIT_HIGH, 0, "upper")));
        }
        Charted money = Objects.requireNonNull(on.get(MonthSheets.MONEY));
        charts.waterfall(
                new Charts.Place(chart ? 2 : 0, below, MonthFront.COLUMNS, middle),
                "From takings to margin (" + currency + ")",
                "#,##0",
                money.run(Figure.STEP, 0, ""),
                List.of(
                        money.run(Figure.CHART_BASE, 0, "from"),
                        money.run(Figure.CHART_ABOVE, 0, "above"),
                        money.run(Figure.CHART_BELOW, 0, "below")));
        Charted bids = Objects.requireNonNull(on.get(MonthSheets.OUTCOMES));
        boolean lots = !bids.table().rows().isEmpty();
        Charted time = Objects.requireNonNull(on.get(MonthSheets.TIME));
        charts.bars(
                new Charts.Place(0, middle, lots ? 2 : MonthFront.COLUMNS, end),
                "Minutes per saved set, by fix",
                "#,##0",
                true,
                time.run(Figure.FIX, 0, ""),
                List.of(
                        time.run(Figure.MINUTES_PER_SAVED, 0, month),
                        time.run(Figure.PER_SAVED_BEFORE, 0, "month before")));
        if (!lots) {
            return;
        }
        charts.bars(
                new Charts.Place(2, middle, MonthFront.COLUMNS, end),
                "Lots finished last: cost and outcome (" + currency + ")",
                "#,##0",
                false,
                bids.run(Figure.LOT, 0, ""),
                List.of(
                        bids.run(Figure.LANDED, 0, "landed cost"),
                        bids.run(Figure.P50, 0, "said when bid for"),
                        bids.run(Figure.RECOVERED, 0, "recovered")));
    }
}
