package org.salvedge.report;

import java.util.List;
import org.apache.poi.ss.util.CellRangeAddress;
import org.apache.poi.xddf.usermodel.PresetLineDash;
import org.apache.poi.xddf.usermodel.PresetPattern;
import org.apache.poi.xddf.usermodel.XDDFColor;
import org.apache.poi.xddf.usermodel.XDDFLineProperties;
import org.apache.poi.xddf.usermodel.XDDFNoFillProperties;
import org.apache.poi.xddf.usermodel.XDDFPatternFillProperties;
import org.apache.poi.xddf.usermodel.XDDFPresetLineDash;
import org.apache.poi.xddf.usermodel.XDDFShapeProperties;
import org.apache.poi.xddf.usermodel.XDDFSolidFillProperties;
import org.apache.poi.xddf.usermodel.chart.AxisCrosses;
import org.apache.poi.xddf.usermodel.chart.AxisOrientation;
import org.apache.poi.xddf.usermodel.chart.AxisPosition;
import org.apache.poi.xddf.usermodel.chart.AxisTickLabelPosition;
import org.apache.poi.xddf.usermodel.chart.BarDirection;
import org.apache.poi.xddf.usermodel.chart.BarGrouping;
import org.apache.poi.xddf.usermodel.chart.ChartTypes;
import org.apache.poi.xddf.usermodel.chart.DisplayBlanks;
import org.apache.poi.xddf.usermodel.chart.Grouping;
import org.apache.poi.xddf.usermodel.chart.LegendPosition;
import org.apache.poi.xddf.usermodel.chart.MarkerStyle;
import org.apache.poi.xddf.usermodel.chart.XDDFBarChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFCategoryAxis;
import org.apache.poi.xddf.usermodel.chart.XDDFChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFDataSource;
import org.apache.poi.xddf.usermodel.chart.XDDFDataSourcesFactory;
import org.apache.poi.xddf.usermodel.chart.XDDFLineChartData;
import org.apache.poi.xddf.usermodel.chart.XDDFNumericalDataSource;
import org.apache.poi.xddf.usermodel.chart.XDDFValueAxis;
import org.apache.poi.xddf.usermodel.text.XDDFTextRun;
import org.apache.poi.xssf.usermodel.XSSFChart;
import org.apache.poi.xssf.usermodel.XSSFClientAnchor;
import org.apache.poi.xssf.usermodel.XSSFSheet;
import org.jspecify.annotations.Nullable;

/** Native charts over cells of the same workbook, so that they follow when a figure is changed. */
final class Charts {
    private static final byte[] MAIN = {0x1f, 0x4e, (byte) 0x79};
    private static final byte[] OTHER = {(byte) 0xc5, 0x5a, 0x11};
    private static final byte[] LIGHT = {(byte) 0x9d, (byte) 0xc3, (byte) 0xe6};
    private static final byte[] FAINT = {0x7f, 0x7f, 0x7f};
    private static final byte[] WHITE = {(byte) 0xff, (byte) 0xff, (byte) 0xff};
    private static final byte[] GRID = {(byte) 0xd9, (byte) 0xd9, (byte) 0xd9};
    private static final double THICK = 2.25;
    private static final double THIN = 1;
    private static final double HAIR = 0.75;
    private static final double TITLE_POINTS = 11;
    private static final int GAP_PERCENT = 60;

    private final XSSFSheet page;

    Charts(XSSFSheet page) {
        this.page = page;
    }

    /** Where on the page: columns and rows from 0, the last ones excluded. */
    record Place(int column, int row, int endColumn, int endRow) {}

    /** A run of cells below one another, and its name in the legend. */
    record Run(XSSFSheet sheet, int column, int first, int last, String name) {
        CellRangeAddress range() {
            return new CellRangeAddress(first, last, column, column);
        }

        XDDFDataSource<String> texts() {
            return XDDFDataSourcesFactory.fromStringCellRange(sheet, range());
        }

        XDDFNumericalDataSource<Double> numbers() {
            return XDDFDataSourcesFactory.fromNumericCellRange(sheet, range());
        }
    }

    /** A line with markers, a thin one for its centre, and dashed ones for the ends of its interval. */
    void lines(Place place, String title, String format, Run categories, List<Run> runs) {
        XSSFChart chart = chart(place, title);
        XDDFCategoryAxis bottom = chart.createCategoryAxis(AxisPosition.BOTTOM);
        XDDFValueAxis left = values(chart, AxisPosition.LEFT, format);
        left.crossAxis(bottom);
        bottom.setTickLabelPosition(AxisTickLabelPosition.LOW);
        if (format.contains("%")) { // shares, which some programs would show up to 120 %
            left.setMinimum(0);
            left.setMaximum(1);
        }
        XDDFLineChartData data = (XDDFLineChartData) chart.createData(ChartTypes.LINE, bottom, left);
        for (int i = 0; i < runs.size(); i++) {
            XDDFLineChartData.Series series = (XDDFLineChartData.Series)
                    data.addSeries(categories.texts(), runs.get(i).numbers());
            series.setTitle(runs.get(i).name(), null);
            series.setSmooth(false);
            series.setMarkerStyle(i == 0 ? MarkerStyle.CIRCLE : MarkerStyle.NONE);
            if (i == 0) {
                series.setMarkerSize((short) 6);
            }
            series.setLineProperties(
                    i == 0 ? line(MAIN, THICK, null) : line(FAINT, THIN, i == 1 ? null : PresetLineDash.DASH));
            if (i == 0) {
                fillMarkers(series);
            }
        }
        data.setGrouping(Grouping.STANDARD);
        data.setVaryColors(false);
        chart.plot(data);
        legend(chart, runs.size());
    }

