package org.salvedge.yield;

import java.time.YearMonth;
import org.salvedge.shop.History;

/**
 * What a set brings when it leaves, after fees, shipping, tax and the labour of selling or stripping it: means over the sets that left in
 * the twelve months up to a month's end, by family, drawn to the mean of all families as if that were worth five more sets. Minor units
 * of the book currency.
 */
final class SetValues {
    private static final double DRAWN = 5;
    private static final int MONTHS = 12;

    private final double[] saved;
    private final double[] given;

    private SetValues(double[] saved, double[] given) {
        this.saved = saved;
        this.given = given;
    }

    static SetValues of(Outcomes o, YearMonth month) {
        History h = o.history();
        int families = h.families().size();
        int from = (int) month.minusMonths(MONTHS - 1L).atDay(1).toEpochDay();
        int to = (int) month.atEndOfMonth().toEpochDay();
        double[][] sum = new double[2][families + 1];
        int[][] n = new int[2][families + 1];
        for (int set = 0; set < h.sets(); set++) {
            if (!h.arrived(set) || !o.gone(set) || !o.decided(set)) {
                continue;
            }
            int day = h.exitDay(o.exit(set));
            if (day < from || day > to) {
                continue;
            }
            int which = o.saved(set) ? 0 : 1;
            double brought = brought(o, set);
            for (int f : new int[] {h.setFamily(set), families}) {
                sum[which][f] += brought;
                n[which][f]++;
            }
        }
        return new SetValues(means(sum[0], n[0]), means(sum[1], n[1]));
    }

    private static double brought(Outcomes o, int set) {
        History h = o.history();
        double money = 0;
        long micros = 0;
        for (int e = h.exitStart(set); e < h.exitStart(set + 1); e++) {
            money += h.exitGross(e) - h.exitCosts(e);
            micros += Math.max(0, h.exitMicros(e));
        }
        return money - o.labourOf(micros);
    }

    private static double[] means(double[] sum, int[] n) {
        int all = sum.length - 1;
        double mean = n[all] == 0 ? 0 : sum[all] / n[all];
        double[] means = new double[all];
        for (int f = 0; f < all; f++) {
            means[f] = (sum[f] + DRAWN * mean) / (n[f] + DRAWN);
        }
        return means;
    }

    /** Of a set of that family that passed and was sold. */
    double saved(int family) {
        return saved[family];
    }

    /** Of one that was stripped, sold as it was, or recycled. */
    double given(int family) {
        return given[family];
    }

    /** What saving a set of that family adds to giving it up. */
    double gain(int family) {
        return saved[family] - given[family];
    }
}
