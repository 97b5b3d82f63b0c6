package org.salvedge.report;

import java.math.BigDecimal;
import java.util.List;
import java.util.function.Function;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Money;
import org.salvedge.yield.MonthFigures;
import org.salvedge.yield.MonthReview;
import org.salvedge.yield.OpenSet;
import org.salvedge.yield.RolledYield;

/** The first page of the monthly review: the answer in a line, the figures against other months, what is still here. */
final class MonthFront {
    static final int COLUMNS = 5;
    private static final int FIRST_WIDTH = 34;
    private static final int OTHER_WIDTH = 17;
    private static final int UNITS = 256;

    private final Book book;
    private final XSSFSheet sheet;
    private final MonthReview review;
    private int next;

    MonthFront(Book book, XSSFSheet sheet, MonthReview review) {
        this.book = book;
        this.sheet = sheet;
        this.review = review;
    }

    /** Writes the figures; returns the first row that is free below them. */
    int write() {
        sheet.setColumnWidth(0, FIRST_WIDTH * UNITS);
        for (int c = 1; c < COLUMNS; c++) {
            sheet.setColumnWidth(c, OTHER_WIDTH * UNITS);
        }
        line(review.month() + " in figures", book.styles().title(), SheetWriter.TITLE_HEIGHT);
        line(answer(), book.styles().bold(), SheetWriter.TITLE_HEIGHT);
        heading("", review.month().toString(), "month before", "a year before", "change to\nmonth before");
        compare("sets received", Kind.COUNT, MonthFigures::received);
        compare("sets decided", Kind.COUNT, m -> m.counted().decided());
        compare("sets saved", Kind.COUNT, m -> m.counted().saved());
        compare("yield", Kind.RATIO, m -> m.counted().raw());
        compare("   95 % interval from", Kind.RATIO, m -> m.counted().rawLow());
        compare("   to", Kind.RATIO, m -> m.counted().rawHigh());
        compare("yield, shrunk", Kind.RATIO, m -> m.counted().shrunk());
        compare("first-pass yield", Kind.RATIO, m -> m.counted().firstPassYield());
        compare("minutes per fix, median", Kind.MINUTES, m -> m.counted().minutesMedian());
        compare("minutes per saved set", Kind.MINUTES, m -> m.counted().minutesPerSaved());
        compare("sets gone", Kind.COUNT, m -> m.counted().gone());
        compare(
                "margin",
                Kind.MONEY,
                m -> m.counted().gone() == 0 ? null : m.counted().marginTotal());
        compare("   per set", Kind.MONEY_EACH, m -> m.counted().marginPerSet());
        compare("   per bench hour", Kind.MONEY_EACH, m -> m.counted().marginPerHour());
        compare("comebacks", Kind.COUNT, MonthFigures::comebacks);
        compare("   their cost", Kind.MONEY, MonthFigures::comebackCost);
        next++;
        atTheEnd();
        return next + 1;
    }

    private String answer() {
        var now = review.now().counted();
        if (now.decided() == 0 && now.gone() == 0) {
            return "Nothing was decided in this month.";
        }
        String yield = now.decided() == 0
                ? "No set was decided."
                : now.saved() + " of " + now.decided() + " sets decided were saved: yield " + percent(now.raw())
                        + " % (95 %: " + percent(now.rawLow()) + "-" + percent(now.rawHigh()) + ").";
        return now.gone() == 0
                ? yield + " No set left."
                : yield + " " + now.gone() + " sets left with a margin of "
                        + Digits.grouped(
                                now.marginTotal().amount(), book.paper().moneyDigits()) + " "
                        + review.currency().getCurrencyCode() + ".";
    }

    private static String percent(double share) {
        return Digits.grouped(share * 100, 1);
    }

    /** What is here when the month ends, and the rolled throughput yield of the whole record. */
    private void atTheEnd() {
        int passed = 0;
        Money costPassed = Money.zero(review.currency());
        Money costBench = Money.zero(review.currency());
        for (OpenSet set : review.open()) {
            passed += set.passed() ? 1 : 0;
            costPassed = set.passed() ? costPassed.plus(set.cost()) : costPassed;
            costBench = set.passed() ? costBench : costBench.plus(set.cost());
        }
        heading("when the month ended", "sets", "cost so far", "", "");
        Row bench = words("on the bench");
        put(bench, 1, Kind.COUNT, review.open().size() - passed);
        put(bench, 2, Kind.MONEY, costBench);
        Row waiting = words("passed, waiting to be sold");
        put(waiting, 1, Kind.COUNT, passed);
        put(waiting, 2, Kind.MONEY, costPassed);
        next++;
        RolledYield rolled = review.rolled();
        heading("rolled throughput yield, all so far", "share", "good", "of", "");
        step("glass not broken, of sets diagnosed", rolled.glass(), rolled.notBroken(), rolled.diagnosed());
        step("saved, of sets decided", rolled.bench(), rolled.saved(), rolled.decided());
        step("not back in 90 days, of old sales", rolled.keeping(), rolled.kept(), rolled.oldSales());
        Row index = words("index (the product)");
        put(index, 1, Kind.RATIO, rolled.index());
    }

    private void step(String name, double share, int good, int of) {
        Row row = words(name);
        put(row, 1, Kind.RATIO, share);
        put(row, 2, Kind.COUNT, good);
        put(row, 3, Kind.COUNT, of);
    }

    private void compare(String name, Kind kind, Function<MonthFigures, @Nullable Object> figure) {
        Row row = words(name);
        Object now = figure.apply(review.now());
        Object before = figure.apply(review.before());
        put(row, 1, kind, now);
        put(row, 2, kind, before);
        put(row, 3, kind, figure.apply(review.yearAgo()));
        if (known(now) && known(before)) {
            BigDecimal change = SheetWriter.decimal(now).subtract(SheetWriter.decimal(before));
            Cell cell = row.createCell(4);
            cell.setCellValue((kind == Kind.RATIO ? change.movePointRight(2) : change).doubleValue());
            cell.setCellStyle(book.styles().number(book.styles().formatOfChange(kind)));
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
