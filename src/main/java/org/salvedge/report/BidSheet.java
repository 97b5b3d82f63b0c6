package org.salvedge.report;

import java.math.BigDecimal;
import java.util.LinkedHashMap;
import java.util.Map;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.DataValidation;
import org.apache.poi.ss.usermodel.DataValidationConstraint;
import org.apache.poi.ss.usermodel.DataValidationHelper;
import org.apache.poi.ss.usermodel.Name;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.CellRangeAddressList;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.salvedge.shop.Money;
import org.salvedge.worth.Appraisal;
import org.salvedge.worth.LotWorth;

/** The first page of a bid sheet: what may be changed, and what follows from it by formulas. */
final class BidSheet {
    static final int COLUMNS = 3;
    private static final int[] WIDTH = {34, 16, 62};
    private static final int UNITS = 256;
    private static final int MINUTES_AN_HOUR = 60;
    static final int PRICES = 25;
    private static final double LAST_PRICE = 1.6;

    private final Book book;
    private final XSSFSheet sheet;
    private final Appraisal a;
    private final BigDecimal labourRate;
    private final Map<Cell, String> formulas = new LinkedHashMap<>();
    private int next = SheetWriter.HEADING_ROW;

    BidSheet(Book book, XSSFSheet sheet, Appraisal a, BigDecimal labourRate) {
        this.book = book;
        this.sheet = sheet;
        this.a = a;
        this.labourRate = labourRate;
    }

    /** @return the first row below */
    int write(String from) {
        for (int c = 0; c < COLUMNS; c++) {
            sheet.setColumnWidth(c, WIDTH[c] * UNITS);
        }
        LotWorth w = a.worth();
        book.writer()
                .title(
                        sheet,
                        "Bid sheet",
                        Plural.of(w.sets(), "set")
                                + (a.question().supplier() == null
                                        ? ""
                                        : " from " + a.question().supplier()) + ", "
                                + from + ", for a purchase on " + a.question().on());
        // The line holds a seller's words: text, whatever it begins with.
        book.writer()
                .text(sheet.getRow(1).getCell(0), sheet.getRow(1).getCell(0).getStringCellValue());
        sheet.getRow(1).getCell(0).setCellStyle(book.styles().small());
        String last = cell(1, SheetWriter.FIRST_ROW + BidWorkbook.STEPS);
        name("quantiles", BidWorkbook.QUANTILES + "!" + cell(1, SheetWriter.FIRST_ROW) + ":" + last);
        heading("may be changed");
        Money price = a.price() != null
                ? a.price()
                : a.highestBid().orElse(Money.zero(book.paper().currency()));
        input(
                "price",
                "Price",
                price.toDoubleForStatistics(),
                money(),
                "hammer price; here the highest bid, or what was asked about");
        input("premium", "Buyer's premium", a.terms().premiumPct().doubleValue() / 100, "0.0#\\ %", "on the price");
        input("freight", "Freight", a.terms().freight().toDoubleForStatistics(), money(), "transport in");
        input("other", "Other cost", a.terms().other().toDoubleForStatistics(), money(), "unrecoverable tax, pallets");
        input("labour", "Labour, an hour", labourRate.doubleValue(), money(), "what an hour at the bench costs");
        input("target", "Target return", a.targetReturn(), "0.0#\\ %", "profit asked for, on the outlay");
        input("confidence", "Confidence", a.confidence(), "0.0#\\ %", "chance to keep that promise at the highest bid");
        between(next - 1);
        next++;
        heading("as it was estimated");
        input(
                "mean_then",
                "Mean recovery",
                w.recovery().mean(),
                money(),
                "before the purchase is paid, at the labour rate beside");
        input("labour_then", "Labour rate of the estimate", labourRate.doubleValue(), money(), "an hour");
        input("hours", "Bench hours", w.minutes().mean() / MINUTES_AN_HOUR, "#,##0.0", "mean, unloading included");
        donors(w);
        next++;
        heading("what follows");
        answers();
        formulas.forEach(Cell::setCellFormula); // names must be there before a formula may use them
        return next + 1;
    }

    private void donors(LotWorth w) {
        for (DonorReport.Said said : DonorReport.words(w.donors())) {
            input("donors_" + next, "Boards out of donors", said.amount(), money(), said.words());
        }
    }

    private void answers() {
        int d = book.paper().moneyDigits();
        formula("highest_bid", "Highest bid", bid("left_bid"), money(), "largest price that keeps the promise");
        sheet.getRow(next - 1).getCell(0).setCellStyle(book.styles().bold());
        sheet.getRow(next - 1).getCell(1).setCellStyle(bold());
        formula("break_even_bid", "Break-even bid", bid("left_even"), money(), "profit 0 on average");
        formula("profit", "Mean profit at this price", "mean_now-outlay", money(), "");
        formula("loss", "Chance of a loss", loss("outlay"), "0.0\\ %", "share of outcomes below the outlay");
        formula("profit_10", "Profit, 1 in 10 below", quantile("0.1") + "+shift-outlay", money(), "");
        formula("profit_50", "Profit, middle", quantile("0.5") + "+shift-outlay", money(), "");
        formula("profit_90", "Profit, 1 in 10 above", quantile("0.9") + "+shift-outlay", money(), "");
        next++;
        heading("on the way there");
        formula(
                "outlay",
                "Outlay",
                "price+ROUND(price*premium," + d + ")+freight+other",
                money(),
                "price and all that comes on top");
        formula(
                "shift",
                "Change by the labour rate",
                "(labour_then-labour)*hours",
                money(),
                "mean bench hours at the other rate");
        formula("mean_now", "It should bring", "mean_then+shift", money(), "mean, before it is paid for");
        formula(
                "reached",
                "Reached with that confidence",
                quantile("(1-confidence)") + "+shift",
                money(),
                "recovery that is reached with the confidence above");
        formula(
                "left_bid",
                "Left for price and premium",
                "reached/(1+target)-freight-other",
                money(),
                "after freight, other cost and the return");
        formula("left_even", "The same at break-even", "mean_now-freight-other", money(), "");
    }

