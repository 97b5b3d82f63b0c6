package org.salvedge.report;

import java.io.ByteArrayOutputStream;
import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Path;
import java.time.Instant;
import java.util.ArrayList;
import java.util.Date;
import java.util.HashSet;
import java.util.List;
import java.util.Locale;
import java.util.Optional;
import java.util.Set;
import java.util.regex.Pattern;
import org.apache.poi.ss.usermodel.BorderStyle;
import org.apache.poi.ss.usermodel.CellStyle;
import org.apache.poi.ss.usermodel.FillPatternType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.ss.util.WorkbookUtil;
import org.apache.poi.xssf.streaming.SXSSFSheet;
import org.apache.poi.xssf.streaming.SXSSFWorkbook;
import org.apache.poi.xssf.usermodel.XSSFCellStyle;
import org.apache.poi.xssf.usermodel.XSSFColor;
import org.apache.poi.xssf.usermodel.XSSFFont;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.salvedge.manifest.Manifest;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.grid.Sheet;
import org.salvedge.shop.Problem;

/**
 * A copy of a seller's sheets, cell by cell in its place, with what must be looked at marked: a thick frame, bold type and a shade
 * on the cell, and a note behind the row. Text stays text, whatever it begins with; nothing of the file itself is carried over.
 */
public final class MarkedCopy {
    private static final int ROWS_IN_MEMORY = 200;
    private static final int LONGEST_TEXT = 32_000;
    private static final int LOOKED_AT = 1_000;
    private static final int UNITS_A_CHARACTER = 256;
    private static final int NARROWEST = 6;
    private static final int WIDEST = 40;
    private static final int NOTE_CHARACTERS = 80;
    private static final int LAST_ROW = 1_048_576;
    private static final byte[] SHADE = {(byte) 0xff, (byte) 0xec, (byte) 0xb3};
    private static final Pattern PLAIN_NUMBER = Pattern.compile("-?(0|[1-9][0-9]{0,14})(\\.[0-9]{1,10})?");

    private final CellStyle text;
    private final CellStyle markedText;
    private final CellStyle markedNumber;
    private final CellStyle note;

    private MarkedCopy(XSSFWorkbook book) {
        text = style(book, true);
        markedText = marked(style(book, true), font(book, true, false));
        markedNumber = marked(style(book, false), font(book, true, false));
        XSSFCellStyle words = style(book, true);
        words.setFont(font(book, false, true));
        words.setWrapText(true);
        note = words;
    }

    /** @throws IOException if the file cannot be written; then nothing of it is left */
    public static void write(Manifest manifest, List<Sheet> sheets, Path file) throws IOException {
        ByteArrayOutputStream bytes = new ByteArrayOutputStream();
        XSSFWorkbook base = new XSSFWorkbook();
        base.getProperties().getCoreProperties().setCreator("salvedge");
        base.getProperties().getCoreProperties().setCreated(Optional.of(Date.from(Instant.EPOCH)));
        PassingFiles.use();
        try (SXSSFWorkbook book = new SXSSFWorkbook(base, ROWS_IN_MEMORY)) {
            MarkedCopy copy = new MarkedCopy(base);
            Set<String> names = new HashSet<>();
            ProblemPlaces places = new ProblemPlaces(manifest, sheets);
            for (int i = 0; i < sheets.size(); i++) {
                if (sheets.get(i).isVisible()) {
                    SXSSFSheet into = book.createSheet(name(sheets.get(i), names));
                    copy.copy(sheets.get(i), places.of(i), into);
                }
            }
            book.write(bytes);
        }
        WholeFile.write(file, (OutputStream out) -> SameBytes.copy(bytes.toByteArray(), out));
    }

    /** A name that a workbook may have, and has not yet. */
    private static String name(Sheet sheet, Set<String> taken) {
        String wanted = sheet.name() == null || sheet.name().isBlank() ? "Table" : Visible.text(sheet.name());
        String name = WorkbookUtil.createSafeSheetName(wanted);
        for (int i = 2; !taken.add(name.toLowerCase(Locale.ROOT)); i++) {
            String end = " " + i;
            name = WorkbookUtil.createSafeSheetName(
                    wanted.substring(0, Math.min(wanted.length(), 31 - end.length())) + end);
        }
        return name;
    }

