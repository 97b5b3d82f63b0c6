package org.salvedge.report;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.LocalDateTime;
import java.util.ArrayList;
import java.util.List;
import org.apache.poi.common.usermodel.HyperlinkType;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.Hyperlink;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.usermodel.Sheet;
import org.apache.poi.ss.util.CellRangeAddress;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.FormulaGuard;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.Refused;

/**
 * A table on a sheet of its own: title, a line that says what it is, headings (frozen, repeated on each page, with filters), real
 * numbers and dates, columns wide enough for all that stands in them.
 */
final class SheetWriter {
    static final int HEADING_ROW = 2;
    static final int FIRST_ROW = HEADING_ROW + 1;
    private static final int MOST_ROWS = 1_048_576 - FIRST_ROW - 2;
    private static final int WIDEST = 60;
    private static final int FEW_ROWS = 100;
    private static final int NARROWEST = 8;
    private static final int UNITS_A_CHARACTER = 256;
    private static final int MARGIN = 2;
    private static final int LONGEST_TEXT = 32_000;
    static final float LINE_POINTS = 13.5f;
    static final float TWO_LINES = 29;
    static final float TITLE_HEIGHT = 24;
    /** A title's bold letters against those of the table. */
    private static final double TITLE_WIDTH = 1.8;

    private final Styles styles;
    private final Paper paper;

    SheetWriter(Styles styles, Paper paper) {
        this.styles = styles;
        this.paper = paper;
    }

    /** @param frozen columns that stay in sight */
    void write(Sheet sheet, String about, Table table, int frozen) {
        if (table.rows().size() > MOST_ROWS) {
            throw new Refused("the sheet \"" + sheet.getSheetName() + "\" would need "
                    + table.rows().size() + " rows, and a spreadsheet holds " + MOST_ROWS
                    + "; choose fewer keys, or CSV");
        }
        List<Spot> spots = spots(table);
        int[] width = new int[spots.size()];
        title(sheet, table.title(), about);
        headings(sheet, spots, width);
        int r = FIRST_ROW;
        for (List<@Nullable Object> values : table.rows()) {
            Row row = sheet.createRow(r++);
            int lines = 1;
            for (int c = 0; c < spots.size(); c++) {
                int characters = put(row, c, spots.get(c).kind, spots.get(c).of(values));
                width[c] = Math.max(width[c], characters + (spots.get(c).kind.right() ? 1 : MARGIN));
                if (characters > WIDEST) {
                    lines = Math.max(lines, TextLines.of(row.getCell(c).getStringCellValue(), WIDEST));
                }
            }
            if (lines > 1) { // not every program makes room for wrapped text by itself
                row.setHeightInPoints(lines * LINE_POINTS);
            }
        }
        if (table.rows().isEmpty() && table.notes().isEmpty()) {
            words(sheet.createRow(r).createCell(0), "None.", styles.small());
        }
        List<Row> notes = new ArrayList<>();
        if (table.rows().size() <= FEW_ROWS) { // else the row may be on disk already
            notes.add(sheet.getRow(1));
        }
        for (String note : table.notes()) {
            notes.add(sheet.createRow(++r));
            words(notes.get(notes.size() - 1).createCell(0), note, styles.small());
        }
        int paperColumns = onPaper(spots);
        int across = 0;
        for (int c = 0; c < width.length; c++) {
            int characters = Math.max(NARROWEST, Math.min(WIDEST, width[c]));
            sheet.setColumnWidth(c, characters * UNITS_A_CHARACTER);
            across += c < paperColumns ? characters : 0;
        }
        for (Row note : notes) {
            wrap(note, across, paperColumns, styles.smallWrapped());
        }
        Row first = table.rows().size() <= FEW_ROWS ? sheet.getRow(0) : null;
        if (first != null && TextLines.of(table.title(), across / TITLE_WIDTH) > 1) {
            wrap(first, across / TITLE_WIDTH, paperColumns, styles.titleWrapped());
            first.setHeightInPoints(TextLines.of(table.title(), across / TITLE_WIDTH) * TITLE_HEIGHT);
        }
        sheet.createFreezePane(frozen, FIRST_ROW);
        int last = Math.max(FIRST_ROW, FIRST_ROW + table.rows().size() - 1);
        sheet.setAutoFilter(new CellRangeAddress(HEADING_ROW, last, 0, spots.size() - 1));
        Print.setUp(sheet, paper, Print.across(across));
        if (paperColumns < spots.size()) {
            Print.firstRows(sheet, r + 1, paperColumns);
        }
        sheet.setRepeatingRows(new CellRangeAddress(HEADING_ROW, HEADING_ROW, -1, -1));
    }

