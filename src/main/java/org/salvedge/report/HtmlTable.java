package org.salvedge.report;

import java.util.List;
import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;

/** Tables of a web page. */
final class HtmlTable {
    private static final int PERCENT = 100;
    /** Text, or a link with its address, that may be broken between words. */
    private static final int LONG = 60;

    private final Paper paper;
    private final Set<String> absent;

    /** @param absent sheets whose rows are not on the page */
    HtmlTable(Paper paper, Set<String> absent) {
        this.paper = paper;
        this.absent = absent;
    }

    /** What a sheet is called in links. */
    static String id(String sheet) {
        return sheet.toLowerCase(Locale.ROOT).replace(' ', '-');
    }

    /** What only charts need. */
    static boolean leftOut(Column column) {
        return column.key().startsWith("chart_");
    }

    /** To the first of the rows, or to where the page says that they are not on it. */
    String href(Linked link) {
        return "#" + id(link.sheet()) + (absent.contains(link.sheet()) ? "" : "-" + link.first());
    }

    void write(String sheet, Table table, StringBuilder out) {
        out.append("<div class=\"scroll\"><table>\n<thead><tr>");
        for (Column column : table.columns()) {
            if (leftOut(column)) {
                continue;
            }
            String heading = column.kind().isMoney()
                    ? column.heading() + "\n" + paper.currency().getCurrencyCode()
                    : column.heading();
            out.append(column.kind().right() ? "<th class=\"n\">" : "<th>")
                    .append(heading.lines().map(Html::text).collect(Collectors.joining("\n")))
                    .append("</th>");
        }
        out.append("</tr></thead>\n<tbody>\n");
        int r = 0;
        for (List<@Nullable Object> row : table.rows()) {
            out.append("<tr id=\"").append(id(sheet)).append('-').append(r++).append("\">");
            for (int c = 0; c < row.size(); c++) {
                if (leftOut(table.columns().get(c))) {
                    continue;
                }
                Kind kind = table.columns().get(c).kind();
                String text = cell(kind, row.get(c));
                out.append(kind.right() ? "<td class=\"n\">" : text.length() > LONG ? "<td class=\"long\">" : "<td>")
                        .append(text)
                        .append("</td>");
            }
            out.append("</tr>\n");
        }
        out.append("</tbody>\n</table></div>\n");
        if (table.rows().isEmpty()) {
            out.append("<p>None.</p>\n");
        }
        for (String note : table.notes()) {
            out.append("<p class=\"small\">").append(Html.text(note)).append("</p>\n");
        }
    }

    private String cell(Kind kind, @Nullable Object value) {
        if (value == null || value instanceof Double d && !Double.isFinite(d)) {
            return "";
        }
        if (value instanceof Linked link) {
            return "<a href=\"" + href(link) + "\">" + Digits.grouped(link.last() - link.first() + 1)
                    + (link.last() == link.first() ? " row" : " rows") + "</a>";
        }
        if (value instanceof Estimate e) {
            return Double.isNaN(e.value())
                    ? ""
                    : percent(e.value()) + " % (" + percent(e.low()) + " to " + percent(e.high()) + ")";
        }
        if (value instanceof Boolean yes) {
            return yes ? "yes" : "no";
        }
        return switch (kind) {
            case TEXT, KEY -> Html.text(CellText.text(value));
            case COUNT -> Digits.grouped(((Number) value).longValue());
            case MONEY, MONEY_TOTAL, MONEY_EACH -> Digits.grouped(SheetWriter.decimal(value), paper.moneyDigits());
            case RATIO, INTERVAL, BAR -> percent(((Number) value).doubleValue()) + " %";
            case MINUTES -> Digits.grouped(((Number) value).doubleValue(), 1);
            case NUMBER -> Digits.grouped(((Number) value).doubleValue(), 2);
            default -> Html.text(value.toString());
        };
    }

    private static String percent(double share) {
        return Digits.grouped(PERCENT * share, 1);
    }
}
