package org.salvedge.report;

import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Money;
import org.salvedge.worth.Appraisal;
import org.salvedge.worth.Looking;

/** What looking at some sets first is worth, in words and as JSON. */
public final class LookReport {
    private static final int MOST_PICKS = 6;

    private LookReport() {}

    /** A sentence or two. */
    public static List<String> words(Appraisal a, Looking look) {
        if (look.picks().isEmpty()) {
            return List.of("Looking at sets first would tell nothing that could change the bid.");
        }
        List<String> picks = new ArrayList<>();
        int more = 0;
        for (Looking.Pick p : look.picks()) {
            if (picks.size() < MOST_PICKS) {
                picks.add(p.sets() + " of " + p.model() + ", " + p.claimed().replace('_', ' ') + " (line"
                        + (p.lines().size() == 1 ? " " : "s ") + String.join(" ", p.lines()) + ")");
            } else {
                more += p.sets();
            }
        }
        Money price = price(a);
        String gain = price == null
                ? "Worth at most "
                : "Worth " + Digits.grouped(look.gain(outlay(a, price)), 0) + " on average at a price of "
                        + Digits.grouped(price.amount(), 0) + ", at most ";
        return List.of(
                "Look first at: " + String.join("; ", picks) + (more > 0 ? "; and " + more + " others" : "") + ".",
                gain + Digits.grouped(look.gain(look.mean()), 0)
                        + " (at break-even), before the cost of looking; then --found FILE.");
    }

    private static @Nullable Money price(Appraisal a) {
        return a.price() != null ? a.price() : a.highestBid().orElse(null);
    }

    private static double outlay(Appraisal a, Money price) {
        return a.terms().outlay(price).toDoubleForStatistics();
    }

    /** A map to be written by {@link JsonWriter}. */
    public static Map<String, @Nullable Object> json(Appraisal a, Looking look) {
        Money price = price(a);
        Map<String, @Nullable Object> json = new LinkedHashMap<>();
        json.put("price", price);
        json.put("gain", price == null ? null : (Object) look.gain(outlay(a, price)));
        json.put("gain_at_break_even", look.gain(look.mean()));
        json.put("spread_of_mean", look.spread());
        List<Object> picks = new ArrayList<>();
        for (Looking.Pick p : look.picks()) {
            Map<String, @Nullable Object> one = new LinkedHashMap<>();
            one.put("model", p.model());
            one.put("claimed", p.claimed());
            one.put("sets", p.sets());
            one.put("of", p.of());
            one.put("lines", p.lines());
            picks.add(one);
        }
        json.put("look_at", picks);
        return json;
    }
}
