package org.salvedge.report;

import org.apache.poi.ss.usermodel.Footer;
import org.apache.poi.ss.usermodel.PageMargin;
import org.apache.poi.ss.usermodel.PrintSetup;
import org.apache.poi.ss.usermodel.Sheet;

/** Paper, direction, margins and footer of a sheet. */
final class Print {
    private static final double INCH_SIDE = 0.5;
    private static final double INCH_FOOT = 0.7;
    /** A footer holds 255 characters in all. */
    private static final int LONGEST_NAME = 60;

    /** Rows of a long list that go to paper: a page. */
    static final int ROWS_OF_LISTS = 48;

    /** Digits of 10 points across the page, and how far a table may be shrunk to stand upright. */
    private static final int UPRIGHT = 99;

    private static final double SHRUNK = 0.8;

    private Print() {}

    /** As wide as one page, as long as it takes. */
    static void setUp(Sheet sheet, Paper paper, boolean landscape) {
        setUp(sheet, paper, landscape, 0);
    }

    /** @param pages how many pages long at most; 0 = as long as it takes */
    static void setUp(Sheet sheet, Paper paper, boolean landscape, int pages) {
        PrintSetup setup = sheet.getPrintSetup();
        setup.setPaperSize(paper.letter() ? PrintSetup.LETTER_PAPERSIZE : PrintSetup.A4_PAPERSIZE);
        setup.setLandscape(landscape);
        sheet.setFitToPage(true);
        sheet.setAutobreaks(true);
        setup.setFitWidth((short) 1);
        setup.setFitHeight((short) pages);
        for (PageMargin side : new PageMargin[] {PageMargin.LEFT, PageMargin.RIGHT, PageMargin.TOP}) {
            sheet.setMargin(side, INCH_SIDE);
        }
        sheet.setMargin(PageMargin.BOTTOM, INCH_FOOT);
        Footer footer = sheet.getFooter();
        footer.setLeft(plain(paper.shop()));
        footer.setCenter(paper.printedOn() + "  \u00b7  &A");
        footer.setRight("&P / &N");
    }

    /** Whether a table as wide as this, in digits of 10 points, is better read on a page laid across. */
    static boolean across(int width) {
        return width * SHRUNK > UPRIGHT;
    }

    static void firstRows(Sheet sheet, int rows, int columns) {
        sheet.getWorkbook().setPrintArea(sheet.getWorkbook().getSheetIndex(sheet), 0, columns - 1, 0, rows - 1);
    }

    /** A name in a footer, where an ampersand begins a command. */
    static String plain(String text) {
        String visible = Visible.text(text);
        int end = visible.offsetByCodePoints(0, Math.min(LONGEST_NAME, visible.codePointCount(0, visible.length())));
        return visible.substring(0, end).replace("&", "&&");
    }
}