    private void copy(Sheet from, ProblemPlaces.OnSheet problems, SXSSFSheet into) {
        setUp(from, problems, into);
        boolean told = false;
        for (int i = 0; i < from.size() && from.number(i) <= LAST_ROW; i++) {
            int number = from.number(i);
            Cell[] cells = from.row(i);
            List<Problem> here = new ArrayList<>(problems.at(number));
            if (!told) {
                here.addAll(problems.ofTheWhole());
                told = true;
            }
            Set<Integer> bad = new HashSet<>();
            here.forEach(p -> bad.add(problems.column(p, cells)));
            Row row = into.createRow(number - 1);
            for (int c = 0; c < cells.length; c++) {
                boolean own = cells[c].origin() == Cell.Origin.OWN && !cells[c].isBlank();
                if (own || bad.contains(c)) {
                    put(row.createCell(c), own ? cells[c] : Cell.BLANK, bad.contains(c));
                }
            }
            if (!here.isEmpty()) {
                org.apache.poi.ss.usermodel.Cell words = row.createCell(from.width());
                words.setCellValue(cut(note(here)));
                words.setCellStyle(note);
            }
        }
    }

    private static void setUp(Sheet from, ProblemPlaces.OnSheet problems, SXSSFSheet into) {
        int[] widths = new int[from.width()];
        for (int i = 0; i < Math.min(LOOKED_AT, from.size()); i++) {
            Cell[] cells = from.row(i);
            for (int c = 0; c < cells.length; c++) {
                boolean own = cells[c].origin() == Cell.Origin.OWN;
                widths[c] = Math.max(widths[c], own ? cells[c].shown().length() : 0);
            }
        }
        for (int c = 0; c < widths.length; c++) {
            into.setColumnWidth(c, Math.max(NARROWEST, Math.min(WIDEST, widths[c] + 2)) * UNITS_A_CHARACTER);
        }
        if (problems.any()) {
            into.setColumnWidth(from.width(), NOTE_CHARACTERS * UNITS_A_CHARACTER);
        }
        into.getPrintSetup().setLandscape(true);
        into.setFitToPage(true);
        into.getPrintSetup().setFitWidth((short) 1);
        into.getPrintSetup().setFitHeight((short) 0);
    }

    private void put(org.apache.poi.ss.usermodel.Cell into, Cell cell, boolean bad) {
        String shown = cell.shown();
        if (cell.isNumber() && PLAIN_NUMBER.matcher(shown).matches()) {
            into.setCellValue(cell.number());
            if (bad) {
                into.setCellStyle(markedNumber);
            }
        } else {
            into.setCellValue(cut(shown));
            into.setCellStyle(bad ? markedText : text);
        }
    }

    private static String note(List<Problem> problems) {
        StringBuilder note = new StringBuilder();
        for (Problem p : problems) {
            note.append(note.isEmpty() ? "!! " : "\n!! ");
            note.append(p.column() == null ? "" : p.column() + ": ");
            note.append(p.found() == null ? "" : "\"" + p.found() + "\" ");
            note.append(p.problem()).append(p.advice().isEmpty() ? "" : ". " + p.advice());
        }
        return note.toString();
    }

    private static String cut(String text) {
        return text.length() > LONGEST_TEXT ? text.substring(0, LONGEST_TEXT) : text;
    }

    /** @param quoted not read as a formula when it is edited */
    private static XSSFCellStyle style(XSSFWorkbook book, boolean quoted) {
        XSSFCellStyle style = book.createCellStyle();
        style.setQuotePrefixed(quoted);
        return style;
    }

    private static XSSFFont font(XSSFWorkbook book, boolean bold, boolean italic) {
        XSSFFont font = book.createFont();
        font.setBold(bold);
        font.setItalic(italic);
        return font;
    }

    private static XSSFCellStyle marked(XSSFCellStyle style, XSSFFont font) {
        style.setFont(font);
        style.setBorderTop(BorderStyle.THICK);
        style.setBorderBottom(BorderStyle.THICK);
        style.setBorderLeft(BorderStyle.THICK);
        style.setBorderRight(BorderStyle.THICK);
        style.setFillForegroundColor(new XSSFColor(SHADE));
        style.setFillPattern(FillPatternType.SOLID_FOREGROUND);
        return style;
    }
}
