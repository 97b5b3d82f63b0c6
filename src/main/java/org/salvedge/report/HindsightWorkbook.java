package org.salvedge.report;

import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.jspecify.annotations.Nullable;
import org.salvedge.stats.Interval;
import org.salvedge.worth.HeldLot;
import org.salvedge.worth.HindsightVerdict;

/** How the estimates of past lots held, as an XLSX workbook: the verdict with charts of the calibration, then every lot. */
public final class HindsightWorkbook {
    private static final int BARS = 10;
    private static final int STEPS = 20;
    private static final int CHART_ROWS = 16;
    private static final int COLUMNS = 5;
    private static final int FIRST_WIDTH = 40;
    private static final int OTHER_WIDTH = 15;
    private static final int UNITS = 256;
    private static final int LINE = 105;

    private HindsightWorkbook() {}

    /** @throws IOException if the file cannot be written; then nothing of it is left */
    public static void write(List<HeldLot> lots, HindsightVerdict verdict, Paper paper, Path file) throws IOException {
        try (Book book = book(lots, verdict, paper)) {
            WholeFile.write(file, book::writeTo);
        }
    }

    private static Book book(List<HeldLot> lots, HindsightVerdict verdict, Paper paper) {
        Book book = new Book(paper, "Hindsight");
        XSSFSheet front = book.sheet("Hindsight");
        int below = front(book, front, verdict);
        double[] pit = lots.stream()
                .filter(l -> l.judged() != null)
                .mapToDouble(l -> java.util.Objects.requireNonNull(l.judged()).pit())
                .sorted()
                .toArray();
        XSSFSheet places =
                book.table("Places", "Where in their ranges the outcomes fell, for the charts.", places(pit), 1);
        XSSFSheet levels = book.table(
                "Calibration",
                "Share of outcomes at or below each level of their estimate, for the charts.",
                levels(pit),
                1);
        book.longTable(
                "Lots",
                "Every finished lot: the estimate of the day before its purchase, and what came of it.",
                HindsightReport.judged(lots).title("Past lots").build(),
                1);
        if (pit.length > 0) {
            charts(new Charts(front), below, places, levels);
        }
        Print.setUp(front, paper, false, 1);
        front.setDisplayGridlines(false);
        front.setHorizontallyCenter(true);
        return book;
    }

    private static int front(Book book, XSSFSheet sheet, HindsightVerdict v) {
        sheet.setColumnWidth(0, FIRST_WIDTH * UNITS);
        for (int c = 1; c < COLUMNS; c++) {
            sheet.setColumnWidth(c, OTHER_WIDTH * UNITS);
        }
        book.writer()
                .title(
                        sheet,
                        "Hindsight",
                        "What worth would have said of each finished lot on the day before its purchase, and what came of it.");
        int next = SheetWriter.HEADING_ROW;
        for (String words : v.words()) {
            for (String line : Paragraph.lines("", words, LINE)) {
                SheetWriter.words(
                        sheet.createRow(next++).createCell(0),
                        line,
                        book.styles().of(Kind.TEXT));
            }
        }
        next++;
        Row heading = sheet.createRow(next++);
        String[] headings = {"finished lots judged: " + v.lots(), "held", "of lots", "from", "to"};
        for (int c = 0; c < COLUMNS; c++) {
            SheetWriter.words(heading.createCell(c), headings[c], book.styles().heading(c > 0));
        }
        coverage(book, sheet.createRow(next++), "50 % range", v.inside50(), v);
        coverage(book, sheet.createRow(next++), "80 % range", v.inside80(), v);
        coverage(book, sheet.createRow(next++), "90 % range", v.inside90(), v);
        figure(book, sheet.createRow(next++), "mean place in the range (0.5 is right)", Kind.NUMBER, v.meanPit());
        figure(book, sheet.createRow(next++), "outcomes against estimates", Kind.RATIO, v.bias());
        figure(book, sheet.createRow(next++), "score (CRPS), smaller is better", Kind.MONEY_EACH, v.crps());
        figure(book, sheet.createRow(next++), "score of the plain average", Kind.MONEY_EACH, v.plainCrps());
        figure(book, sheet.createRow(next++), "skill against the plain average", Kind.RATIO, v.skill());
        if (!v.byLimit().isEmpty()) {
            next++;
            SheetWriter.words(
                    sheet.createRow(next++).createCell(0),
                    "outcomes against estimates, won with a",
                    book.styles().bold());
        }
        for (HindsightVerdict.Margin m : v.byLimit()) {
            figure(book, sheet.createRow(next++), m.words() + " (" + m.lots() + " lots)", Kind.RATIO, m.bias());
        }
        return next + 1;
    }