    /** The largest whole minor unit whose price and rounded premium are at most what is left; text where there is none. */
    private String bid(String left) {
        int d = book.paper().moneyDigits();
        String unit = BigDecimal.ONE.movePointLeft(d).toPlainString();
        String down = "ROUNDDOWN(" + left + "/(1+premium)," + d + ")";
        String more = "(" + down + "+" + unit + ")";
        return "IF(" + left + "<0,\"none\",IF(" + more + "+ROUND(" + more + "*premium," + d + ")<=" + left
                + "+0.0000001," + more + ",IF(" + down + "+ROUND(" + down + "*premium," + d + ")<=" + left
                + "+0.0000001," + down + "," + down + "-" + unit + ")))";
    }

    /** A stored quantile, straight between two. */
    private static String quantile(String p) {
        String k = "ROUND(" + p + "*" + BidWorkbook.STEPS + ",6)";
        String low = "INDEX(quantiles,INT(" + k + ")+1)";
        String high = "INDEX(quantiles,MIN(INT(" + k + ")+2," + (BidWorkbook.STEPS + 1) + "))";
        return "(" + low + "+(" + k + "-INT(" + k + "))*(" + high + "-" + low + "))";
    }

    /** Where the stored quantiles, moved by the labour rate, pass an amount. */
    private static String loss(String amount) {
        String x = "(" + amount + "-shift)";
        String i = "MATCH(" + x + ",quantiles,1)";
        String low = "INDEX(quantiles," + i + ")";
        String high = "INDEX(quantiles," + i + "+1)";
        return "IF(" + x + "<=INDEX(quantiles,1),0,IF(" + x + ">=INDEX(quantiles," + (BidWorkbook.STEPS + 1) + "),1,("
                + i + "-1+(" + x + "-" + low + ")/(" + high + "-" + low + "))/" + BidWorkbook.STEPS + "))";
    }

    /** Prices up to well beyond break-even beside the quantiles, with the chance of a loss at each; returns the last row. */
    int lossByPrice(XSSFSheet quantiles) {
        int d = book.paper().moneyDigits();
        for (int i = 0; i < PRICES; i++) {
            Row row = quantiles.getRow(SheetWriter.FIRST_ROW + i);
            String share = BigDecimal.valueOf(LAST_PRICE * i / (PRICES - 1)).toPlainString();
            Cell price = row.createCell(3);
            price.setCellFormula("ROUND(MAX(0,left_even)/(1+premium)*" + share + ",0)");
            price.setCellStyle(book.styles().number("#,##0"));
            String at = cell(3, SheetWriter.FIRST_ROW + i);
            Cell chance = row.createCell(4);
            chance.setCellFormula(loss("(" + at + "+ROUND(" + at + "*premium," + d + ")+freight+other)"));
            chance.setCellStyle(book.styles().number("0.0\\ %"));
        }
        return SheetWriter.FIRST_ROW + PRICES - 1;
    }

    private String money() {
        return book.styles().format(Kind.MONEY);
    }

    private CellStyle bold() {
        CellStyle style = sheet.getWorkbook().createCellStyle();
        style.cloneStyleFrom(book.styles().bold());
        style.setDataFormat(sheet.getWorkbook().createDataFormat().getFormat(money()));
        return style;
    }

    private static String cell(int column, int row) {
        return "$" + (char) ('A' + column) + "$" + (row + 1);
    }

    private void name(String name, String refersTo) {
        Name defined = sheet.getWorkbook().createName();
        defined.setNameName(name);
        defined.setRefersToFormula(refersTo);
    }

    private void heading(String words) {
        Row row = sheet.createRow(next++);
        String[] texts = {words, book.paper().currency().getCurrencyCode(), ""};
        for (int c = 0; c < COLUMNS; c++) {
            SheetWriter.words(row.createCell(c), texts[c], book.styles().heading(c == 1));
        }
    }

    private Cell line(String name, String label, String meaning) {
        Row row = sheet.createRow(next);
        SheetWriter.words(row.createCell(0), label, book.styles().of(Kind.TEXT));
        SheetWriter.words(row.createCell(2), meaning, book.styles().of(Kind.TEXT));
        name(name, "Bid!" + cell(1, next));
        next++;
        return row.createCell(1);
    }

    private void input(String name, String label, double value, String format, String meaning) {
        Cell cell = line(name, label, meaning);
        cell.setCellValue(value);
        cell.setCellStyle(
                next - 1 < SheetWriter.HEADING_ROW + 9
                        ? book.styles().input(format)
                        : book.styles().number(format));
    }

    private void formula(String name, String label, String formula, String format, String meaning) {
        Cell cell = line(name, label, meaning);
        formulas.put(cell, formula);
        cell.setCellStyle(book.styles().number(format));
    }

    private void between(int row) {
        DataValidationHelper helper = sheet.getDataValidationHelper();
        DataValidationConstraint constraint =
                helper.createDecimalConstraint(DataValidationConstraint.OperatorType.BETWEEN, "0.01", "0.99");
        DataValidation validation = helper.createValidation(constraint, new CellRangeAddressList(row, row, 1, 1));
        validation.createErrorBox("Confidence", "A chance between 1 % and 99 %.");
        validation.setShowErrorBox(true);
        sheet.addValidationData(validation);
    }
}
