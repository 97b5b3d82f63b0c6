package org.salvedge.worth.study;

import java.util.List;

/**
 * The truth of one model family.
 *
 * @param price of a working set of grade A on the shop's first day, before season and market
 * @param fall monthly loss of price with age, on the log scale
 * @param swing how strongly it follows the market; 1 = like the market
 * @param launch day since the shop's first day
 * @param weak what its build does to the shares of faults, by fault
 * @param ease what it does to the chances of a repair, by fault
 * @param slow what it does to minutes
 * @param models numbers on its rear labels, commonest first
 * @param common how many of it were sold, relative to others
 * @param reserve kept out of the history, for worlds of unseen models
 */
record Family(
        String name,
        String maker,
        double inches,
        double price,
        double fall,
        double swing,
        int launch,
        Shares weak,
        Shares ease,
        double slow,
        List<String> models,
        double common,
        boolean reserve) {
    Family {
        models = List.copyOf(models);
    }

    /** How often it is among sets salvaged on that day: few when new, most at two years, few when old. */
    double frequency(int day) {
        double years = (day - launch) / 365.25;
        return years < 0.4 ? 0 : common * Math.min(1, years / 2) * Math.exp(-Math.max(0, years - 2.5) / 1.6);
    }

    Family times(double factor) {
        return new Family(
                name, maker, inches, price * factor, fall, swing, launch, weak, ease, slow, models, common, reserve);
    }

    double shipping() {
        return 6 + 0.0055 * inches * inches;
    }
}
