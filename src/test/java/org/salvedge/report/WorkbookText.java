package org.salvedge.report;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Locale;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFDrawing;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTAxDataSource;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTBarSer;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTLineSer;
import org.openxmlformats.schemas.drawingml.x2006.chart.CTNumDataSource;

/** A workbook as text that a person can compare: print set-up, cells with their formats, charts with their ranges. */
final class WorkbookText {
    private WorkbookText() {}

    static List<String> of(Path file) throws IOException {
        List<String> lines = new ArrayList<>();
        try (XSSFWorkbook book = new XSSFWorkbook(Files.newInputStream(file))) {
            for (int s = 0; s < book.getNumberOfSheets(); s++) {
                sheet(book.getSheetAt(s), lines);
            }
        }
        return lines;
    }

    private static void sheet(XSSFSheet sheet, List<String> lines) {
        lines.add(
                "== " + sheet.getSheetName() + " paper " + sheet.getPrintSetup().getPaperSize()
                        + (sheet.getPrintSetup().getLandscape() ? " landscape" : " portrait")
                        + " fit " + sheet.getPrintSetup().getFitWidth() + "x"
                        + sheet.getPrintSetup().getFitHeight()
                        + " frozen "
                        + (sheet.getPaneInformation() == null
                                ? "no"
                                : sheet.getPaneInformation().getVerticalSplitPosition() + ","
                                        + sheet.getPaneInformation().getHorizontalSplitPosition())
                        + " filter "
                        + (sheet.getCTWorksheet().isSetAutoFilter()
                                ? sheet.getCTWorksheet().getAutoFilter().getRef()
                                : "no")
                        + " repeats "
                        + (sheet.getRepeatingRows() == null
                                ? "no"
                                : sheet.getRepeatingRows().formatAsString())
                        + " footer " + sheet.getFooter().getLeft() + "|"
                        + sheet.getFooter().getCenter() + "|"
                        + sheet.getFooter().getRight());
        for (Row row : sheet) {
            for (Cell cell : row) {
                lines.add(sheet.getSheetName() + "!" + cell.getAddress() + " = " + value(cell));
            }
        }
        XSSFDrawing drawing = sheet.getDrawingPatriarch();
        if (drawing != null) {
            drawing.getCharts().forEach(chart -> chart(sheet, chart, lines));
        }
    }

    private static String value(Cell cell) {
        String format = cell.getCellStyle().getDataFormatString();
        String quoted = cell.getCellStyle().getQuotePrefixed() ? " quoted" : "";
        if (cell.getCellType() == CellType.NUMERIC) {
            return String.format(Locale.ROOT, "%.9g", cell.getNumericCellValue()) + " [" + format + "]";
        }
        return cell.getCellType() == CellType.STRING
                ? "\"" + cell.getStringCellValue().replace("\n", "\\n") + "\"" + quoted
                : cell.getCellType().toString();
    }

    private static void chart(XSSFSheet sheet, XSSFChart chart, List<String> lines) {
        String name = sheet.getSheetName() + " chart \"" + chart.getTitleText().getString() + "\"";
        var area = chart.getCTChart().getPlotArea();
        area.getLineChartList().forEach(c -> {
            for (CTLineSer run : c.getSerList()) {
                lines.add(name + " line " + ranges(run.getCat(), run.getVal()));
            }
        });
        area.getBarChartList().forEach(c -> {
            for (CTBarSer run : c.getSerList()) {
                lines.add(name + " " + c.getBarDir().getVal() + " " + ranges(run.getCat(), run.getVal()));
            }
        });
    }

    private static String ranges(CTAxDataSource names, CTNumDataSource values) {
        return names.getStrRef().getF() + " : " + values.getNumRef().getF();
    }
}
