package org.salvedge.yield;

import it.unimi.dsi.fastutil.longs.Long2IntLinkedOpenHashMap;
import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;

/**
 * Sums of what came out beyond what was expected, one a lot and month, with what chance makes of them. Sets of one lot share damage and
 * craft, so a lot's sum strays by more than its sets do; how much more is estimated from the months before by moments (C. R. Henderson,
 * Biometrics 9 (1953) 226-252, method 1, with expectations in place of means).
 */
final class LotScores {
    private static final double PRIOR_MONTHS = 12;

    private final Long2IntLinkedOpenHashMap numbers = new Long2IntLinkedOpenHashMap();
    private final List<Score> scores = new ArrayList<>();
    private double lotVariance;

    private static final class Score {
        final int lot;
        final int month;
        double sum;
        double chance;
        double size;

        Score(int lot, int month) {
            this.lot = lot;
            this.month = month;
        }
    }

    LotScores() {
        numbers.defaultReturnValue(-1);
    }

    /**
     * @param size how much a shift would add to the sum: 1 for a case of the kind in question
     * @param variance of the value where nothing but chance is at work
     */
    void add(int lot, int month, double beyond, double variance, double size) {
        long key = (long) lot * CauseData.MONTHS + month;
        int at = numbers.get(key);
        if (at < 0) {
            at = scores.size();
            numbers.put(key, at);
            scores.add(new Score(lot, month));
        }
        Score s = scores.get(at);
        s.sum += beyond;
        s.chance += variance;
        s.size += size;
    }

    /** To be called when all is added: estimates how lots stray, from all of these together. */
    static void settle(LotScores... alike) {
        double squares = 0;
        double sizes = 0;
        for (LotScores one : alike) {
            for (Score s : one.scores) {
                if (s.month < CauseData.NOW) {
                    squares += s.sum * s.sum - s.chance;
                    sizes += s.size * s.size;
                }
            }
        }
        for (LotScores one : alike) {
            one.lotVariance = sizes == 0 ? 0 : Math.max(0, squares / sizes);
        }
    }

    /** A shift common to some lots in one month: its weighted estimate, per unit of size, and its standard error. */
    record Shift(double estimate, double error, double size) {
        double z() {
            return error == 0 || Double.isInfinite(error) ? 0 : estimate / error;
        }
    }

    Shift shift(int month, IntPredicate lots) {
        double top = 0;
        double information = 0;
        double size = 0;
        for (Score s : scores) {
            if (s.month == month && lots.test(s.lot)) {
                double variance = s.chance + lotVariance * s.size * s.size;
                if (variance > 0) {
                    top += s.size * s.sum / variance;
                    information += s.size * s.size / variance;
                    size += s.size;
                }
            }
        }
        return information == 0
                ? new Shift(0, Double.POSITIVE_INFINITY, 0)
                : new Shift(top / information, 1 / Math.sqrt(information), size);
    }

    /**
     * How the squares of z in the months before stand to 1, drawn to 1 as if that were worth a year: what a month has in common beyond
     * its lots. Never below 1.
     */
    static double spread(double squares, int months) {
        return Math.max(1, (squares + PRIOR_MONTHS) / (months + PRIOR_MONTHS));
    }
}
