package org.salvedge.yield;

import it.unimi.dsi.fastutil.doubles.DoubleArrayList;
import it.unimi.dsi.fastutil.longs.Long2IntOpenHashMap;

/**
 * Expected values by three cells one within another, each drawn to the wider one as if that were worth so many further cases: the
 * posterior mean of Deely and Lindley (1981, JASA 76, 833-841) with fixed weights. Only what came before the month counts.
 */
final class Rates {
    private static final double TO_ALL = 4;

    private final double toWide;
    private final double toMiddle;
    private final Level wide;
    private final Level middle;
    private final Level narrow;
    private double sum;
    private double cases;

    Rates(int rows, double toWide, double toMiddle) {
        this.toWide = toWide;
        this.toMiddle = toMiddle;
        wide = new Level(rows);
        middle = new Level(rows);
        narrow = new Level(rows);
    }

    /** @param counts whether it was before the month in question */
    void add(boolean counts, double value, long inWide, long inMiddle, long inNarrow) {
        wide.add(counts, value, inWide);
        middle.add(counts, value, inMiddle);
        narrow.add(counts, value, inNarrow);
        if (counts) {
            sum += value;
            cases++;
        }
    }

    /** Of the row added i-th; 0.5 where nothing came before. */
    double expected(int i) {
        double all = cases == 0 ? 0.5 : sum / cases;
        return narrow.drawn(i, toMiddle, middle.drawn(i, toWide, wide.drawn(i, TO_ALL, all)));
    }

    private static final class Level {
        private final Long2IntOpenHashMap cell = new Long2IntOpenHashMap();
        private final int[] cellOf;
        private final DoubleArrayList sums = new DoubleArrayList();
        private final DoubleArrayList counts = new DoubleArrayList();
        private int rows;

        Level(int rows) {
            cellOf = new int[rows];
            cell.defaultReturnValue(-1);
        }

        void add(boolean counting, double value, long key) {
            int c = cell.get(key);
            if (c < 0) {
                c = sums.size();
                cell.put(key, c);
                sums.add(0);
                counts.add(0);
            }
            cellOf[rows++] = c;
            if (counting) {
                sums.set(c, sums.getDouble(c) + value);
                counts.set(c, counts.getDouble(c) + 1);
            }
        }

        double drawn(int row, double weight, double to) {
            int c = cellOf[row];
            return (sums.getDouble(c) + weight * to) / (counts.getDouble(c) + weight);
        }
    }
}
