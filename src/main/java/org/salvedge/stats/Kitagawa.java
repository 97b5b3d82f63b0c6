package org.salvedge.stats;

import java.util.ArrayList;
import java.util.List;

/**
 * A change between two overall rates, split into what comes of another mix of cells and what comes of other rates within them.
 *
 * <p>Source: E. M. Kitagawa, "Components of a difference between two rates", JASA 50 (1955) 1168-1194. For each cell, mix = change
 * of its share times the mean of its two rates; rate = change of its rate times the mean of its two shares. A cell empty on
 * one side takes the other side's rate, so its whole effect is mix.
 *
 * @param before overall rate before
 * @param after overall rate after
 * @param mix effect of the mix; mix + rate is exactly change
 * @param rate effect of the rates
 * @param cells in the order given; their effects add up to mix and rate but for rounding in the sixteenth digit
 */
public record Kitagawa(double before, double after, double mix, double rate, List<Cell> cells) {
    /** Effects of one cell. */
    public record Cell(double mix, double rate) {}

    public Kitagawa {
        cells = List.copyOf(cells);
    }

    /** The overall rate after less that before. */
    public double change() {
        return after - before;
    }

    /**
     * From counts in cells, as decided and saved sets.
     *
     * @param trialsBefore at least one in all
     * @param trialsAfter at least one in all
     */
    public static Kitagawa ofCounts(
            long[] successesBefore, long[] trialsBefore, long[] successesAfter, long[] trialsAfter) {
        int k = trialsBefore.length;
        double allBefore = 0;
        double allAfter = 0;
        for (int i = 0; i < k; i++) {
            check(i, successesBefore[i], trialsBefore[i]);
            check(i, successesAfter[i], trialsAfter[i]);
            allBefore += trialsBefore[i];
            allAfter += trialsAfter[i];
        }
        if (allBefore == 0 || allAfter == 0) {
            throw new IllegalArgumentException(
                    "no trials on one side: " + allBefore + " before, " + allAfter + " after");
        }
        double[] shareBefore = new double[k];
        double[] shareAfter = new double[k];
        double[] rateBefore = new double[k];
        double[] rateAfter = new double[k];
        double onesBefore = 0;
        double onesAfter = 0;
        for (int i = 0; i < k; i++) {
            onesBefore += successesBefore[i];
            onesAfter += successesAfter[i];
            shareBefore[i] = trialsBefore[i] / allBefore;
            shareAfter[i] = trialsAfter[i] / allAfter;
            rateBefore[i] = trialsBefore[i] == 0 ? Double.NaN : successesBefore[i] / (double) trialsBefore[i];
            rateAfter[i] = trialsAfter[i] == 0 ? Double.NaN : successesAfter[i] / (double) trialsAfter[i];
        }
        return split(onesBefore / allBefore, onesAfter / allAfter, shareBefore, rateBefore, shareAfter, rateAfter);
    }

    /**
     * From shares, which add up to 1 on each side, and rates; the rate of an empty cell is not a number.
     */
    public static Kitagawa of(double[] shareBefore, double[] rateBefore, double[] shareAfter, double[] rateAfter) {
        return split(
                overall(shareBefore, rateBefore),
                overall(shareAfter, rateAfter),
                shareBefore,
                rateBefore,
                shareAfter,
                rateAfter);
    }

    private static Kitagawa split(
            double before,
            double after,
            double[] shareBefore,
            double[] rateBefore,
            double[] shareAfter,
            double[] rateAfter) {
        List<Cell> cells = new ArrayList<>(shareBefore.length);
        double mix = 0;
        double rate = 0;
        for (int i = 0; i < shareBefore.length; i++) {
            double was = Double.isNaN(rateBefore[i]) ? rateAfter[i] : rateBefore[i];
            double is = Double.isNaN(rateAfter[i]) ? rateBefore[i] : rateAfter[i];
            Cell cell = Double.isNaN(was)
                    ? new Cell(0, 0)
                    : new Cell(
                            (shareAfter[i] - shareBefore[i]) * (was + is) / 2,
                            (is - was) * (shareBefore[i] + shareAfter[i]) / 2);
            cells.add(cell);
            mix += cell.mix;
            rate += cell.rate;
        }
        double change = after - before;
        // Rounding may leave the sum some units in the last place off: the larger part takes them, the smaller the
        // rest.
        boolean mixIsLarger = Math.abs(mix) > Math.abs(rate);
        for (int i = 0; i < 4 && mix + rate != change; i++) {
            if (mixIsLarger == (i % 2 == 0)) {
                mix = change - rate;
            } else {
                rate = change - mix;
            }
        }
        return new Kitagawa(before, after, mix, rate, cells);
    }

    private static double overall(double[] share, double[] rate) {
        double sum = 0;
        for (int i = 0; i < share.length; i++) {
            sum += share[i] == 0 ? 0 : share[i] * rate[i];
        }
        return sum;
    }

    private static void check(int i, long successes, long trials) {
        if (trials < 0 || successes < 0 || successes > trials) {
            throw new IllegalArgumentException("cell " + i + ": " + successes + " of " + trials);
        }
    }

    /**
     * The older split in three: mix at the old rates, rates at the old mix, and what neither explains alone.
     *
     * @param mix sum of share changes times old rates
     * @param rate sum of rate changes times old shares
     * @param interaction sum of the products of both changes
     */
    public record ThreeParts(double mix, double rate, double interaction) {
        /** Cells need rates on both sides. */
        public static ThreeParts of(
                double[] shareBefore, double[] rateBefore, double[] shareAfter, double[] rateAfter) {
            double mix = 0;
            double rate = 0;
            double both = 0;
            for (int i = 0; i < shareBefore.length; i++) {
                double share = shareAfter[i] - shareBefore[i];
                double moved = rateAfter[i] - rateBefore[i];
                mix += share * rateBefore[i];
                rate += shareBefore[i] * moved;
                both += share * moved;
            }
            return new ThreeParts(mix, rate, both);
        }
    }
}
