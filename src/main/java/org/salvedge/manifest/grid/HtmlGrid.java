package org.salvedge.manifest.grid;

import java.io.IOException;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import org.jsoup.Jsoup;
import org.jsoup.nodes.Document;
import org.jsoup.nodes.Element;

/** Tables of a page saved under a spreadsheet's name. */
final class HtmlGrid {
    private static final int WIDEST = 200;
    private static final int DEEPEST = 5000;

    private HtmlGrid() {}

    static List<Sheet> read(Path file, Budget budget) throws IOException {
        Document page = Jsoup.parse(file.toFile(), null);
        List<Sheet> sheets = new ArrayList<>();
        for (Element table : page.select("table")) {
            if (table.parent() != null && table.parent().closest("table") == null) {
                sheets.add(table(table, budget));
            }
        }
        if (sheets.isEmpty()) {
            throw BadFile.notATable("a page without a table", "Ask the seller for the spreadsheet itself");
        }
        return sheets;
    }

    private static Sheet table(Element table, Budget budget) {
        SheetBuilder sheet = new SheetBuilder(null, true, false, List.of(NumberFormat.GENERAL), budget);
        Set<Long> taken = new HashSet<>();
        int row = 0;
        for (Element tr : table.select("tr")) {
            if (!table.equals(tr.closest("table"))) {
                continue;
            }
            row++;
            sheet.startRow(row);
            int column = 0;
            for (Element td : tr.children()) {
                if (!td.normalName().equals("td") && !td.normalName().equals("th")) {
                    continue;
                }
                while (taken.contains((long) row << 16 | column)) {
                    column++;
                }
                int across = span(td, "colspan", WIDEST);
                int down = span(td, "rowspan", DEEPEST);
                sheet.text(column, td.wholeText().replaceAll("[ \\t\\x0B\\f\\r\\n\\u00A0]+", " "));
                if (across > 1 || down > 1) {
                    sheet.merge(row, column, row + down - 1, column + across - 1);
                    for (int r = 1; r < down && r < 200; r++) {
                        for (int c = 0; c < across; c++) {
                            taken.add((long) (row + r) << 16 | (column + c));
                        }
                    }
                }
                column += across;
            }
        }
        return sheet.build();
    }

    private static int span(Element td, String name, int most) {
        String text = td.attr(name);
        return text.matches("[0-9]{1,6}") ? Math.max(1, Math.min(most, Integer.parseInt(text))) : 1;
    }
}
