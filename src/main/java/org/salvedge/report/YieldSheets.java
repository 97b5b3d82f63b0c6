package org.salvedge.report;

import java.util.ArrayList;
import java.util.List;
import java.util.function.Function;
import org.jspecify.annotations.Nullable;
import org.salvedge.yield.YieldRow;
import org.salvedge.yield.YieldTable;

/** Yield tables as sheets show them: every figure. */
final class YieldSheets {
    private static final List<Figure> OF_MONTH = List.of(
            Figure.SETS,
            Figure.DECIDED,
            Figure.SAVED,
            Figure.YIELD_SHRUNK,
            Figure.FIRST_PASS_YIELD,
            Figure.MINUTES_MEDIAN,
            Figure.MINUTES_PER_SAVED,
            Figure.GONE,
            Figure.MARGIN_TOTAL,
            Figure.MARGIN_PER_SET,
            Figure.MARGIN_PER_HOUR);
    private static final List<Figure> EVERY = List.of(
            Figure.SETS,
            Figure.ATTEMPTS,
            Figure.DECIDED,
            Figure.SAVED,
            Figure.IN_PROGRESS,
            Figure.YIELD,
            Figure.YIELD_SHRUNK,
            Figure.FIRST_PASS_YIELD,
            Figure.MINUTES_MEDIAN,
            Figure.MINUTES_P90,
            Figure.MINUTES_PER_SAVED,
            Figure.GONE,
            Figure.MARGIN_TOTAL,
            Figure.MARGIN_PER_SET,
            Figure.MARGIN_PER_HOUR);

    private YieldSheets() {}

    /** Every figure. */
    static Table table(String title, YieldTable yields) {
        return table(title, yields, EVERY, null);
    }

    /**
     * Of a month, whose sets are all decided; Wilson's interval is left to the sheet of months.
     *
     * @param behind what a row rests on
     */
    static Table ofMonth(String title, YieldTable yields, Function<YieldRow, @Nullable Linked> behind) {
        return table(title, yields, OF_MONTH, behind);
    }

    private static Table table(
            String title,
            YieldTable yields,
            List<Figure> figures,
            @Nullable Function<YieldRow, @Nullable Linked> behind) {
        List<Column> columns = new ArrayList<>();
        yields.by().forEach(key -> columns.add(Figure.valueOf(key.name()).column()));
        figures.forEach(figure -> columns.add(figure.column()));
        if (behind != null) {
            columns.add(Figure.TRACE.column());
        }
        Table.Builder table = Table.of(columns).title(title);
        for (YieldRow row : yields.rows()) {
            List<@Nullable Object> values = new ArrayList<>(row.keys());
            figures.forEach(figure -> values.add(value(figure, row)));
            if (behind != null) {
                values.add(behind.apply(row));
            }
            table.row(values);
        }
        return table.build();
    }

    static @Nullable Object value(Figure figure, YieldRow row) {
        return switch (figure) {
            case SETS -> row.sets();
            case ATTEMPTS -> row.attempts();
            case DECIDED -> row.decided();
            case SAVED -> row.saved();
            case IN_PROGRESS -> row.inProgress();
            case YIELD -> new Estimate(row.raw(), row.rawLow(), row.rawHigh());
            case YIELD_SHRUNK -> new Estimate(row.shrunk(), row.shrunkLow(), row.shrunkHigh());
            case FIRST_PASS_YIELD -> row.firstPassYield();
            case MINUTES_MEDIAN -> row.minutesMedian();
            case MINUTES_P90 -> row.minutesP90();
            case MINUTES_PER_SAVED -> row.minutesPerSaved();
            case GONE -> row.gone();
            case MARGIN_TOTAL -> row.marginTotal();
            case MARGIN_PER_SET -> row.marginPerSet();
            case MARGIN_PER_HOUR -> row.marginPerHour();
            default -> throw new IllegalArgumentException(figure + " is no figure of a yield table");
        };
    }
}
