package org.salvedge.worth.study;

import org.salvedge.worth.study.World.Regime;

/** The level of prices by month on the log scale, shared by all families; the future is drawn anew each time. */
final class Market {
    private static final double MONTH = 30.4375;
    private static final int AHEAD = 30;

    private final double[] level; // by month; the last known one is that of the last day
    private final int lastMonth;
    private final double drift;
    private final double shock;
    private final double season;

    private Market(double[] level, int lastMonth, double drift, double shock, double season) {
        this.level = level;
        this.lastMonth = lastMonth;
        this.drift = drift;
        this.shock = shock;
        this.season = season;
    }

    static Market draw(Regime regime, int lastDay, Dice dice) {
        int last = (int) Math.ceil(lastDay / MONTH);
        double shock = dice.between(0.004, 0.009);
        int turn = last - dice.whole(5, 9);
        double now = regime == Regime.FALLING_FAST ? -dice.between(0.025, 0.04) : -dice.between(0.016, 0.024);
        double before = dice.between(-0.002, 0.002);
        double wander = dice.between(-0.009, 0.003);
        double rise = dice.between(0.012, 0.02);
        double[] level = new double[last + 1];
        double drift = before;
        for (int m = 1; m <= last; m++) {
            drift = switch (regime) {
                case STEADY -> before;
                case WANDERING -> wander;
                case FALLING -> m > last - 10 ? now : -0.009;
                case FALLING_FAST -> m > turn ? now : before;
                case RISING -> m > last - 9 ? rise : 0.003;
            };
            level[m] = level[m - 1] + drift + shock * dice.student(5);
        }
        return new Market(level, last, drift, shock, dice.between(0.03, 0.07));
    }

    /** The market as known on the last day, with one future drawn. */
    Market future(Dice dice) {
        double[] longer = java.util.Arrays.copyOf(level, lastMonth + AHEAD + 1);
        for (int m = lastMonth + 1; m < longer.length; m++) {
            longer[m] = longer[m - 1] + drift + shock * dice.student(5);
        }
        return new Market(longer, lastMonth, drift, shock, season);
    }

    /** Price of a working set of grade A. */
    double price(Family family, int day) {
        double month = Math.max(0, day / MONTH);
        int m = (int) month;
        double here =
                m + 1 < level.length ? level[m] + (month - m) * (level[m + 1] - level[m]) : level[level.length - 1];
        double wave = season * Math.cos(2 * Math.PI * (month - 11.3) / 12);
        return family.price() * Math.exp(family.swing() * here - family.fall() * month + wave);
    }
}
