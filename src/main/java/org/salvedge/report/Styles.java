package org.salvedge.report;

import java.util.HashMap;
import java.util.Map;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.FontUnderline;
import org.apache.poi.ss.usermodel.HorizontalAlignment;
import org.apache.poi.ss.usermodel.VerticalAlignment;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFColor;
import org.apache.poi.xssf.usermodel.XSSFFont;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/** The few styles of a workbook, each made once. Number formats follow the digits of the currency; signs are never colours only. */
final class Styles {
    static final String FONT = "Arial";
    static final int POINTS = 10;
    static final byte[] INK = {0x1f, 0x3a, 0x5f};
    static final byte[] SHADE = {(byte) 0xe8, (byte) 0xee, (byte) 0xf4};
    private static final byte[] PAPER = {(byte) 0xff, (byte) 0xf7, (byte) 0xd6};
    private static final int TITLE_POINTS = 16;

    private final XSSFWorkbook book;
    private final Paper paper;
    private final Map<String, XSSFCellStyle> made = new HashMap<>();

    Styles(XSSFWorkbook book, Paper paper) {
        this.book = book;
        this.paper = paper;
        XSSFFont font = book.getFontAt(0);
        font.setFontName(FONT);
        font.setFontHeightInPoints((short) POINTS);
    }

    /** The number format of a kind; "General" for text. */
    String format(Kind kind) {
        String cents = paper.moneyDigits() == 0 ? "" : "." + "0".repeat(paper.moneyDigits());
        return switch (kind) {
            case TEXT, KEY, YES_NO -> "General";
            case COUNT -> "#,##0";
            case MONEY, MONEY_TOTAL, MONEY_EACH -> "#,##0" + cents;
            case RATIO, INTERVAL, BAR -> "0.0\\ %";
            case MINUTES -> "#,##0.0";
            case NUMBER -> "#,##0.00";
            case DATE -> "yyyy-mm-dd";
        };
    }

    /** As {@link #format}, with the currency's code beside amounts, for pages without a heading that names it. */
    String formatWithCode(Kind kind) {
        return switch (kind) {
            case MONEY, MONEY_TOTAL, MONEY_EACH ->
                format(kind) + "\\ [$" + paper.currency().getCurrencyCode() + "]";
            default -> format(kind);
        };
    }

    /** A change: the sign is always there; that of a share is in points of 1 %. */
    String formatOfChange(Kind kind) {
        String plain = kind == Kind.RATIO ? "0.0\\ \"points\"" : formatWithCode(kind);
        return "+" + plain + ";-" + plain + ";" + plain;
    }

    CellStyle of(Kind kind) {
        return number(format(kind));
    }

    CellStyle number(String format) {
        return made.computeIfAbsent("number " + format, k -> {
            XSSFCellStyle style = plain();
            style.setDataFormat(book.createDataFormat().getFormat(format));
            if (!format.contains("0")) { // text and dates begin where their headings do
                style.setAlignment(HorizontalAlignment.LEFT);
                style.setIndention((short) 1);
            }
            return style;
        });
    }

    /** A number that is there to be changed. */
    CellStyle input(String format) {
        return made.computeIfAbsent("input " + format, k -> {
            XSSFCellStyle style = plain();
            style.setDataFormat(book.createDataFormat().getFormat(format));
            style.setFillForegroundColor(new XSSFColor(PAPER));
            style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
            style.setBorderBottom(BorderStyle.THIN);
            style.setBorderTop(BorderStyle.THIN);
            style.setBorderLeft(BorderStyle.THIN);
            style.setBorderRight(BorderStyle.THIN);
            return style;
        });
    }

    /** Text that a spreadsheet program must not read as a formula, even when it is edited. */
    CellStyle quoted(boolean wrapped) {
        return made.computeIfAbsent("quoted " + wrapped, k -> {
            XSSFCellStyle style = plain();
            style.setQuotePrefixed(true);
            style.setWrapText(wrapped);
            style.setIndention((short) 1);
            return style;
        });
    }

