package org.salvedge.yield;

import java.time.YearMonth;
import java.util.List;
import org.salvedge.shop.History;
import org.salvedge.shop.Money;

/**
 * The figures of one month.
 *
 * @param received sets that arrived in it
 * @param counted the row of the yield table by month; sets stand under the month they were decided in, margins under that of
 *     the exit
 * @param comebacks how many sets came back in it
 * @param comebackCost refunds, transport and handling
 */
public record MonthFigures(YearMonth month, int received, YieldRow counted, int comebacks, Money comebackCost) {

    static MonthFigures of(Outcomes outcomes, YieldTable byMonth, YearMonth month) {
        History h = outcomes.history();
        Days days = Days.of(month);
        int received = 0;
        int comebacks = 0;
        long cost = 0;
        for (int set = 0; set < h.sets(); set++) {
            if (!h.arrived(set)) {
                continue;
            }
            received += days.hold(h.lotArrival(h.setLot(set))) ? 1 : 0;
            for (int c = h.comebackStart(set); c < h.comebackStart(set + 1); c++) {
                if (days.hold(h.comebackDay(c))) {
                    comebacks++;
                    cost += h.comebackCost(c);
                }
            }
        }
        return new MonthFigures(
                month, received, byMonth.row(List.of(month.toString())), comebacks, new Money(cost, h.currency()));
    }
}
