package org.salvedge.yield;

import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.History;
import org.salvedge.shop.Money;
import org.salvedge.shop.Text;

/**
 * A sale that the figures of {@link KeptCurve} rest on.
 *
 * @param fix latest fix before the sale; "" if there was none
 * @param back day of its first comeback; null = it has not come back
 * @param days from the sale to the comeback, else to the month's end
 * @param cost refunds, transport and handling of its comebacks
 */
public record TraceSale(
        String fix,
        String unit,
        String family,
        LocalDate on,
        @Nullable LocalDate back,
        int days,
        Money cost) {
    /** More than these are not listed. */
    public static final int MOST = 10_000;

    /** By fix, then by day and label: all those of the curves, or none where these are too many. */
    static List<TraceSale> of(Outcomes o, YearMonth month) {
        History h = o.history();
        Days days = KeptCurve.days(month);
        List<TraceSale> sales = new ArrayList<>();
        for (int set = 0; set < h.sets(); set++) {
            if (!h.arrived(set) || !KeptCurve.soldWithin(h, set, days)) {
                continue;
            }
            for (Sale sale : Sale.of(h, set)) {
                if (days.hold(h.exitDay(sale.exit()))) {
                    if (sales.size() == MOST) {
                        return List.of();
                    }
                    sales.add(of(h, set, sale, days.last()));
                }
            }
        }
        sales.sort(Comparator.comparing(TraceSale::fix, Text.CODE_POINTS)
                .thenComparing(TraceSale::on)
                .thenComparing(TraceSale::unit, Text.CODE_POINTS));
        return List.copyOf(sales);
    }

    private static TraceSale of(History h, int set, Sale sale, int to) {
        int day = h.exitDay(sale.exit());
        List<Integer> comebacks = sale.comebacks();
        int back = comebacks.isEmpty() ? -1 : h.comebackDay(comebacks.get(0));
        int fix = ComebackLine.latestFix(h, set, day);
        return new TraceSale(
                fix < 0 ? "" : h.fixes().text(fix),
                h.label(set),
                h.families().text(h.setFamily(set)),
                LocalDate.ofEpochDay(day),
                back < 0 ? null : LocalDate.ofEpochDay(back),
                (back < 0 ? to : back) - day,
                new Money(comebacks.stream().mapToLong(h::comebackCost).sum(), h.currency()));
    }
}
