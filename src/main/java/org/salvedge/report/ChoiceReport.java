package org.salvedge.report;

import java.math.RoundingMode;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.worth.Choice;

/** Several lots side by side, and which of them to go for. */
public final class ChoiceReport {
    private ChoiceReport() {}

    public static Table table(Choice choice) {
        Table.Builder table = Table.of(
                Column.of("lot", "lot", Kind.KEY),
                Column.of("sets", "sets", Kind.COUNT),
                Column.of("mean", "it should\nbring", Kind.MINUTES),
                Column.of("p10", "80 %\nfrom", Kind.MINUTES).asDroppable(2),
                Column.of("p90", "80 %\nto", Kind.MINUTES).asDroppable(2),
                Column.of("bid", "bid\nup to", Kind.MINUTES),
                Column.of("price", "at this\nprice", Kind.MINUTES),
                Column.of("profit", "mean\nprofit", Kind.MINUTES),
                Column.of("hours", "bench\nhours", Kind.MINUTES),
                Column.of("take", "go\nfor it", Kind.YES_NO));
        for (Choice.Lot lot : choice.lots()) {
            table.row(
                    lot.name(),
                    lot.answer().worth().sets(),
                    lot.answer().worth().recovery().mean(),
                    lot.answer().worth().recovery().quantile(0.1),
                    lot.answer().worth().recovery().quantile(0.9),
                    lot.answer()
                            .highestBid()
                            .map(b -> b.amount().setScale(0, RoundingMode.DOWN).doubleValue())
                            .orElse(null),
                    lot.price() == null ? null : (Object) lot.price().toDoubleForStatistics(),
                    lot.price() == null ? null : (Object) lot.profit(),
                    lot.hours(),
                    lot.taken());
        }
        words(choice).forEach(w -> Paragraph.lines("", w, Screen.WIDEST).forEach(table::note));
        return table.build();
    }

    private static List<String> words(Choice c) {
        List<String> words = new ArrayList<>();
        words.add("");
        long taken = c.lots().stream().filter(Choice.Lot::taken).count();
        words.add(
                taken == 0
                        ? "Go for none: no lot is worth its price within these limits."
                        : "Go for " + (taken == c.lots().size() ? "all " : "") + taken + ": expected profit "
                                + Digits.grouped(c.profit(), 0) + ", outlay " + Digits.grouped(c.cashUsed(), 0)
                                + limit(c.cash()) + ", bench hours " + Digits.grouped(c.hoursUsed(), 0)
                                + limit(c.hours()) + ".");
        if (Double.isFinite(c.hours())) {
            words.add(
                    c.shadowHour() > 0
                            ? "Hours are short: one more would be worth about " + Digits.grouped(c.shadowHour(), 2)
                                    + " beyond its wage."
                            : "Hours are not short: one more would change nothing.");
        }
        if (Double.isFinite(c.cash())) {
            words.add(
                    c.shadowCash() > 0
                            ? "Cash is short: 1 more would be worth about " + Digits.grouped(c.shadowCash(), 2) + "."
                            : "Cash is not short.");
        }
        if (!c.proven()) {
            words.add("There were too many choices to try them all: a better one is possible.");
        }
        words.add("Prices are those asked about (--price), else each lot's highest bid.");
        return words;
    }

    private static String limit(double limit) {
        return Double.isFinite(limit) ? " of " + Digits.grouped(limit, 0) : "";
    }

    /** A map to be written by {@link JsonWriter}. */
    public static Map<String, @Nullable Object> json(Choice c) {
        Map<String, @Nullable Object> json = new LinkedHashMap<>();
        List<Object> lots = new ArrayList<>();
        List<Object> take = new ArrayList<>();
        for (Choice.Lot lot : c.lots()) {
            Map<String, @Nullable Object> one = new LinkedHashMap<>();
            one.put("file", lot.name());
            one.put("price", lot.price());
            one.put("outlay", lot.outlay());
            one.put("profit_mean", lot.price() == null ? null : (Object) lot.profit());
            one.put("hours", lot.hours());
            one.put("take", lot.taken());
            one.put("worth", WorthJson.of(lot.answer()));
            lots.add(one);
            if (lot.taken()) {
                take.add(lot.name());
            }
        }
        json.put("lots", lots);
        Map<String, @Nullable Object> choice = new LinkedHashMap<>();
        choice.put("take", take);
        choice.put("profit_mean", c.profit());
        choice.put("cash", c.cash());
        choice.put("cash_used", c.cashUsed());
        choice.put("hours", c.hours());
        choice.put("hours_used", c.hoursUsed());
        choice.put("shadow_price_hour", c.shadowHour());
        choice.put("shadow_price_cash", c.shadowCash());
        choice.put("proven", c.proven());
        json.put("choice", choice);
        return json;
    }
}
