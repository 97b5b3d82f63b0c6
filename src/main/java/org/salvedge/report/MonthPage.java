package org.salvedge.report;

import java.io.IOException;
import java.io.InputStream;
import java.io.OutputStreamWriter;
import java.io.Writer;
import java.nio.charset.StandardCharsets;
import java.nio.file.Path;
import java.util.List;
import java.util.Objects;
import java.util.function.Function;
import java.util.function.ToDoubleFunction;
import java.util.stream.Collectors;
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
    private final FrontLinks links;
    private final List<MonthSheets.Sheet> sheets;
    private final HtmlTable tables;
    private final StringBuilder out = new StringBuilder(1 << 16);

    private MonthPage(MonthReview review, MonthNotes notes, Paper paper) {
        this.review = review;
        this.notes = notes;
        this.paper = paper;
        words = new MonthWords(review);
        links = new FrontLinks(review);
        sheets = MonthSheets.of(review, notes);
        tables = new HtmlTable(
                paper,
                sheets.stream()
                        .filter(MonthPage::leftOut)
                        .map(MonthSheets.Sheet::name)
                        .collect(Collectors.toUnmodifiableSet()));
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
        String title = review.month() + " at " + Html.text(paper.shop()) + notes.behindTitle();
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
            out.append("<p>").append(Html.text(Unbroken.text(sentence))).append("</p>\n");
        }
        SincePrinting since = notes.since();
        if (since != null) {
            out.append("<p>").append(Html.text(Unbroken.text(since.sentence()))).append("</p>\n");
        }
        figures();
        out.append(new PageCharts(review.month(), paper, sheets).svg());
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
        out.append("<div class=\"scroll\"><table>\n<thead><tr><th></th><th class=\"n\">")
                .append(review.month())
                .append(
                        "</th><th class=\"n\">month before</th><th class=\"n\">a year before</th><th class=\"n\">change to month before</th></tr></thead>\n<tbody>\n");
        int digits = paper.moneyDigits();
        String code = " " + paper.currency().getCurrencyCode();
        row("sets received", m -> Digits.grouped(m.received()), m -> (double) m.received(), 0, "");
        row(
                "sets decided",
                m -> Digits.grouped(m.counted().decided()),
                m -> (double) m.counted().decided(),
                0,
                "");
        row(
                "sets saved",
                m -> Digits.grouped(m.counted().saved()),
                m -> (double) m.counted().saved(),
                0,
                "");
        row(
                "yield",
                m -> range(
                        new Range(
                                100 * m.counted().raw(),
                                100 * m.counted().rawLow(),
                                100 * m.counted().rawHigh()),
                        100 * m.counted().raw(),
                        1,
                        " %"),
                m -> 100 * m.counted().raw(),
                1,
                " points");
        row(
                "minutes per saved set",
                m -> range(m.minutesPerSaved(), m.counted().minutesPerSaved(), 1, ""),
                m -> m.counted().minutesPerSaved(),
                1,
                "");
        row(
                "sets gone",
                m -> Digits.grouped(m.counted().gone()),
                m -> (double) m.counted().gone(),
                0,
                "");
        row(
                "margin",
                m -> m.counted().gone() == 0 ? "" : money(m.counted().marginTotal()) + code,
                m -> m.counted().gone() == 0
                        ? Double.NaN
                        : m.counted().marginTotal().amount().doubleValue(),
                digits,
                code);
        row(
                "margin per set",
                m -> range(m.marginPerSet(), m.counted().marginPerSet(), digits, code),
                m -> m.counted().marginPerSet(),
                digits,
                code);
        row(
                "margin per bench hour",
                m -> Double.isFinite(m.counted().marginPerHour())
                        ? Digits.grouped(m.counted().marginPerHour(), digits) + code
                        : "",
                m -> m.counted().marginPerHour(),
                digits,
                code);
        row(
                "comebacks, their cost",
                m -> money(m.comebackCost()) + code,
                m -> m.comebackCost().amount().doubleValue(),
                digits,
                code);
        releases("sales, a release check unmet", notes.releases().unmet());
        releases("sales, a release check not on record", notes.releases().unknown());
        out.append("</tbody>\n</table></div>\n");
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
                    .append("</a></td><td></td><td></td><td></td></tr>\n");
        }
    }

    private static String money(Money money) {
        return Digits.grouped(money.amount(), money.amount().scale());
    }

    /** @param alone what stands where there is no interval */
    private static String range(Range range, double alone, int digits, String unit) {
        if (!range.known()) {
            return Double.isFinite(alone) ? Digits.grouped(alone, digits) + unit : "";
        }
        return Digits.grouped(range.value(), digits) + unit + " (" + Digits.grouped(range.low(), digits) + " to "
                + Digits.grouped(range.high(), digits) + ")";
    }

    /** @param value for the change, with so many digits */
    private void row(
            String name,
            Function<MonthFigures, String> figure,
            ToDoubleFunction<MonthFigures> value,
            int digits,
            String unit) {
        out.append("<tr><td><a href=\"#")
                .append(HtmlTable.id(FrontLinks.sheet(name)))
                .append("\">")
                .append(name)
                .append("</a></td>");
        for (MonthFigures m : List.of(review.now(), review.before(), review.yearAgo())) {
            String text = empty(m) ? "" : Unbroken.text(figure.apply(m));
            Linked rows = text.isEmpty() ? null : links.figure(name, m.month());
            out.append("<td class=\"n\">")
                    .append(rows == null ? text : "<a href=\"" + tables.href(rows) + "\">" + text + "</a>")
                    .append("</td>");
        }
        double change = empty(review.before())
                ? Double.NaN
                : value.applyAsDouble(review.now()) - value.applyAsDouble(review.before());
        String text = Digits.grouped(change, digits);
        out.append("<td class=\"n\">")
                .append(
                        Double.isFinite(change)
                                ? Unbroken.text((change > 0 && text.matches(".*[1-9].*") ? "+" : "") + text + unit)
                                : "")
                .append("</td>");
        out.append("</tr>\n");
    }

    private static boolean empty(MonthFigures m) {
        return m.counted().decided() == 0 && m.counted().gone() == 0 && m.received() == 0;
    }

    private void deeds() {
        List<Deed> deeds = review.why().deeds();
        if (deeds.isEmpty()) {
            out.append("<p>Nothing stands out as worth changing.</p>\n");
            return;
        }
        out.append("<div class=\"scroll\"><table>\n<thead><tr><th>worth doing, a month</th><th class=\"n\">worth, ")
                .append(paper.currency().getCurrencyCode())
                .append("</th><th class=\"n\">95 % interval</th></tr></thead>\n<tbody>\n");
        for (Deed deed : deeds) {
            Linked why = links.deed(deed);
            String what = Html.text(words.deed(deed));
            out.append("<tr><td>")
                    .append(why == null ? what : "<a href=\"" + tables.href(why) + "\">" + what + "</a>")
                    .append("</td><td class=\"n\">")
                    .append(Digits.grouped(deed.worth().value(), 0))
                    .append("</td><td class=\"n\">")
                    .append(Unbroken.text(words.worth(deed.worth())))
                    .append("</td></tr>\n");
        }
        out.append(
                "</tbody>\n</table></div>\n<p class=\"small\">In months like the last three; the sheets led to count their own span. No set is counted under two of these.</p>\n");
    }

    private static boolean leftOut(MonthSheets.Sheet sheet) {
        return sheet.lists() && sheet.table().rows().size() > MOST_ROWS;
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
        if (leftOut(sheet)) {
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
        out.append("<section id=\"definitions\">\n<h2>What each figure means</h2>\n<table>\n<thead><tr><th>figure</th>")
                .append("<th>definition</th><th>stands on</th></tr></thead>\n<tbody>\n");
        Defined defined = new Defined();
        sheets.forEach(sheet -> defined.add(sheet.name(), sheet.table()));
        for (Figure figure : defined.figures()) {
            if (HtmlTable.leftOut(figure.column())) {
                continue;
            }
            out.append("<tr><td><b>")
                    .append(Html.text(figure.words()))
                    .append("</b></td><td>")
                    .append(Html.text(figure.meaning()))
                    .append("</td><td class=\"small\">")
                    .append(Html.text(defined.where(figure)))
                    .append("</td></tr>\n");
        }
        out.append("</tbody>\n</table>\n</section>\n");
    }
}
