package org.salvedge.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Money;
import org.salvedge.yield.Deed;
import org.salvedge.yield.MonthFigures;
import org.salvedge.yield.MonthReview;
import org.salvedge.yield.Range;

/** The monthly review as one web page: no script, nothing loaded from elsewhere, light and dark, and it prints as the workbook does. */
public final class MonthPage {
    /** Longer lists of single sets stand in the workbook only. */
    private static final int MOST_ROWS = 3_000;

    private static final int WIDE = 12;

    private final MonthReview review;
    private final MonthNotes notes;
    private final Paper paper;
    private final MonthWords words;
    private final HtmlTable tables;
    private final StringBuilder out = new StringBuilder(1 << 16);

    private MonthPage(MonthReview review, MonthNotes notes, Paper paper) {
        this.review = review;
        this.notes = notes;
        this.paper = paper;
        words = new MonthWords(review);
        tables = new HtmlTable(paper);
    }

    /** @throws IOException if the file cannot be written; then nothing of it is left */
    public static void write(MonthReview review, Paper paper, Path file) throws IOException {
        write(review, MonthNotes.NONE, paper, file);
    }

    /**
     * @throws IOException if the file cannot be written; then nothing of it is left
     */
    public static void write(MonthReview review, MonthNotes notes, Paper paper, Path file) throws IOException {
        String page = new MonthPage(review, notes, paper).page();
        WholeFile.write(file, stream -> {
            try (Writer writer = new OutputStreamWriter(stream, StandardCharsets.UTF_8)) {
                writer.write(page);
            }
        });
    }

    private String page() {
        List<MonthSheets.Sheet> sheets = MonthSheets.of(review, notes);
        String title = review.month() + " at " + Html.text(paper.shop());
        out.append("<!doctype html>\n<html lang=\"en\">\n<head>\n<meta charset=\"utf-8\">\n")
                .append("<meta name=\"viewport\" content=\"width=device-width, initial-scale=1\">\n<title>")
                .append(title)
                .append("</title>\n<style>\n@page { size: ")
                .append(paper.letter() ? "Letter" : "A4")
                .append("; margin: 12mm; }\n@page wide { size: ")
                .append(paper.letter() ? "Letter" : "A4")
                .append(" landscape; }\n")
                .append(style())
                .append("</style>\n</head>\n<body>\n")
                .append("<svg width=\"0\" height=\"0\" style=\"position:absolute\" aria-hidden=\"true\"><defs>")
                .append("<pattern id=\"hatch\" width=\"4\" height=\"4\" patternUnits=\"userSpaceOnUse\"")
                .append(" patternTransform=\"rotate(45)\"><line class=\"hatch\" x1=\"0\" y1=\"0\" x2=\"0\" y2=\"4\"/>")
                .append("</pattern></defs></svg>\n<section class=\"front\">\n<h1>")
                .append(title)
                .append("</h1>\n");
        for (String sentence : words.sentences()) {
            out.append("<p>").append(Html.text(sentence)).append("</p>\n");
        }
        SincePrinting since = notes.since();
        if (since != null) {
            out.append("<p>").append(Html.text(since.sentence())).append("</p>\n");
        }
        figures();
        charts(sheets);
        deeds();
        out.append("<p class=\"small\">Printed on ")
                .append(paper.printedOn())
                .append(". Intervals hold 95 %.</p>\n</section>\n<nav aria-label=\"Contents\">\n");
        for (MonthSheets.Sheet sheet : sheets) {
            out.append("<a href=\"#")
                    .append(HtmlTable.id(sheet.name()))
                    .append("\">")
                    .append(sheet.name())
                    .append("</a>\n");
        }
        out.append("<a href=\"#definitions\">Definitions</a>\n</nav>\n");
        sheets.forEach(this::section);
        definitions();
        return out.append("</body>\n</html>\n").toString();
    }

