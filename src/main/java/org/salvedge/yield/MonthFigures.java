package org.salvedge.yield;

import java.time.YearMonth;
import java.util.ArrayList;
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

    /** Of several months in a row, oldest first. */
    static List<MonthFigures> of(Outcomes outcomes, YieldTable byMonth, YearMonth last, int months) {
        History h = outcomes.history();
        YearMonth first = last.minusMonths(months - 1L);
        int[] start = new int[months + 1];
        for (int m = 0; m <= months; m++) {
            start[m] = (int) first.plusMonths(m).atDay(1).toEpochDay();
        }
        int[] received = new int[months];
        int[] comebacks = new int[months];
        long[] cost = new long[months];
        for (int set = 0; set < h.sets(); set++) {
            if (!h.arrived(set)) {
                continue;
            }
            int arrived = place(start, h.lotArrival(h.setLot(set)));
            if (arrived >= 0) {
                received[arrived]++;
            }
            for (int c = h.comebackStart(set); c < h.comebackStart(set + 1); c++) {
                int back = place(start, h.comebackDay(c));
                if (back >= 0) {
                    comebacks[back]++;
                    cost[back] += h.comebackCost(c);
                }
            }
        }
        List<MonthFigures> series = new ArrayList<>();
        for (int m = 0; m < months; m++) {
            YearMonth month = first.plusMonths(m);
            YieldRow counted = byMonth.row(List.of(month.toString()));
            series.add(new MonthFigures(month, received[m], counted, comebacks[m], new Money(cost[m], h.currency())));
        }
        return List.copyOf(series);
    }

    /** Which month a day falls in; -1 where in none. */
    private static int place(int[] start, int day) {
        if (day < start[0] || day >= start[start.length - 1]) {
            return -1;
        }
        int m = 0;
        while (day >= start[m + 1]) {
            m++;
        }
        return m;
    }
}
