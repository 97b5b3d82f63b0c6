package org.salvedge.report;

import java.math.BigDecimal;
import java.time.YearMonth;
import java.util.List;
import java.util.function.Function;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.jspecify.annotations.Nullable;
import org.salvedge.yield.Deed;
import org.salvedge.yield.MonthFigures;
import org.salvedge.yield.MonthReview;
import org.salvedge.yield.Range;

/** The first page of the monthly review: three sentences, the figures against other months, charts, what is worth doing. */
final class MonthFront {
    static final int COLUMNS = 5;
    private static final int FIRST_WIDTH = 34;
    private static final int OTHER_WIDTH = 17;
    private static final int UNITS = 256;
    private static final float GAP = 6;

    private final Book book;
    private final XSSFSheet sheet;
    private final MonthReview review;
    private final MonthNotes notes;
    private final MonthWords words;
    private final FrontLinks links;
    private int next;

    MonthFront(Book book, XSSFSheet sheet, MonthReview review, MonthNotes notes) {
        this.book = book;
        this.sheet = sheet;
        this.review = review;
        this.notes = notes;
        links = new FrontLinks(review);
        words = new MonthWords(review);
    }

    /** Writes sentences and figures; returns the first row that is free below them, for the charts. */
    int write() {
        sheet.setColumnWidth(0, FIRST_WIDTH * UNITS);
        for (int c = 1; c < COLUMNS; c++) {
            sheet.setColumnWidth(c, OTHER_WIDTH * UNITS);
        }
        line(
                review.month() + " at " + Visible.text(book.paper().shop()) + notes.behindTitle(),
                book.styles().title(),
                SheetWriter.TITLE_HEIGHT);
        for (String sentence : words.sentences()) {
            across(sentence, 0, COLUMNS - 1, sheet.createRow(next++));
        }
        SincePrinting since = notes.since();
        if (since != null) {
            across(since.sentence(), 0, COLUMNS - 1, sheet.createRow(next++));
        }
        heading("", review.month().toString(), "month before", "a year before", "change to\nmonth before");
        compare("sets received", Kind.COUNT, MonthFigures::received);
        compare("sets decided", Kind.COUNT, m -> m.counted().decided());
        compare("sets saved", Kind.COUNT, m -> m.counted().saved());
        compare("yield", Kind.RATIO, m -> m.counted().raw());
        between(
                Kind.RATIO,
                m -> new Range(
                        m.counted().raw(), m.counted().rawLow(), m.counted().rawHigh()));
        compare("minutes per saved set", Kind.MINUTES, m -> m.counted().minutesPerSaved());
        between(Kind.MINUTES, MonthFigures::minutesPerSaved);
        compare("sets gone", Kind.COUNT, m -> m.counted().gone());
        compare(
                "margin",
                Kind.MONEY,
                m -> m.counted().gone() == 0 ? null : m.counted().marginTotal());
        compare("   per set", Kind.MONEY_EACH, m -> m.counted().marginPerSet());
        between(Kind.MONEY_EACH, MonthFigures::marginPerSet);
        compare("   per bench hour", Kind.MONEY_EACH, m -> m.counted().marginPerHour());
        compare("comebacks, their cost", Kind.MONEY, MonthFigures::comebackCost);
        int unmet = notes.releases().unmet();
        releases("sales, a release check unmet", unmet, 0);
        releases("sales, a release check not on record", notes.releases().unknown(), unmet);
        return gap();
    }

    /** Room above and below the charts; returns the row after it. */
    private int gap() {
        sheet.createRow(next++).setHeightInPoints(GAP);
        return next;
    }

    /** A count of the month that leads to the sales behind it; where there are none, nothing. */
    private void releases(String name, int count, int first) {
        if (count > 0) {
            Row row = words(name);
            book.writer().put(row, 1, Kind.COUNT, new Linked(count, ReleaseExceptions.SHEET, first, first + count - 1));
            row.getCell(1).setCellStyle(book.styles().linkedNumber("#,##0"));
        }
    }

    /** What is worth doing, below the charts. */
    void deeds(int row) {
        next = row;
        gap();
        heading("worth doing, a month", "", "", "worth", "95 % interval");
        List<Deed> deeds = review.why().deeds();
        for (Deed deed : deeds) {
            Row line = sheet.createRow(next++);
            across(words.deed(deed), 0, 2, line);
            SheetWriter.words(
                    line.createCell(3),
                    Digits.grouped(deed.worth().value(), 0) + " "
                            + review.currency().getCurrencyCode(),
                    book.styles().right());
            SheetWriter.words(
                    line.createCell(4), words.worth(deed.worth()), book.styles().right());
            Linked why = links.deed(deed);
            if (why != null) {
                // Not every program breaks the lines of a link: it cuts what is longer than one.
                boolean one = line.getHeightInPoints() < 2 * SheetWriter.LINE_POINTS;
                Cell leads = line.getCell(one ? 0 : 3);
                book.writer().lead(leads, why);
                leads.setCellStyle(
                        one ? book.styles().linkWrapped() : book.styles().link());
            }
        }
        if (!deeds.isEmpty()) {
            SheetWriter.words(
                    sheet.createRow(next++).createCell(0),
                    "In months like the last three; the sheets led to count their own span. No set is counted under two of these.",
                    book.styles().small());
        }
        if (deeds.isEmpty()) {
            across("Nothing stands out as worth changing.", 0, COLUMNS - 1, sheet.createRow(next++));
        }
    }

