package org.salvedge.yield;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.salvedge.shop.Money;
import org.salvedge.shop.Text;
import org.salvedge.stats.ShrunkYield;
import tech.tablesaw.api.Row;
import tech.tablesaw.api.Table;

/** Yield, time per fix and margin by any keys, as {@code salvedge yield} shows them: one row a combination that occurs. */
public final class YieldTable {
    private final List<Key> by;
    private final Currency currency;
    private final List<YieldRow> rows;

    private YieldTable(List<Key> by, Currency currency, List<YieldRow> rows) {
        this.by = by;
        this.currency = currency;
        this.rows = rows;
    }

    /** @param by none = one row over everything */
    public static YieldTable of(Outcomes outcomes, List<Key> by) {
        return of(outcomes, by, Scope.EVERYTHING);
    }

    /** Only what stands under one month: sets under that in which they were decided, margins under that of the exit. */
    public static YieldTable ofMonth(Outcomes outcomes, List<Key> by, YearMonth month) {
        return of(outcomes, by, Scope.of(outcomes, month));
    }

    private static YieldTable of(Outcomes outcomes, List<Key> by, Scope scope) {
        Currency currency = outcomes.history().currency();
        List<Key> keys = List.copyOf(by);
        CompletableFuture<Void> ready = prepare();
        Count count = new Count(outcomes, keys, scope).run();
        CompletableFuture<FixMinutes> minutes = CompletableFuture.supplyAsync(() -> new FixMinutes(count));
        ShrunkYield shrunk = Shrinking.of(count, keys, count.columns(), Figures.LEVEL);
        FixMinutes counted = minutes.join();
        ready.join();
        Table table = inOrder(Figures.table(count, keys, shrunk, counted, currency), keys);
        List<YieldRow> rows = new ArrayList<>(table.rowCount());
        for (Row row : table) {
            rows.add(row(row, keys, currency));
        }
        return new YieldTable(keys, currency, List.copyOf(rows));
    }

    /**
     * Begins to load Tablesaw in the background: its first table looks through the whole class path. Not needed, but a command
     * that has something to read first saves that time.
     */
    public static CompletableFuture<Void> prepare() {
        return CompletableFuture.runAsync(() -> Table.create("first"));
    }

    /** By code points of the keys: Tablesaw's own order of texts is that of UTF-16 units. */
    private static Table inOrder(Table table, List<Key> keys) {
        return table.sortOn((Row a, Row b) -> {
            for (int k = 0; k < keys.size(); k++) {
                int order = Text.CODE_POINTS.compare(a.getString(k), b.getString(k));
                if (order != 0) {
                    return order;
                }
            }
            return 0;
        });
    }

    private static YieldRow row(Row row, List<Key> keys, Currency currency) {
        return new YieldRow(
                keys.stream().map(k -> row.getString(Figures.keyColumn(k))).toList(),
                row.getInt("sets"),
                row.getInt("attempts"),
                row.getInt("decided"),
                row.getInt("saved"),
                row.getInt("gone"),
                row.getInt("in_progress"),
                row.getDouble("yield"),
                row.getDouble("yield_low"),
                row.getDouble("yield_high"),
                row.getDouble("yield_shrunk"),
                row.getDouble("yield_shrunk_low"),
                row.getDouble("yield_shrunk_high"),
                row.getDouble("first_pass_yield"),
                row.getDouble("minutes_median"),
                row.getDouble("minutes_p90"),
                row.getDouble("minutes_per_saved"),
                new Money(row.getLong("margin_minor"), currency),
                row.getDouble("margin_per_set"),
                row.getDouble("margin_per_hour"));
    }

    public List<Key> by() {
        return by;
    }

    public Currency currency() {
        return currency;
    }

    /** In order of the keys, by code points. */
    public List<YieldRow> rows() {
        return rows;
    }

    /** The row with these keys; one that counts nothing where there is none. */
    public YieldRow row(List<String> keys) {
        for (YieldRow row : rows) {
            if (row.keys().equals(keys)) {
                return row;
            }
        }
        return YieldRow.empty(keys, currency);
    }
}
