package org.salvedge.report;

import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Tables for a terminal: aligned, numbers to the right, within the screen's width. Where a table is too wide, text is cut first
 * (down to a readable stump), then columns that can be spared are left out and named below, then keys are cut.
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
        List<Integer> shown = shown(table);
        List<String[]> texts = texts(table, shown);
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

    /** Whether nothing of the table has to be cut or left out. */
    boolean fits(Table table) {
        List<Integer> shown = shown(table);
        return total(shown, widths(table, shown, texts(table, shown))) <= screen.width();
    }

    private static List<Integer> shown(Table table) {
        List<Integer> shown = new ArrayList<>();
        for (int c = 0; c < table.columns().size(); c++) {
            if (table.columns().get(c).onScreen()) {
                shown.add(c);
            }
        }
        return shown;
    }

    private List<String[]> texts(Table table, List<Integer> shown) {
        List<String[]> texts = new ArrayList<>();
        for (List<@Nullable Object> row : table.rows()) {
            String[] line = new String[row.size()];
            for (int c : shown) {
                line[c] = cells.of(table.columns().get(c).kind(), row.get(c));
            }
            texts.add(line);
        }
        return texts;
    }

    private static void line(StringBuilder out, String text) {
        if (!text.isEmpty()) {
            out.append(text).append('\n');
        }
    }

    private int[] widths(Table table, List<Integer> shown, List<String[]> texts) {
        int[] width = new int[table.columns().size()];
        for (int c : shown) {
            for (String line : heading(table.columns().get(c))) {
                width[c] = Math.max(width[c], DisplayWidth.of(line));
            }
            for (String[] row : texts) {
                width[c] = Math.max(width[c], DisplayWidth.of(row[c]));
            }
        }
        return width;
    }

    /** Narrows text, takes columns out, narrows keys; returns the headings of the columns taken out. */
    private List<String> fit(Table table, List<Integer> shown, int[] width) {
        List<Integer> left = new ArrayList<>();
        shrink(table, shown, width, Kind.TEXT);
        while (total(shown, width) > screen.width()) {
            int spare = -1;
            for (int c : shown) {
                int rank = table.columns().get(c).spare();
                if (rank > 0 && (spare < 0 || rank >= table.columns().get(spare).spare())) {
                    spare = c;
                }
            }
            if (spare < 0) {
                break;
            }
            shown.remove((Integer) spare);
            left.add(spare);
        }
        shrink(table, shown, width, Kind.KEY);
        return left.stream().sorted().map(c -> oneLine(table.columns().get(c))).toList();
    }

    private String oneLine(Column column) {
        return Visible.text(column.heading().replace("\n/", "/").replace('\n', ' '), screen);
    }

    private void shrink(Table table, List<Integer> shown, int[] width, Kind kind) {
        while (total(shown, width) > screen.width()) {
            int widest = -1;
            for (int c : shown) {
                boolean text = table.columns().get(c).kind() == kind;
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

    private List<String> heading(Column column) {
        return column.heading().lines().map(line -> Visible.text(line, screen)).toList();
    }

    /** Headings of fewer lines stand low. */
    private void heading(StringBuilder out, Table table, List<Integer> shown, int[] width) {
        int lines = shown.stream()
                .mapToInt(c -> heading(table.columns().get(c)).size())
                .max()
                .orElse(0);
        for (int i = 0; i < lines; i++) {
            String[] texts = new String[width.length];
            for (int c : shown) {
                List<String> heading = heading(table.columns().get(c));
                int line = i - (lines - heading.size());
                texts[c] = line < 0 ? "" : heading.get(line);
            }
            out.append(screen.colour() ? BOLD : "");
            row(out, table, shown, width, texts);
            if (screen.colour()) {
                out.insert(out.length() - 1, PLAIN);
            }
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
