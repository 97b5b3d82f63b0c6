package org.salvedge.report;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.yield.Key;
import org.salvedge.yield.YieldRow;
import org.salvedge.yield.YieldTable;

/** The yield table as it is printed: every figure in the data formats, the ones that decide on the screen. */
public final class YieldReport {
    private YieldReport() {}

    public static Table table(YieldTable yields) {
        Table.Builder table = Table.of(columns(yields.by()));
        int inProgress = 0;
        for (YieldRow row : yields.rows()) {
            table.row(values(row));
            inProgress += row.inProgress();
        }
        boolean attempts = yields.by().stream().anyMatch(Key::ofAttempts);
        return table.note("in progress: " + Digits.grouped(inProgress) + (attempts ? " attempts" : " sets")
                        + ", not counted. Yield: shrunk, with its 95 % interval. Money in "
                        + yields.currency().getCurrencyCode() + ".")
                .note("`--xlsx FILE` for the workbook, `--format csv` for every figure, `--by ...` for other cuts.")
                .build();
    }

    private static List<Column> columns(List<Key> by) {
        List<Column> columns = new ArrayList<>();
        for (Key key : by) {
            columns.add(Column.of(key.code(), key.code(), Kind.KEY));
        }
        columns.add(Column.of("sets", "sets", Kind.COUNT).asDroppable(6));
        columns.add(Column.data("attempts", Kind.COUNT));
        columns.add(Column.of("decided", "decided", Kind.COUNT));
        columns.add(Column.of("saved", "saved", Kind.COUNT));
        columns.add(Column.data("gone", Kind.COUNT));
        columns.add(Column.data("yield", Kind.INTERVAL));
        columns.add(Column.of("yield_shrunk", "yield", Kind.INTERVAL));
        columns.add(Column.of("first_pass_yield", "first\npass", Kind.RATIO).asDroppable(5));
        columns.add(Column.of("minutes_median", "min\n/fix", Kind.MINUTES).asDroppable(4));
        columns.add(Column.data("minutes_p90", Kind.MINUTES));
        columns.add(Column.of("minutes_per_saved", "min\n/saved", Kind.MINUTES).asDroppable(1));
        columns.add(Column.of("margin_total", "margin", Kind.MONEY_TOTAL));
        columns.add(Column.of("margin_per_set", "/set", Kind.MONEY_EACH).asDroppable(3));
        columns.add(Column.of("margin_per_hour", "/hour", Kind.MONEY_EACH).asDroppable(2));
        columns.add(Column.data("in_progress", Kind.COUNT));
        return columns;
    }

    private static List<@Nullable Object> values(YieldRow row) {
        List<@Nullable Object> values = new ArrayList<>(row.keys());
        values.add(row.sets());
        values.add(row.attempts());
        values.add(row.decided());
        values.add(row.saved());
        values.add(row.gone());
        values.add(new Estimate(row.raw(), row.rawLow(), row.rawHigh()));
        values.add(new Estimate(row.shrunk(), row.shrunkLow(), row.shrunkHigh()));
        values.add(row.firstPassYield());
        values.add(row.minutesMedian());
        values.add(row.minutesP90());
        values.add(row.minutesPerSaved());
        values.add(row.marginTotal());
        values.add(row.marginPerSet());
        values.add(row.marginPerHour());
        values.add(row.inProgress());
        return values;
    }
}
