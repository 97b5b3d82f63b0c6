package org.salvedge.report;

import java.io.IOException;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.DataValidation;
import org.apache.poi.ss.usermodel.DataValidationConstraint;
import org.apache.poi.ss.usermodel.DataValidationHelper;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.IndexedColors;
import org.apache.poi.ss.usermodel.PageMargin;
import org.apache.poi.ss.usermodel.PrintSetup;
import org.apache.poi.ss.usermodel.VerticalAlignment;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.ss.util.CellRangeAddressList;
import org.apache.poi.xssf.usermodel.XSSFCell;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFFont;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.jspecify.annotations.Nullable;

/**
 * The sheet on the bench: one row a set, what is known on the left and locked, what is found on the right to fill in, in a
 * spreadsheet program or by hand on paper. {@link BenchSheetReader} reads it back.
 */
public final class BenchSheet {
    static final String NAME = "Bench";
    static final int HEADER_ROW = 2; // counted from 0
    private static final String LISTS = "Lists";
    private static final float ROW_POINTS = 42; // room for handwriting
    private static final short CELL_POINTS = 13; // printed at about half the size
    private static final int MOST_MINUTES = 1440;

    private BenchSheet() {}

    /**
     * What is known of one set when the sheet is written.
     *
     * @param set maker, model and size in words
     * @param known what the bench knows so far, in words
     * @param stopMinutes minute after which to give up while the fault is not known; null = not known
     * @param asOfEntry number of the latest entry about the set; tells on return whether something came between
     */
    public record Row(
            String unit,
            String set,
            String claimed,
            String known,
            @Nullable Integer stopMinutes,
            long asOfEntry,
            @Nullable String place,
            @Nullable String waitingFor) {}

    /** The codes to choose from, in the order of the lists. */
    public record Choices(List<String> faults, List<String> fixes, List<String> grades) {}

    /** Columns of the sheet, in order; the first ones are locked. */
    enum Field {
        UNIT("unit", 13, true),
        SET("set", 23, true),
        CLAIMED("claimed", 17, true),
        KNOWN("known", 20, true),
        STOP("stop at min", 8, true),
        FAULT("fault", 14, false),
        FIX("fix", 18, false),
        DIAGNOSIS("diagnosis min", 10, false),
        FIX_MINUTES("fix min", 8, false),
        PARTS("parts cost", 9, false),
        PASSED("passed", 8, false),
        GRADE("grade", 7, false),
        SOAK("soak h", 7, false),
        SAFETY("safety tested", 8, false),
        RESET("owner data reset", 8, false),
        PLACE("place", 10, false),
        WAITING("waits for", 12, false),
        NOTE("note", 22, false),
        AS_OF("as of entry", 8, true);

        final String heading;
        final int width;
        final boolean locked;

        Field(String heading, int width, boolean locked) {
            this.heading = heading;
            this.width = width;
            this.locked = locked;
        }
    }