    /** Columns above categories, or bars beside them (the first at the top). */
    void bars(Place place, String title, String format, boolean beside, Run categories, List<Run> runs) {
        XSSFChart chart = chart(place, title);
        XDDFCategoryAxis names = chart.createCategoryAxis(beside ? AxisPosition.LEFT : AxisPosition.BOTTOM);
        XDDFValueAxis values = values(chart, beside ? AxisPosition.BOTTOM : AxisPosition.LEFT, format);
        names.setTickLabelPosition(AxisTickLabelPosition.LOW);
        chart.getCTChart().getPlotArea().getCatAxArray(0).addNewTickLblSkip().setVal(1); // every name is shown
        if (beside) {
            names.setOrientation(AxisOrientation.MAX_MIN);
            values.setCrosses(AxisCrosses.MAX);
        }
        XDDFBarChartData data = (XDDFBarChartData) chart.createData(ChartTypes.BAR, names, values);
        data.setBarDirection(beside ? BarDirection.BAR : BarDirection.COL);
        data.setBarGrouping(BarGrouping.CLUSTERED);
        data.setGapWidth(GAP_PERCENT);
        data.setVaryColors(false);
        for (int i = 0; i < runs.size(); i++) {
            XDDFChartData.Series series =
                    data.addSeries(categories.texts(), runs.get(i).numbers());
            series.setTitle(runs.get(i).name(), null);
            look(series, i);
            ((XDDFBarChartData.Series) series).setInvertIfNegative(false);
        }
        chart.plot(data);
        legend(chart, runs.size());
    }

    /** Told apart without colour too: solid, hatched, pale with an outline. */
    private static void look(XDDFChartData.Series series, int i) {
        if (i == 1) {
            XDDFPatternFillProperties hatch = new XDDFPatternFillProperties();
            hatch.setPresetPattern(PresetPattern.WIDE_UPWARD_DIAGONAL);
            // Set by hand: the library's own setters leave the colours empty.
            hatch.getXmlObject().addNewFgClr().addNewSrgbClr().setVal(OTHER);
            hatch.getXmlObject().addNewBgClr().addNewSrgbClr().setVal(WHITE);
            series.setFillProperties(hatch);
        } else {
            series.setFillProperties(fill(i == 0 ? MAIN : LIGHT));
        }
        series.setLineProperties(line(i == 1 ? OTHER : MAIN, HAIR, null));
    }

    /** Columns that begin where those before end: the first run is where each begins, and is not seen. */
    void waterfall(Place place, String title, String format, Run categories, List<Run> runs) {
        XSSFChart chart = chart(place, title);
        XDDFCategoryAxis names = chart.createCategoryAxis(AxisPosition.BOTTOM);
        XDDFValueAxis values = values(chart, AxisPosition.LEFT, format);
        names.setTickLabelPosition(AxisTickLabelPosition.LOW);
        chart.getCTChart().getPlotArea().getCatAxArray(0).addNewTickLblSkip().setVal(1);
        XDDFBarChartData data = (XDDFBarChartData) chart.createData(ChartTypes.BAR, names, values);
        data.setBarDirection(BarDirection.COL);
        data.setBarGrouping(BarGrouping.STACKED);
        data.setOverlap((byte) 100);
        data.setGapWidth(GAP_PERCENT);
        data.setVaryColors(false);
        for (int i = 0; i < runs.size(); i++) {
            XDDFChartData.Series series =
                    data.addSeries(categories.texts(), runs.get(i).numbers());
            series.setTitle(runs.get(i).name(), null);
            series.setFillProperties(i == 0 ? new XDDFNoFillProperties() : fill(MAIN));
            ((XDDFBarChartData.Series) series).setInvertIfNegative(false);
        }
        chart.plot(data);
    }

    private XSSFChart chart(Place place, String title) {
        XSSFClientAnchor anchor =
                new XSSFClientAnchor(0, 0, 0, 0, place.column, place.row, place.endColumn, place.endRow);
        XSSFChart chart = page.createDrawingPatriarch().createChart(anchor);
        chart.setTitleText(title);
        chart.setTitleOverlay(false);
        XDDFTextRun words =
                chart.getFormattedTitle().getParagraph(0).getTextRuns().get(0);
        words.setFontSize(TITLE_POINTS);
        words.setBold(true);
        chart.displayBlanksAs(DisplayBlanks.GAP);
        return chart;
    }

    private static XDDFValueAxis values(XSSFChart chart, AxisPosition position, String format) {
        XDDFValueAxis axis = chart.createValueAxis(position);
        axis.setCrosses(AxisCrosses.AUTO_ZERO);
        axis.setNumberFormat(format);
        axis.getOrAddMajorGridProperties().setLineProperties(line(GRID, THIN, null));
        axis.getOrAddShapeProperties().setLineProperties(line(GRID, THIN, null));
        return axis;
    }

    private static void legend(XSSFChart chart, int runs) {
        if (runs > 1) {
            chart.getOrAddLegend().setPosition(LegendPosition.BOTTOM);
        }
    }

    private static void fillMarkers(XDDFLineChartData.Series series) {
        XDDFShapeProperties marker = new XDDFShapeProperties();
        marker.setFillProperties(fill(MAIN));
        series.getCTLineSer().getMarker().setSpPr(marker.getXmlObject());
    }

    private static XDDFSolidFillProperties fill(byte[] rgb) {
        return new XDDFSolidFillProperties(XDDFColor.from(rgb));
    }

    private static XDDFLineProperties line(byte[] rgb, double points, @Nullable PresetLineDash dash) {
        XDDFLineProperties line = new XDDFLineProperties(fill(rgb));
        line.setWidth(points);
        if (dash != null) {
            line.setPresetDash(new XDDFPresetLineDash(dash));
        }
        return line;
    }
}