    private void across(String text, int from, int to, Row row) {
        double characters = from == 0 ? FIRST_WIDTH - OTHER_WIDTH : 0;
        characters += (to - from + 1) * OTHER_WIDTH + (to - from) * TextLines.PADDING;
        String unbroken = Unbroken.text(text);
        row.setHeightInPoints(TextLines.of(unbroken, characters) * SheetWriter.LINE_POINTS + 2);
        SheetWriter.words(row.createCell(from), unbroken, book.styles().wrapped());
        if (to > from) {
            sheet.addMergedRegion(new CellRangeAddress(row.getRowNum(), row.getRowNum(), from, to));
        }
    }

    private List<MonthFigures> months() {
        return List.of(review.now(), review.before(), review.yearAgo());
    }

    /** The interval of the figure above, where there is one. */
    private void between(Kind kind, Function<MonthFigures, Range> interval) {
        if (months().stream().noneMatch(m -> interval.apply(m).known())) {
            return;
        }
        Row row = words("   95 % interval");
        int c = 1;
        for (MonthFigures m : months()) {
            Range range = interval.apply(m);
            if (range.known()) {
                int digits = kind == Kind.RATIO
                        ? 1
                        : kind == Kind.MINUTES ? 0 : book.paper().moneyDigits();
                double scale = kind == Kind.RATIO ? 100 : 1;
                SheetWriter.words(
                        row.createCell(c),
                        Digits.grouped(range.low() * scale, digits) + " to "
                                + Digits.grouped(range.high() * scale, digits) + (kind == Kind.RATIO ? " %" : ""),
                        book.styles().right());
            }
            c++;
        }
    }

    private void compare(String name, Kind kind, Function<MonthFigures, @Nullable Object> figure) {
        Row row = sheet.createRow(next++);
        book.writer().put(row, 0, Kind.TEXT, new Linked(name, FrontLinks.sheet(name), 0, 0));
        Object now = figure.apply(review.now());
        Object before = figure.apply(review.before());
        put(row, 1, kind, now);
        lead(row.getCell(1), name, kind, review.month());
        put(row, 2, kind, before);
        lead(row.getCell(2), name, kind, review.month().minusMonths(1));
        put(row, 3, kind, figure.apply(review.yearAgo()));
        if (known(now) && known(before)) {
            BigDecimal change = SheetWriter.decimal(now).subtract(SheetWriter.decimal(before));
            Cell cell = row.createCell(4);
            cell.setCellValue((kind == Kind.RATIO ? change.movePointRight(2) : change).doubleValue());
            cell.setCellStyle(book.styles().number(book.styles().formatOfChange(kind)));
        }
    }

    /** Makes a number lead to the rows it is counted from. */
    private void lead(@Nullable Cell cell, String name, Kind kind, YearMonth when) {
        Linked rows = links.figure(name, when);
        if (cell != null && rows != null) {
            book.writer().lead(cell, rows);
            cell.setCellStyle(book.styles().linkedNumber(book.styles().formatWithCode(kind)));
        }
    }

    private static boolean known(@Nullable Object value) {
        return value != null && !(value instanceof Double d && d.isNaN());
    }

    private void put(Row row, int column, Kind kind, @Nullable Object value) {
        if (known(value)) {
            book.writer().put(row, column, kind, value);
            row.getCell(column).setCellStyle(book.styles().number(book.styles().formatWithCode(kind)));
        }
    }

    private Row words(String text) {
        Row row = sheet.createRow(next++);
        SheetWriter.words(row.createCell(0), text, book.styles().of(Kind.TEXT));
        return row;
    }

    private void line(String text, CellStyle style, float height) {
        Row row = sheet.createRow(next++);
        row.setHeightInPoints(height);
        SheetWriter.words(row.createCell(0), text, style);
    }

    private void heading(String... texts) {
        Row row = sheet.createRow(next++);
        for (int c = 0; c < COLUMNS; c++) {
            SheetWriter.words(row.createCell(c), texts[c], book.styles().heading(c > 0));
        }
        if (List.of(texts).stream().anyMatch(t -> t.indexOf('\n') >= 0)) {
            row.setHeightInPoints(SheetWriter.TWO_LINES);
        }
    }
}