    /** @throws java.io.UncheckedIOException if the file cannot be written */
    public static void write(Path file, String title, LocalDate day, List<Row> rows, Choices choices, String pageSize) {
        try (XSSFWorkbook book = new XSSFWorkbook()) {
            XSSFSheet sheet = book.createSheet(NAME);
            lists(book, choices);
            head(book, sheet, title, day);
            XSSFCellStyle locked = cell(book, true);
            XSSFCellStyle open = cell(book, false);
            XSSFCellStyle openNumber = cell(book, false);
            openNumber.setDataFormat(book.createDataFormat().getFormat("0.##"));
            for (int i = 0; i < rows.size(); i++) {
                fill(sheet, HEADER_ROW + 1 + i, rows.get(i), locked, open, openNumber);
            }
            int last = HEADER_ROW + Math.max(1, rows.size());
            validations(sheet, HEADER_ROW + 1, last, choices);
            layOut(book, sheet, last, pageSize);
            WholeFile.write(file, book::write);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static void lists(XSSFWorkbook book, Choices choices) {
        XSSFSheet lists = book.createSheet(LISTS);
        List<List<String>> columns = List.of(choices.faults(), choices.fixes(), choices.grades());
        for (int c = 0; c < columns.size(); c++) {
            for (int r = 0; r < columns.get(c).size(); r++) {
                XSSFRow row = lists.getRow(r) == null ? lists.createRow(r) : lists.getRow(r);
                row.createCell(c).setCellValue(columns.get(c).get(r));
            }
        }
        book.setSheetVisibility(book.getSheetIndex(lists), org.apache.poi.ss.usermodel.SheetVisibility.HIDDEN);
    }

    private static void head(XSSFWorkbook book, XSSFSheet sheet, String title, LocalDate day) {
        XSSFFont big = book.createFont();
        big.setBold(true);
        big.setFontHeightInPoints((short) 13);
        XSSFCellStyle heading = book.createCellStyle();
        heading.setFont(big);
        XSSFCell top = sheet.createRow(0).createCell(0);
        top.setCellValue(title + ", " + day);
        top.setCellStyle(heading);
        sheet.createRow(1)
                .createCell(0)
                .setCellValue(
                        "Fill in the white cells; one row is one turn at the bench. Supplies and backlights stay charged after"
                                + " unplugging; wear eye protection near cracked glass; local rules come first.");
        XSSFFont bold = book.createFont();
        bold.setBold(true);
        XSSFCellStyle style = book.createCellStyle();
        style.setFont(bold);
        style.setWrapText(true);
        style.setVerticalAlignment(VerticalAlignment.CENTER);
        style.setFillForegroundColor(IndexedColors.GREY_25_PERCENT.getIndex());
        style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
        frame(style);
        XSSFRow row = sheet.createRow(HEADER_ROW);
        row.setHeightInPoints(44);
        for (Field c : Field.values()) {
            XSSFCell cell = row.createCell(c.ordinal());
            cell.setCellValue(c.heading);
            cell.setCellStyle(style);
        }
    }

    private static XSSFCellStyle cell(XSSFWorkbook book, boolean locked) {
        XSSFCellStyle style = book.createCellStyle();
        style.setLocked(locked);
        XSSFFont font = book.createFont();
        font.setFontHeightInPoints(CELL_POINTS);
        style.setFont(font);
        style.setWrapText(true);
        style.setVerticalAlignment(VerticalAlignment.CENTER);
        style.setQuotePrefixed(locked);
        frame(style);
        if (locked) {
            style.setFillForegroundColor(IndexedColors.GREY_25_PERCENT.getIndex());
            style.setFillPattern(FillPatternType.LESS_DOTS);
        }
        return style;
    }

    private static void frame(XSSFCellStyle style) {
        style.setBorderBottom(BorderStyle.THIN);
        style.setBorderTop(BorderStyle.THIN);
        style.setBorderLeft(BorderStyle.THIN);
        style.setBorderRight(BorderStyle.THIN);
    }

    private static void fill(
            XSSFSheet sheet, int at, Row known, XSSFCellStyle locked, XSSFCellStyle open, XSSFCellStyle openNumber) {
        XSSFRow row = sheet.createRow(at);
        row.setHeightInPoints(ROW_POINTS);
        for (Field c : Field.values()) {
            boolean number = c == Field.DIAGNOSIS || c == Field.FIX_MINUTES || c == Field.PARTS || c == Field.SOAK;
            row.createCell(c.ordinal()).setCellStyle(c.locked ? locked : number ? openNumber : open);
        }
        text(row, Field.UNIT, known.unit());
        text(row, Field.SET, known.set());
        text(row, Field.CLAIMED, known.claimed());
        text(row, Field.KNOWN, known.known());
        if (known.stopMinutes() != null) {
            row.getCell(Field.STOP.ordinal()).setCellValue(known.stopMinutes());
        }
        text(row, Field.PLACE, known.place());
        text(row, Field.WAITING, known.waitingFor());
        row.getCell(Field.AS_OF.ordinal()).setCellValue((double) known.asOfEntry());
    }

    private static void text(XSSFRow row, Field column, @Nullable String text) {
        if (text != null) {
            row.getCell(column.ordinal()).setCellValue(text); // a string cell, whatever it begins with
        }
    }

    private static void validations(XSSFSheet sheet, int first, int last, Choices choices) {
        choice(sheet, Field.FAULT, first, last, "$A$1:$A$" + choices.faults().size());
        choice(sheet, Field.FIX, first, last, "$B$1:$B$" + choices.fixes().size());
        choice(sheet, Field.GRADE, first, last, "$C$1:$C$" + choices.grades().size());
        DataValidationHelper helper = sheet.getDataValidationHelper();
        for (Field c : new Field[] {Field.PASSED, Field.SAFETY, Field.RESET}) {
            add(sheet, helper.createExplicitListConstraint(new String[] {"yes", "no"}), c, first, last, "yes or no");
        }
        for (Field c : new Field[] {Field.DIAGNOSIS, Field.FIX_MINUTES}) {
            add(
                    sheet,
                    helper.createDecimalConstraint(
                            DataValidationConstraint.OperatorType.BETWEEN, "0", String.valueOf(MOST_MINUTES)),
                    c,
                    first,
                    last,
                    "minutes, 0 to " + MOST_MINUTES);
        }
        for (Field c : new Field[] {Field.PARTS, Field.SOAK}) {
            add(
                    sheet,
                    helper.createDecimalConstraint(DataValidationConstraint.OperatorType.GREATER_OR_EQUAL, "0", null),
                    c,
                    first,
                    last,
                    "a number, 0 or more");
        }
    }

    private static void choice(XSSFSheet sheet, Field c, int first, int last, String range) {
        add(
                sheet,
                sheet.getDataValidationHelper().createFormulaListConstraint(LISTS + "!" + range),
                c,
                first,
                last,
                "choose from the list");
    }

    private static void add(
            XSSFSheet sheet, DataValidationConstraint constraint, Field c, int first, int last, String message) {
        DataValidation v = sheet.getDataValidationHelper()
                .createValidation(constraint, new CellRangeAddressList(first, last, c.ordinal(), c.ordinal()));
        v.setShowErrorBox(true);
        v.createErrorBox(c.heading, message);
        sheet.addValidationData(v);
    }

    private static void layOut(XSSFWorkbook book, XSSFSheet sheet, int last, String pageSize) {
        for (Field c : Field.values()) {
            sheet.setColumnWidth(c.ordinal(), c.width * 256);
        }
        sheet.setColumnHidden(Field.AS_OF.ordinal(), true);
        sheet.createFreezePane(1, HEADER_ROW + 1);
        sheet.protectSheet("");
        sheet.setRepeatingRows(new CellRangeAddress(HEADER_ROW, HEADER_ROW, 0, Field.NOTE.ordinal()));
        book.setPrintArea(0, 0, Field.NOTE.ordinal(), 0, last);
        PrintSetup print = sheet.getPrintSetup();
        print.setLandscape(true);
        print.setPaperSize("Letter".equalsIgnoreCase(pageSize) ? PrintSetup.LETTER_PAPERSIZE : PrintSetup.A4_PAPERSIZE);
        sheet.setFitToPage(true);
        print.setFitWidth((short) 1);
        print.setFitHeight((short) 0);
        for (PageMargin m : new PageMargin[] {PageMargin.LEFT, PageMargin.RIGHT}) {
            sheet.setMargin(m, 0.3);
        }
        sheet.getFooter().setRight("page &P of &N");
    }
}
