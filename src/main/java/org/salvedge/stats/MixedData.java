package org.salvedge.stats;

import it.unimi.dsi.fastutil.doubles.DoubleArrayList;
import it.unimi.dsi.fastutil.ints.IntArrayList;
import it.unimi.dsi.fastutil.ints.IntArrays;

/** Rows of a {@link MixedModel}: response, weight, group, and the few coefficients that each row has. Sorted by group. */
public final class MixedData {
    private final int groups;
    private final int[] group;
    private final double[] response;
    private final double[] trials;
    private final double[] offset;
    private final int[] start;
    /** Terms of a row: those from its start up to the next one's. */
    final int[] column;

    final double[] value;
    private final double within;

    private MixedData(Builder b) {
        groups = b.groups;
        within = b.within;
        int n = b.group.size();
        int[] order = new int[n];
        for (int i = 0; i < n; i++) {
            order[i] = i;
        }
        IntArrays.mergeSort(order, (i, j) -> Integer.compare(b.group.getInt(i), b.group.getInt(j)));
        group = new int[n];
        response = new double[n];
        trials = new double[n];
        offset = new double[n];
        start = new int[n + 1];
        column = new int[b.column.size()];
        value = new double[b.column.size()];
        int at = 0;
        for (int i = 0; i < n; i++) {
            int from = order[i];
            group[i] = b.group.getInt(from);
            response[i] = b.response.getDouble(from);
            trials[i] = b.trials.getDouble(from);
            offset[i] = b.offset.getDouble(from);
            int end = from + 1 < n ? b.start.getInt(from + 1) : b.column.size();
            for (int k = b.start.getInt(from); k < end; k++) {
                column[at] = b.column.getInt(k);
                value[at++] = b.value.getDouble(k);
            }
            start[i + 1] = at;
        }
    }

    int rows() {
        return group.length;
    }

    int groups() {
        return groups;
    }

    int group(int row) {
        return group[row];
    }

    double response(int row) {
        return response[row];
    }

    double trials(int row) {
        return trials[row];
    }

    double offset(int row) {
        return offset[row];
    }

    int start(int row) {
        return start[row];
    }

    double within() {
        return within;
    }

    /** Collects rows: {@link #row}, then {@link #term} for each coefficient of it. */
    public static final class Builder {
        private final int groups;
        private final IntArrayList group = new IntArrayList();
        private final DoubleArrayList response = new DoubleArrayList();
        private final DoubleArrayList trials = new DoubleArrayList();
        private final DoubleArrayList offset = new DoubleArrayList();
        private final IntArrayList start = new IntArrayList();
        private final IntArrayList column = new IntArrayList();
        private final DoubleArrayList value = new DoubleArrayList();
        private double within;

        /** @param groups number of groups that share an effect */
        public Builder(int groups) {
            this.groups = groups;
        }

        /**
         * @param inGroup from 0; -1 = in none
         * @param y successes (logistic) or the mean of the measurements (linear)
         * @param n trials, or number of measurements; may be a fraction, to weigh a row less
         */
        public Builder row(int inGroup, double y, double n) {
            group.add(inGroup);
            response.add(y);
            trials.add(n);
            offset.add(0);
            start.add(column.size());
            return this;
        }

        /** A known part of the last row's expectation. */
        public Builder offset(double known) {
            offset.set(offset.size() - 1, known);
            return this;
        }

        /** A coefficient of the last row; each at most once a row. */
        public Builder term(int coefficient, double factor) {
            if (coefficient >= 0 && factor != 0) {
                column.add(coefficient);
                value.add(factor);
            }
            return this;
        }

        /** Sum of squares within the rows added, where a row is the mean of several measurements. */
        public Builder within(double squares) {
            within += squares;
            return this;
        }

        public MixedData build() {
            return new MixedData(this);
        }
    }
}