    private static String style() {
        try (InputStream css = Objects.requireNonNull(MonthPage.class.getResourceAsStream("month.css"))) {
            return new String(css.readAllBytes(), StandardCharsets.UTF_8);
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    private void figures() {
        out.append("<table>\n<thead><tr><th></th><th class=\"n\">")
                .append(review.month())
                .append(
                        "</th><th class=\"n\">month before</th><th class=\"n\">a year before</th></tr></thead>\n<tbody>\n");
        int digits = paper.moneyDigits();
        String code = " " + paper.currency().getCurrencyCode();
        row("sets received", m -> Digits.grouped(m.received()));
        row("sets decided", m -> Digits.grouped(m.counted().decided()));
        row("sets saved", m -> Digits.grouped(m.counted().saved()));
        row(
                "yield",
                m -> range(
                        new Range(
                                100 * m.counted().raw(),
                                100 * m.counted().rawLow(),
                                100 * m.counted().rawHigh()),
                        1,
                        " %"));
        row("minutes per saved set", m -> range(m.minutesPerSaved(), 0, ""));
        row("sets gone", m -> Digits.grouped(m.counted().gone()));
        row("margin", m -> money(m.counted().marginTotal()) + code);
        row("margin per set", m -> range(m.marginPerSet(), digits, code));
        row("margin per bench hour", m -> Digits.grouped(m.counted().marginPerHour(), digits) + code);
        row("comebacks, their cost", m -> money(m.comebackCost()) + code);
        releases("sales, a check unmet", notes.releases().unmet());
        releases("sales, a check not on record", notes.releases().unknown());
        out.append("</tbody>\n</table>\n");
    }

    /** A count of the month that leads to the sales behind it; where there are none, nothing. */
    private void releases(String name, int count) {
        if (count > 0) {
            out.append("<tr><td>")
                    .append(name)
                    .append("</td><td class=\"n\"><a href=\"#")
                    .append(HtmlTable.id(ReleaseExceptions.SHEET))
                    .append("\">")
                    .append(Digits.grouped(count))
                    .append("</a></td><td></td><td></td></tr>\n");
        }
    }

    private static String money(Money money) {
        return Digits.grouped(money.amount(), money.amount().scale());
    }

    private static String range(Range range, int digits, String unit) {
        return range.known()
                ? Digits.grouped(range.value(), digits) + unit + " (" + Digits.grouped(range.low(), digits) + " to "
                        + Digits.grouped(range.high(), digits) + ")"
                : "";
    }

    private void row(String name, Function<MonthFigures, String> figure) {
        out.append("<tr><td><a href=\"#")
                .append(HtmlTable.id(FrontLinks.sheet(name)))
                .append("\">")
                .append(name)
                .append("</a></td>");
        for (MonthFigures m : List.of(review.now(), review.before(), review.yearAgo())) {
            boolean empty = m.counted().decided() == 0 && m.counted().gone() == 0 && m.received() == 0;
            out.append("<td class=\"n\">").append(empty ? "" : figure.apply(m)).append("</td>");
        }
        out.append("</tr>\n");
    }

    private void charts(List<MonthSheets.Sheet> sheets) {
        String code = paper.currency().getCurrencyCode();
        Table months = table(sheets, MonthSheets.CHART);
        Table money = table(sheets, MonthSheets.MONEY);
        Table time = table(sheets, MonthSheets.TIME);
        Table lots = table(sheets, MonthSheets.OUTCOMES);
        out.append("<div class=\"charts\">\n");
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
                                series(review.month().toString(), time, Figure.MINUTES_PER_SAVED),
                                series("month before", time, Figure.PER_SAVED_BEFORE))));
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
        out.append("</div>\n");
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

    private void deeds() {
        List<Deed> deeds = review.why().deeds();
        if (deeds.isEmpty()) {
            out.append("<p>Nothing stands out as worth changing.</p>\n");
            return;
        }
        out.append("<table>\n<thead><tr><th>worth doing, a month</th><th class=\"n\">worth, ")
                .append(paper.currency().getCurrencyCode())
                .append("</th><th class=\"n\">95 % from - to</th></tr></thead>\n<tbody>\n");
        for (Deed deed : deeds) {
            out.append("<tr><td>")
                    .append(Html.text(words.deed(deed)))
                    .append("</td><td class=\"n\">")
                    .append(Digits.grouped(deed.worth().value(), 0))
                    .append("</td><td class=\"n\">")
                    .append(words.worth(deed.worth()))
                    .append("</td></tr>\n");
        }
        out.append(
                "</tbody>\n</table>\n<p class=\"small\">In months like the last three. No set is counted under two of these.</p>\n");
    }

    private void section(MonthSheets.Sheet sheet) {
        Table table = sheet.table();
        out.append("<section id=\"")
                .append(HtmlTable.id(sheet.name()))
                .append("\"")
                .append(kind(sheet))
                .append(">\n<h2>")
                .append(Html.text(table.title()))
                .append("</h2>\n<p class=\"small\">")
                .append(Html.text(sheet.about()))
                .append("</p>\n");
        if (sheet.lists() && table.rows().size() > MOST_ROWS) {
            out.append("<p>")
                    .append(Digits.grouped(table.rows().size()))
                    .append(" rows: see the workbook's sheet of this name.</p>\n</section>\n");
            return;
        }
        tables.write(sheet.name(), table, out);
        out.append("</section>\n");
    }

    /** Long lists stay on the screen. */
    private static String kind(MonthSheets.Sheet sheet) {
        if (sheet.lists() && sheet.table().rows().size() > Print.ROWS_OF_LISTS) {
            return " class=\"listing\"";
        }
        return sheet.table().columns().size() > WIDE ? " class=\"wide\"" : "";
    }

    private void definitions() {
        out.append("<section id=\"definitions\">\n<h2>What each figure means</h2>\n<table>\n<tbody>\n");
        for (Figure figure : Figure.values()) {
            out.append("<tr><td><b>")
                    .append(Html.text(figure.words()))
                    .append("</b></td><td>")
                    .append(Html.text(figure.meaning()))
                    .append("</td></tr>\n");
        }
        out.append("</tbody>\n</table>\n</section>\n");
    }
}
