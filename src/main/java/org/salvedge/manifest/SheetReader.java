package org.salvedge.manifest;

import java.util.ArrayList;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.grid.Cell;
import org.salvedge.manifest.grid.Sheet;

/** Finds the tables of a sheet, each under its own header, and hands their rows on. */
final class SheetReader {
    private final ColumnWords words;
    private final Finds finds;

    SheetReader(ColumnWords words, Finds finds) {
        this.words = words;
        this.finds = finds;
    }

    /** Reads one sheet; sheets without a header that names sets give nothing. */
    void read(Sheet sheet) {
        Header header = null;
        List<Integer> rows = new ArrayList<>();
        for (int i = 0; i < sheet.size(); i++) {
            Cell[] cells = sheet.row(i);
            Cell[] below = i + 1 < sheet.size() && sheet.number(i + 1) == sheet.number(i) + 1 ? sheet.row(i + 1) : null;
            Header met = RowKind.own(cells) < 2 ? null : Header.of(sheet.number(i), cells, below, words);
            if (met != null && met.holdsSets()) {
                if (header == null || !met.sameAs(header)) {
                    table(sheet, header, rows);
                    rows.clear();
                    header = met;
                }
                i += met.height() - 1;
            } else if (header != null) {
                rows.add(i);
            }
        }
        table(sheet, header, rows);
    }

    private void table(Sheet sheet, @Nullable Header header, List<Integer> rows) {
        if (header == null) {
            return;
        }
        finds.header(sheet, header);
        Unnamed.take(sheet, header, rows, finds.claims);
        Map<Integer, Prices.Convention> conventions = conventions(sheet, header, rows);
        RowReader reader = new RowReader(sheet, header, conventions, finds);
        for (int i : rows) {
            reader.read(sheet.number(i), sheet.row(i));
        }
    }

    /** Each price column writes its decimals one way: the way most of its cells that tell do. */
    private static Map<Integer, Prices.Convention> conventions(Sheet sheet, Header header, List<Integer> rows) {
        Map<Integer, int[]> votes = new HashMap<>();
        for (Field f : Field.values()) {
            if (f.isPrice()) {
                header.columns(f).forEach(c -> votes.put(c, new int[2]));
            }
        }
        if (votes.isEmpty()) {
            return Map.of();
        }
        for (int i : rows) {
            Cell[] cells = sheet.row(i);
            votes.forEach((c, v) -> {
                if (c < cells.length && cells[c].kind() == Cell.Kind.TEXT) {
                    Prices.Convention hint = Prices.hint(cells[c].shown());
                    v[0] += hint == Prices.Convention.POINT ? 1 : 0;
                    v[1] += hint == Prices.Convention.COMMA ? 1 : 0;
                }
            });
        }
        Map<Integer, Prices.Convention> out = new HashMap<>();
        int points = 0;
        int commas = 0;
        for (int[] v : votes.values()) {
            points += v[0];
            commas += v[1];
        }
        Prices.Convention whole = points == commas
                ? Prices.Convention.UNDECIDED
                : points > commas ? Prices.Convention.POINT : Prices.Convention.COMMA;
        votes.forEach((c, v) ->
                out.put(c, v[0] == v[1] ? whole : v[0] > v[1] ? Prices.Convention.POINT : Prices.Convention.COMMA));
        return out;
    }
}
