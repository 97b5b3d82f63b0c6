package org.salvedge.report;

import com.google.zxing.BarcodeFormat;
import com.google.zxing.EncodeHintType;
import com.google.zxing.MultiFormatWriter;
import com.google.zxing.WriterException;
import com.google.zxing.common.BitMatrix;
import java.awt.image.BufferedImage;
import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.nio.file.Path;
import java.util.List;
import java.util.Map;
import javax.imageio.ImageIO;
import org.apache.poi.ss.usermodel.ClientAnchor;
import org.apache.poi.ss.usermodel.HorizontalAlignment;
import org.apache.poi.ss.usermodel.PrintSetup;
import org.apache.poi.ss.usermodel.VerticalAlignment;
import org.apache.poi.ss.usermodel.Workbook;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.util.Units;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFClientAnchor;
import org.apache.poi.xssf.usermodel.XSSFDrawing;
import org.apache.poi.xssf.usermodel.XSSFFont;
import org.apache.poi.xssf.usermodel.XSSFRow;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;

/**
 * Sheets of labels to cut and stick on sets: the unit's label in plain letters, as a QR code (ISO/IEC 18004) and as Code 128
 * (ISO/IEC 15417), and two lines of text. Three labels across, eight down a page of A4 or Letter.
 */
public final class LabelSheet {
    private static final int ACROSS = 3;
    private static final int DOWN = 8;
    private static final int ROWS_A_LABEL = 4;
    /** What the margins leave of the height of a page, in points, and a little less. */
    private static final double POINTS_OF_A4 = 788;

    private static final double POINTS_OF_LETTER = 738;
    /** A font that offices have by this name or with its widths: columns are as wide as its digits say. */
    private static final String FONT = "Arial";

    private static final int FONT_POINTS = 10;
    private static final double FILLED = 0.94;
    private static final int QR_PIXELS = 132;
    private static final int BAR_PIXELS = 300;
    private static final int BAR_HEIGHT = 48;

    private LabelSheet() {}

    /** @param unit the label itself; what a scanner returns */
    public record Label(String unit, String line1, String line2) {}

