package org.salvedge.report;

import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Tables for a terminal: aligned, numbers to the right, within the screen's width. Where a table is too wide, text is cut first
 * (down to a readable stump), then droppable columns are left out from the right and named below.
 */
public final class TablePrinter {
    private static final String GAP = "  ";
    private static final int SHORTEST_TEXT = 10;
    private static final int NO_DIGITS_KNOWN = 2;
    private static final String BOLD = "\u001b[1m";
    private static final String PLAIN = "\u001b[0m";

    private final Screen screen;
    private final CellText cells;

    /** @param currency of averages of money; null: two digits are taken */
    public TablePrinter(Screen screen, @Nullable Currency currency) {
        this.screen = screen;
        cells = new CellText(
                screen, currency == null ? NO_DIGITS_KNOWN : Math.max(0, currency.getDefaultFractionDigits()));
    }

    /** The table as text, each line ended by a line feed. */
    public String print(Table table) {
        List<Integer> shown = new ArrayList<>();
        for (int c = 0; c < table.columns().size(); c++) {
            if (table.columns().get(c).onScreen()) {
                shown.add(c);
            }
        }
        List<String[]> texts = new ArrayList<>();
        for (List<@Nullable Object> row : table.rows()) {
            String[] line = new String[row.size()];
            for (int c : shown) {
                line[c] = cells.of(table.columns().get(c).kind(), row.get(c));
            }
            texts.add(line);
        }
        int[] width = widths(table, shown, texts);
        List<String> left = fit(table, shown, width);
        StringBuilder out = new StringBuilder();
        line(out, Visible.text(table.title(), screen));
        if (shown.stream().anyMatch(c -> !table.columns().get(c).heading().isEmpty())) {
            heading(out, table, shown, width);
        }
        for (String[] row : texts) {
            row(out, table, shown, width, row);
        }
        for (String note : table.notes()) {
            line(out, Visible.text(note, screen));
        }
        if (!left.isEmpty()) {
            line(out, "too wide to show: " + String.join(", ", left));
        }
        return out.toString();
    }

    private static void line(StringBuilder out, String text) {
        if (!text.isEmpty()) {
            out.append(text).append('\n');
        }
    }

    private int[] widths(Table table, List<Integer> shown, List<String[]> texts) {
        int[] width = new int[table.columns().size()];
        for (int c : shown) {
            width[c] = DisplayWidth.of(Visible.text(table.columns().get(c).heading(), screen));
            for (String[] row : texts) {
                width[c] = Math.max(width[c], DisplayWidth.of(row[c]));
            }
        }
        return width;
    }

    /** Narrows text, then takes columns out; returns the headings of those. */
    private List<String> fit(Table table, List<Integer> shown, int[] width) {
        List<String> left = new ArrayList<>();
        shrink(table, shown, width);
        for (int i = shown.size() - 1; i > 0 && total(shown, width) > screen.width(); i--) {
            Column column = table.columns().get(shown.get(i));
            if (column.droppable()) {
                shown.remove(i);
                left.add(0, Visible.text(column.heading(), screen));
            }
        }
        return left;
    }

    private void shrink(Table table, List<Integer> shown, int[] width) {
        while (total(shown, width) > screen.width()) {
            int widest = -1;
            for (int c : shown) {
                boolean text = table.columns().get(c).kind() == Kind.TEXT;
                if (text && width[c] > SHORTEST_TEXT && (widest < 0 || width[c] > width[widest])) {
                    widest = c;
                }
            }
            if (widest < 0) {
                return;
            }
            width[widest]--;
        }
    }

    private static int total(List<Integer> shown, int[] width) {
        int total = GAP.length() * (shown.size() - 1);
        for (int c : shown) {
            total += width[c];
        }
        return total;
    }

    private void heading(StringBuilder out, Table table, List<Integer> shown, int[] width) {
        String[] headings = new String[width.length];
        for (int c : shown) {
            headings[c] = Visible.text(table.columns().get(c).heading(), screen);
        }
        out.append(screen.colour() ? BOLD : "");
        row(out, table, shown, width, headings);
        if (screen.colour()) {
            out.insert(out.length() - 1, PLAIN);
        }
    }

    private void row(StringBuilder out, Table table, List<Integer> shown, int[] width, String[] texts) {
        StringBuilder line = new StringBuilder();
        for (int c : shown) {
            String text = DisplayWidth.cut(texts[c], width[c], screen.unicode() ? "\u2026" : "..");
            String pad = " ".repeat(Math.max(0, width[c] - DisplayWidth.of(text)));
            line.append(line.isEmpty() && c == shown.get(0) ? "" : GAP);
            line.append(table.columns().get(c).kind().right() ? pad + text : text + pad);
        }
        out.append(line.toString().stripTrailing()).append('\n');
    }
}