    /** Breaks the words of a row's first cell to the width of the table. */
    private static void wrap(Row row, double characters, int columns, CellStyle style) {
        int lines = TextLines.of(row.getCell(0).getStringCellValue(), characters);
        row.getCell(0).setCellStyle(style);
        row.setHeightInPoints(lines * LINE_POINTS + 1);
        if (columns > 1) {
            row.getSheet().addMergedRegion(new CellRangeAddress(row.getRowNum(), row.getRowNum(), 0, columns - 1));
        }
    }

    /** How many columns go to paper: links and what only charts need, at the end of a table, do not. */
    private static int onPaper(List<Spot> spots) {
        int columns = spots.size();
        while (columns > 1 && Figure.onlyOnScreen(spots.get(columns - 1).key)) {
            columns--;
        }
        return columns;
    }

    void title(Sheet sheet, String title, String about) {
        Row first = sheet.createRow(0);
        first.setHeightInPoints(TITLE_HEIGHT);
        words(first.createCell(0), title, styles.title());
        words(sheet.createRow(1).createCell(0), about, styles.small());
    }

    private void headings(Sheet sheet, List<Spot> spots, int[] width) {
        Row row = sheet.createRow(HEADING_ROW);
        int lines = 1;
        for (int c = 0; c < spots.size(); c++) {
            Spot spot = spots.get(c);
            words(row.createCell(c), spot.heading, styles.heading(spot.kind.right()));
            String[] parts = spot.heading.split("\n", -1);
            for (int i = 0; i < parts.length; i++) {
                // The filter's button hides the end of a heading's last line.
                int beside = i == parts.length - 1 ? MARGIN + 1 : MARGIN;
                width[c] = Math.max(width[c], parts[i].length() + beside);
            }
            lines = Math.max(lines, (int) spot.heading.lines().count());
        }
        row.setHeightInPoints(lines * LINE_POINTS + MARGIN);
    }

    /** Writes a value; returns how many characters it takes. Nothing where it is undefined. */
    int put(Row row, int column, Kind kind, @Nullable Object value) {
        if (value == null || value instanceof Double d && !Double.isFinite(d)) {
            return 0;
        }
        Cell cell = row.createCell(column);
        if (value instanceof Linked linked) {
            words(cell, linked.toString(), styles.link());
            lead(cell, linked);
            return linked.toString().length();
        }
        if (value instanceof LocalDate date) {
            cell.setCellValue(date);
            cell.setCellStyle(styles.of(Kind.DATE));
            return date.toString().length();
        }
        if (value instanceof LocalDateTime time) {
            cell.setCellValue(time);
            cell.setCellStyle(styles.number("yyyy-mm-dd hh:mm"));
            return "0000-00-00 00:00".length();
        }
        if (value instanceof Boolean yes) {
            words(cell, yes ? "yes" : "no", styles.of(Kind.TEXT));
            return 3;
        }
        if (kind.isText() && value instanceof Integer number) { // a name, though it has digits only
            cell.setCellValue(number);
            cell.setCellStyle(styles.of(Kind.TEXT));
            return number.toString().length();
        }
        if (kind.isText()) {
            String text = CellText.text(value);
            text(cell, text);
            return room(cell.getStringCellValue());
        }
        BigDecimal number = decimal(value);
        cell.setCellValue(number.doubleValue());
        cell.setCellStyle(styles.of(kind));
        return Digits.grouped(number, decimals(kind)).length();
    }