    /** @throws java.io.UncheckedIOException if the file cannot be written */
    public static void write(Path file, List<Label> labels, String pageSize) {
        try (XSSFWorkbook book = new XSSFWorkbook()) {
            book.getFontAt(0).setFontName(FONT);
            book.getFontAt(0).setFontHeightInPoints((short) FONT_POINTS);
            XSSFSheet sheet = book.createSheet("Labels");
            boolean letter = "Letter".equalsIgnoreCase(pageSize);
            layOut(sheet, letter);
            double rowHeight = (letter ? POINTS_OF_LETTER : POINTS_OF_A4) / DOWN / ROWS_A_LABEL;
            sheet.setDefaultRowHeightInPoints((float) rowHeight);
            XSSFDrawing drawing = sheet.createDrawingPatriarch();
            XSSFCellStyle big = style(book, 12, true);
            XSSFCellStyle small = style(book, 8, false);
            for (int i = 0; i < labels.size(); i++) {
                put(sheet, drawing, labels.get(i), i, big, small);
            }
            int pages = (labels.size() + ACROSS * DOWN - 1) / (ACROSS * DOWN);
            for (int p = 1; p < pages; p++) {
                sheet.setRowBreak(p * DOWN * ROWS_A_LABEL - 1);
            }
            WholeFile.write(file, book::write);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private static void layOut(XSSFSheet sheet, boolean letter) {
        sheet.setDisplayGridlines(false);
        for (int c = 0; c < ACROSS; c++) {
            sheet.setColumnWidth(2 * c, 15 * 256);
            sheet.setColumnWidth(2 * c + 1, 18 * 256);
        }
        PrintSetup print = sheet.getPrintSetup();
        print.setPaperSize(letter ? PrintSetup.LETTER_PAPERSIZE : PrintSetup.A4_PAPERSIZE);
        sheet.setFitToPage(true);
        print.setFitWidth((short) 1);
        print.setFitHeight((short) 0);
        sheet.setMargin(org.apache.poi.ss.usermodel.PageMargin.LEFT, 0.3);
        sheet.setMargin(org.apache.poi.ss.usermodel.PageMargin.RIGHT, 0.3);
        sheet.setMargin(org.apache.poi.ss.usermodel.PageMargin.TOP, 0.35);
        sheet.setMargin(org.apache.poi.ss.usermodel.PageMargin.BOTTOM, 0.35);
    }

    private static void put(
            XSSFSheet sheet, XSSFDrawing drawing, Label label, int i, XSSFCellStyle big, XSSFCellStyle small) {
        int top = i / ACROSS * ROWS_A_LABEL;
        int left = i % ACROSS * 2;
        for (int r = 0; r < ROWS_A_LABEL; r++) {
            if (sheet.getRow(top + r) == null) {
                XSSFRow row = sheet.createRow(top + r);
                row.setHeightInPoints(sheet.getDefaultRowHeightInPoints());
            }
        }
        text(sheet, top, left + 1, label.unit(), big);
        text(sheet, top + 1, left + 1, label.line1(), small);
        text(sheet, top + 2, left + 1, label.line2(), small);
        sheet.addMergedRegion(new CellRangeAddress(top, top + ROWS_A_LABEL - 1, left, left));
        square(drawing, png(label.unit(), BarcodeFormat.QR_CODE, QR_PIXELS, QR_PIXELS), left, top);
        picture(
                drawing,
                png(label.unit(), BarcodeFormat.CODE_128, BAR_PIXELS, BAR_HEIGHT),
                left + 1,
                top + 3,
                left + 1,
                top + 3,
                0.04);
    }

    private static void text(XSSFSheet sheet, int row, int column, String text, XSSFCellStyle style) {
        var cell = sheet.getRow(row).createCell(column);
        cell.setCellValue(text); // a string cell, whatever it begins with
        cell.setCellStyle(style);
    }

    private static XSSFCellStyle style(XSSFWorkbook book, int points, boolean bold) {
        XSSFFont font = book.createFont();
        font.setFontName(FONT);
        font.setFontHeightInPoints((short) points);
        font.setBold(bold);
        XSSFCellStyle style = book.createCellStyle();
        style.setFont(font);
        style.setAlignment(HorizontalAlignment.LEFT);
        style.setVerticalAlignment(VerticalAlignment.CENTER);
        style.setQuotePrefixed(true);
        return style;
    }

    /** Places a picture in the middle of the first column of a label, as high as it is wide. */
    private static void square(XSSFDrawing drawing, byte[] png, int column, int top) {
        XSSFSheet sheet = drawing.getSheet();
        int width = Units.pixelToEMU((int) sheet.getColumnWidthInPixels(column));
        int row = Units.toEMU(sheet.getRow(top).getHeightInPoints());
        int side = (int) (Math.min(width, row * ROWS_A_LABEL) * FILLED);
        int x = (width - side) / 2;
        int y = (row * ROWS_A_LABEL - side) / 2;
        XSSFClientAnchor at = new XSSFClientAnchor(
                x, y % row, x + side, (y + side) % row, column, top + y / row, column, top + (y + side) / row);
        at.setAnchorType(ClientAnchor.AnchorType.MOVE_AND_RESIZE);
        drawing.createPicture(at, sheet.getWorkbook().addPicture(png, Workbook.PICTURE_TYPE_PNG));
    }

    /** Places a picture over a range of cells, a share of it left free at each edge. */
    private static void picture(XSSFDrawing drawing, byte[] png, int c1, int r1, int c2, int r2, double margin) {
        XSSFSheet sheet = drawing.getSheet();
        int width = Units.pixelToEMU((int) sheet.getColumnWidthInPixels(c2));
        int height = Units.toEMU(sheet.getRow(r2).getHeightInPoints());
        int mx = (int) (width * margin);
        int my = (int) (height * margin);
        XSSFClientAnchor at = new XSSFClientAnchor(mx, my, width - mx, height - my, c1, r1, c2, r2);
        at.setAnchorType(ClientAnchor.AnchorType.MOVE_AND_RESIZE);
        drawing.createPicture(at, sheet.getWorkbook().addPicture(png, Workbook.PICTURE_TYPE_PNG));
    }

    /** A code as a PNG picture, quiet zone included. */
    static byte[] png(String text, BarcodeFormat format, int width, int height) {
        try {
            BitMatrix bits = new MultiFormatWriter()
                    .encode(
                            text,
                            format,
                            width,
                            height,
                            Map.of(
                                    EncodeHintType.CHARACTER_SET,
                                    "UTF-8",
                                    EncodeHintType.MARGIN,
                                    format == BarcodeFormat.QR_CODE ? 2 : 10));
            BufferedImage image = new BufferedImage(bits.getWidth(), bits.getHeight(), BufferedImage.TYPE_BYTE_BINARY);
            for (int y = 0; y < bits.getHeight(); y++) {
                for (int x = 0; x < bits.getWidth(); x++) {
                    image.setRGB(x, y, bits.get(x, y) ? 0xFF000000 : 0xFFFFFFFF);
                }
            }
            ByteArrayOutputStream out = new ByteArrayOutputStream();
            ImageIO.write(image, "png", out);
            return out.toByteArray();
        } catch (WriterException e) {
            throw new IllegalArgumentException("\"" + text + "\" cannot be written as " + format, e);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }
}
