package org.salvedge.report;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Money;

/** The charts of the monthly review's web page, over the same tables as those of the workbook. */
final class PageCharts {
    private final YearMonth month;
    private final Paper paper;
    private final List<MonthSheets.Sheet> sheets;
    private final StringBuilder out = new StringBuilder();

    PageCharts(YearMonth month, Paper paper, List<MonthSheets.Sheet> sheets) {
        this.month = month;
        this.paper = paper;
        this.sheets = sheets;
    }

    String svg() {
        String code = paper.currency().getCurrencyCode();
        Table months = table(sheets, MonthSheets.CHART);
        Table money = table(sheets, MonthSheets.MONEY);
        Table time = table(sheets, MonthSheets.TIME);
        Table lots = table(sheets, MonthSheets.OUTCOMES);
        out.append("<div class=\"charts\">\n");
        if (!months.rows().isEmpty()) {
            chart(
                    "Yield by month, with control limits",
                    SvgChart.lines(
                            "Yield by month, with control limits",
                            texts(months, Figure.POINT),
                            List.of(
                                    series("yield", months, Figure.VALUE),
                                    series("centre", months, Figure.CENTRE),
                                    series("lower limit", months, Figure.LIMIT_LOW),
                                    series("upper limit", months, Figure.LIMIT_HIGH)),
                            true));
        }
        double[] base = numbers(money, Figure.CHART_BASE);
        double[] above = numbers(money, Figure.CHART_ABOVE);
        double[] below = numbers(money, Figure.CHART_BELOW);
        double[] from = new double[base.length];
        double[] to = new double[base.length];
        for (int i = 0; i < base.length; i++) {
            from[i] = base[i] + below[i];
            to[i] = base[i] + above[i];
        }
        String steps = "From takings to margin (" + code + ")";
        chart(steps, SvgChart.waterfall(steps, texts(money, Figure.STEP), from, to));
        chart(
                "Minutes per saved set, by fix",
                SvgChart.bars(
                        "Minutes per saved set, by fix",
                        texts(time, Figure.FIX),
                        List.of(
                                series(month.toString(), time, Figure.MINUTES_PER_SAVED),
                                series("month before", time, Figure.PER_SAVED_BEFORE))));
        if (!lots.rows().isEmpty()) {
            lots(lots, code);
        }
        return out.append("</div>\n").toString();
    }

    private void lots(Table lots, String code) {
        String outcome = "Lots finished last: cost and outcome (" + code + ")";
        chart(
                outcome,
                SvgChart.columns(
                        outcome,
                        texts(lots, Figure.LOT),
                        List.of(
                                series("landed cost", lots, Figure.LANDED),
                                series("said when bid for", lots, Figure.P50),
                                series("recovered", lots, Figure.RECOVERED))));
    }

    private void chart(String caption, String svg) {
        out.append("<figure><figcaption>")
                .append(Html.text(caption))
                .append("</figcaption>")
                .append(svg)
                .append("</figure>\n");
    }

    private static Table table(List<MonthSheets.Sheet> sheets, String name) {
        return sheets.stream()
                .filter(s -> s.name().equals(name))
                .findFirst()
                .orElseThrow()
                .table();
    }

    private static List<@Nullable Object> column(Table table, Figure figure) {
        int at = table.columns().indexOf(figure.column());
        List<@Nullable Object> values = new ArrayList<>();
        table.rows().forEach(row -> values.add(row.get(at)));
        return values;
    }

    private static List<String> texts(Table table, Figure figure) {
        return column(table, figure).stream()
                .map(v -> Visible.text(String.valueOf(v)))
                .toList();
    }

    private static double[] numbers(Table table, Figure figure) {
        return column(table, figure).stream()
                .mapToDouble(v -> v instanceof Money m
                        ? m.amount().doubleValue()
                        : v instanceof Number n ? n.doubleValue() : Double.NaN)
                .toArray();
    }

    private static SvgChart.Series series(String name, Table table, Figure figure) {
        return new SvgChart.Series(name, numbers(table, figure));
    }
}