    CellStyle wrapped() {
        return made.computeIfAbsent("wrapped", k -> {
            XSSFCellStyle style = plain();
            style.setWrapText(true);
            return style;
        });
    }

    /** Words under numbers. */
    CellStyle right() {
        return made.computeIfAbsent("right", k -> {
            XSSFCellStyle style = font(plain(), POINTS - 1, false);
            style.setAlignment(HorizontalAlignment.RIGHT);
            return style;
        });
    }

    /** Blue and underlined, as links are. */
    CellStyle link() {
        return made.computeIfAbsent("link", k -> {
            XSSFCellStyle style = font(plain(), POINTS, false);
            style.getFont().setUnderline(FontUnderline.SINGLE);
            style.getFont().setColor(new XSSFColor(INK));
            style.setAlignment(HorizontalAlignment.LEFT);
            style.setIndention((short) 1);
            return style;
        });
    }

    CellStyle linkWrapped() {
        return made.computeIfAbsent("link wrapped", k -> {
            XSSFCellStyle style = font(plain(), POINTS, false);
            style.getFont().setUnderline(FontUnderline.SINGLE);
            style.getFont().setColor(new XSSFColor(INK));
            style.setWrapText(true);
            return style;
        });
    }

    /** A number that leads somewhere, on the side of numbers. */
    CellStyle linkedNumber(String format) {
        return made.computeIfAbsent("linked number " + format, k -> {
            XSSFCellStyle style = font(plain(), POINTS, false);
            style.setDataFormat(book.createDataFormat().getFormat(format));
            style.getFont().setUnderline(FontUnderline.SINGLE);
            style.getFont().setColor(new XSSFColor(INK));
            style.setAlignment(HorizontalAlignment.RIGHT);
            return style;
        });
    }

    CellStyle title() {
        return made.computeIfAbsent("title", k -> font(plain(), TITLE_POINTS, true));
    }

    CellStyle titleWrapped() {
        return made.computeIfAbsent("title wrapped", k -> {
            XSSFCellStyle style = font(plain(), TITLE_POINTS, true);
            style.setWrapText(true);
            return style;
        });
    }

    CellStyle bold() {
        return made.computeIfAbsent("bold", k -> font(plain(), POINTS, true));
    }

    /** Text below a heading, where that begins. */
    CellStyle indented(int points, boolean bold) {
        return made.computeIfAbsent("indented " + points + bold, k -> {
            XSSFCellStyle style = font(plain(), points, bold);
            style.setWrapText(true);
            style.setAlignment(HorizontalAlignment.LEFT);
            style.setIndention((short) 1);
            return style;
        });
    }

    CellStyle small() {
        return made.computeIfAbsent("small", k -> font(plain(), POINTS - 1, false));
    }

    CellStyle smallWrapped() {
        return made.computeIfAbsent("small wrapped", k -> {
            XSSFCellStyle style = font(plain(), POINTS - 1, false);
            style.setWrapText(true);
            return style;
        });
    }

    CellStyle heading(boolean right) {
        return made.computeIfAbsent("heading " + right, k -> {
            XSSFCellStyle style = font(plain(), POINTS, true);
            style.setWrapText(true);
            style.setVerticalAlignment(VerticalAlignment.BOTTOM);
            style.setAlignment(right ? HorizontalAlignment.RIGHT : HorizontalAlignment.LEFT);
            style.setIndention((short) (right ? 0 : 1));
            style.setBorderBottom(BorderStyle.MEDIUM);
            style.setFillForegroundColor(new XSSFColor(SHADE));
            style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
            return style;
        });
    }

    private XSSFCellStyle plain() {
        XSSFCellStyle style = book.createCellStyle();
        style.setVerticalAlignment(VerticalAlignment.TOP);
        return style;
    }

    private XSSFCellStyle font(XSSFCellStyle style, int points, boolean bold) {
        XSSFFont font = book.createFont();
        font.setFontName(FONT);
        font.setFontHeightInPoints((short) points);
        font.setBold(bold);
        if (points > POINTS) {
            font.setColor(new XSSFColor(INK));
        }
        style.setFont(font);
        return style;
    }
}
