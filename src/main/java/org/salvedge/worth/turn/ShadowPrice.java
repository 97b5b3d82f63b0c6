package org.salvedge.worth.turn;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;

/**
 * What a minute of bench time is worth beyond labour: the rate of the best work that will be left undone. Over the days ahead
 * there are the sets on the bench and those to arrive (as in the days past), and so much bench time; work is done in order of its
 * rate (a fractional knapsack; Dantzig 1957, Operations Research 5, 266-277, whose critical item sets the price).
 */
final class ShadowPrice {
    private ShadowPrice() {}

    /**
     * Work of one set.
     *
     * @param copies how many such sets there will be
     */
    record Work(double rate, double minutes, double copies) {}

    /** @param available bench minutes over the same days */
    static double of(List<Work> work, double available) {
        List<Work> order = new ArrayList<>(work);
        order.sort(Comparator.comparingDouble(Work::rate).reversed());
        double left = available;
        for (Work w : order) {
            if (w.rate() <= 0) {
                return 0;
            }
            left -= w.minutes() * w.copies();
            if (left < 0) {
                return w.rate();
            }
        }
        return 0;
    }
}