    private static void coverage(Book book, Row row, String name, int inside, HindsightVerdict v) {
        Interval range = v.range(inside);
        SheetWriter.words(row.createCell(0), name, book.styles().of(Kind.TEXT));
        if (range != null) {
            book.writer().put(row, 1, Kind.RATIO, (double) inside / v.lots());
            book.writer().put(row, 2, Kind.COUNT, inside);
            book.writer().put(row, 3, Kind.RATIO, range.low());
            book.writer().put(row, 4, Kind.RATIO, range.high());
        }
    }

    private static void figure(Book book, Row row, String name, Kind kind, @Nullable Object value) {
        SheetWriter.words(row.createCell(0), name, book.styles().of(Kind.TEXT));
        book.writer().put(row, 1, kind, value);
    }

    private static Table places(double[] pit) {
        Table.Builder table = Table.of(
                        Column.of("place", "place in\nthe range", Kind.KEY),
                        Column.of("lots", "lots", Kind.COUNT),
                        Column.of("due", "due", Kind.NUMBER))
                .title("Places");
        int[] n = new int[BARS];
        for (double p : pit) {
            n[Math.min(BARS - 1, (int) (p * BARS))]++;
        }
        for (int i = 0; i < BARS; i++) {
            table.row(i * 10 + "-" + (i + 1) * 10 + " %", n[i], pit.length / (double) BARS);
        }
        return table.build();
    }

    private static Table levels(double[] sorted) {
        Table.Builder table = Table.of(
                        Column.of("level", "level", Kind.KEY),
                        Column.of("came", "outcomes\nat or below", Kind.RATIO),
                        Column.of("due", "due", Kind.RATIO))
                .title("Calibration");
        for (int i = 0; i <= STEPS; i++) {
            double level = (double) i / STEPS;
            long below = java.util.Arrays.stream(sorted).filter(p -> p <= level).count();
            table.row(i * 5 + " %", sorted.length == 0 ? 0.0 : (double) below / sorted.length, level);
        }
        return table.build();
    }

    private static void charts(Charts charts, int below, XSSFSheet places, XSSFSheet levels) {
        int first = SheetWriter.FIRST_ROW;
        charts.bars(
                new Charts.Place(0, below, COLUMNS, below + CHART_ROWS),
                "Where outcomes fell in their ranges: even bars are right, a heap on the left means too high",
                "#,##0.0",
                false,
                new Charts.Run(places, 0, first, first + BARS - 1, ""),
                List.of(
                        new Charts.Run(places, 1, first, first + BARS - 1, "lots"),
                        new Charts.Run(places, 2, first, first + BARS - 1, "due")));
        charts.lines(
                new Charts.Place(0, below + CHART_ROWS, COLUMNS, below + 2 * CHART_ROWS),
                "Calibration: share of outcomes at or below each level of their estimate",
                "0\\ %",
                new Charts.Run(levels, 0, first, first + STEPS, ""),
                List.of(
                        new Charts.Run(levels, 1, first, first + STEPS, "outcomes"),
                        new Charts.Run(levels, 2, first, first + STEPS, "due")));
    }
}