    /** Makes a cell lead to rows of another sheet, and leaves its look. */
    void lead(Cell cell, Linked rows) {
        Hyperlink link = cell.getSheet().getWorkbook().getCreationHelper().createHyperlink(HyperlinkType.DOCUMENT);
        link.setAddress(rows.target());
        cell.setHyperlink(link);
    }

    private int decimals(Kind kind) {
        return switch (kind) {
            case MONEY, MONEY_TOTAL, MONEY_EACH -> paper.moneyDigits();
            case RATIO, INTERVAL, BAR -> 4;
            case MINUTES -> 1;
            case NUMBER -> 2;
            default -> 0;
        };
    }

    static BigDecimal decimal(Object value) {
        if (value instanceof Money money) {
            return money.amount();
        }
        if (value instanceof Quantity quantity) {
            return quantity.number();
        }
        return value instanceof Double d ? BigDecimal.valueOf(d) : new BigDecimal(value.toString());
    }

    /** Writes our own words. */
    static void words(Cell cell, String text, CellStyle style) {
        cell.setCellValue(text);
        cell.setCellStyle(style);
    }

    /** Characters of a column's width that a text takes. */
    private static int room(String text) {
        return Math.max(text.length(), TextLines.characters(text));
    }

    /** Writes text from elsewhere as text, whatever it begins with. */
    void text(Cell cell, String text) {
        String visible = Visible.text(text);
        cell.setCellValue(visible.length() > LONGEST_TEXT ? visible.substring(0, LONGEST_TEXT) : visible);
        boolean formula = FormulaGuard.isFormula(visible);
        boolean wide = room(visible) > WIDEST;
        cell.setCellStyle(formula ? styles.quoted(wide) : wide ? styles.wrapped() : styles.of(Kind.TEXT));
    }

    /** Which column of the sheet a figure stands in; for an interval the first of its three. */
    static int column(Table table, Figure figure) {
        int at = 0;
        for (Column column : table.columns()) {
            if (column.equals(figure.column())) {
                return at;
            }
            at += column.kind() == Kind.INTERVAL ? 3 : 1;
        }
        throw new IllegalArgumentException(figure + " is not in \"" + table.title() + "\"");
    }

    /** A column of the sheet: a column of the table, or one of the three of an interval. */
    private static final class Spot {
        private final int column;
        private final int part;
        private final Kind kind;
        private final String heading;
        private final String key;

        Spot(int column, int part, Kind kind, String heading, String key) {
            this.column = column;
            this.part = part;
            this.kind = kind;
            this.heading = heading;
            this.key = key;
        }

        @Nullable
        Object of(List<@Nullable Object> row) {
            Object value = row.get(column);
            if (value instanceof Estimate e) {
                return part == 0 ? e.value() : part == 1 ? e.low() : e.high();
            }
            return value;
        }
    }

    private List<Spot> spots(Table table) {
        List<Spot> spots = new ArrayList<>();
        for (int c = 0; c < table.columns().size(); c++) {
            Column column = table.columns().get(c);
            String heading = column.kind().isMoney()
                    ? column.heading() + "\n" + paper.currency().getCurrencyCode()
                    : column.heading();
            if (column.kind() == Kind.INTERVAL) {
                spots.add(new Spot(c, 0, Kind.RATIO, heading, column.key()));
                spots.add(new Spot(c, 1, Kind.RATIO, heading + "\nfrom", column.key()));
                spots.add(new Spot(c, 2, Kind.RATIO, heading + "\nto", column.key()));
            } else {
                spots.add(new Spot(c, 0, column.kind(), heading, column.key()));
            }
        }
        return spots;
    }
}
