package org.salvedge.manifest.grid;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.IdentityHashMap;
import java.util.List;
import java.util.Set;
import org.jsoup.helper.DataUtil;
import org.jsoup.nodes.Element;
import org.jsoup.nodes.Node;
import org.jsoup.nodes.TextNode;
import org.jsoup.parser.Parser;
import org.jsoup.parser.StreamParser;

/** Tables of a web page, each a sheet without a name. Rows are let go as soon as they are read. */
final class HtmlReader {
    private static final int DEEPEST = 256;
    private static final int MOST_TABLES = 1_000;

    /** The HTML standard's own bounds. */
    private static final int WIDEST_SPAN = 1_000;

    private static final int TALLEST_SPAN = 65_534;
    private static final Set<String> BREAKS = Set.of("br", "p", "div", "li");

    private final Budget budget;
    private final IdentityHashMap<Element, Table> tables = new IdentityHashMap<>();
    private final List<Table> inOrder = new ArrayList<>();

    /** A table being read: rows below spans start further right. */
    private static final class Table {
        final SheetBuilder sheet;
        final int[] coveredUntil;
        int row;

        Table(Budget budget) {
            sheet = new SheetBuilder(null, true, false, List.of(NumberFormat.GENERAL), budget);
            coveredUntil = new int[budget.limits().columns()];
        }
    }

    private HtmlReader(Budget budget) {
        this.budget = budget;
    }

    static Grid read(Path path, Budget budget) throws IOException {
        return new HtmlReader(budget).read(path);
    }

    private Grid read(Path path) throws IOException {
        Parser parser = Parser.htmlParser().setMaxDepth(DEEPEST);
        try (StreamParser stream = DataUtil.streamParser(path, null, "", parser)) {
            for (Element row = stream.selectNext("tr"); row != null; row = stream.selectNext("tr")) {
                budget.row();
                budget.checkTime();
                Element table = row.closest("table");
                if (table != null && row.selectFirst("table") == null) {
                    addRow(table(table), row);
                }
                row.empty();
                forget(row);
            }
        }
        if (inOrder.isEmpty()) {
            throw BadFile.notATable("a web page without a table", "Ask the seller for the list itself");
        }
        return Grid.of(
                "a web page", inOrder.stream().map(table -> table.sheet.build()).toList());
    }

    /** Takes the row before this one out of the page; this one itself is still being walked by the parser. */
    private static void forget(Element row) {
        Element before = row.previousElementSibling();
        if (before != null) {
            before.remove();
        }
    }

    private Table table(Element element) {
        return tables.computeIfAbsent(element, e -> {
            if (inOrder.size() >= MOST_TABLES) {
                throw BadFile.tooLarge("holds more than " + MOST_TABLES + " tables");
            }
            Table table = new Table(budget);
            inOrder.add(table);
            return table;
        });
    }

    private void addRow(Table table, Element row) {
        table.row++;
        table.sheet.startRow(table.row);
        int column = 0;
        for (Element cell : row.children()) {
            if (!cell.normalName().equals("td") && !cell.normalName().equals("th")) {
                continue;
            }
            while (column < table.coveredUntil.length && table.coveredUntil[column] >= table.row) {
                column++;
            }
            if (column >= table.coveredUntil.length) {
                break;
            }
            int wide = span(cell, "colspan", WIDEST_SPAN);
            int tall = span(cell, "rowspan", TALLEST_SPAN);
            table.sheet.text(column, text(cell));
            if (wide > 1 || tall > 1) {
                int lastColumn = Math.min(column + wide, table.coveredUntil.length) - 1;
                table.sheet.merge(table.row, column, table.row + tall - 1, lastColumn);
                for (int c = column; c <= lastColumn; c++) {
                    table.coveredUntil[c] = table.row + tall - 1;
                }
            }
            column += wide;
        }
    }

    private static int span(Element cell, String attribute, int most) {
        return Math.max(1, Math.min(most, SafeXml.whole(cell.attr(attribute).strip(), 1)));
    }

    /** The text of a cell; what starts a new line in a browser does so here. */
    private String text(Element cell) {
        StringBuilder text = new StringBuilder();
        append(cell, text);
        return text.toString();
    }

    private void append(Element element, StringBuilder text) {
        for (Node node : element.childNodes()) {
            if (text.length() > budget.limits().textLength()) {
                return;
            }
            if (node instanceof TextNode words) {
                text.append(words.getWholeText().replaceAll("[\\r\\n\\t ]+", " "));
            } else if (node instanceof Element child) {
                boolean breaks = BREAKS.contains(child.normalName());
                if (breaks && !text.isEmpty()) {
                    text.append('\n');
                }
                append(child, text);
            }
        }
    }
}
