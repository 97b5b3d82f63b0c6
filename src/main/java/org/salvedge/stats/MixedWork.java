package org.salvedge.stats;

import java.util.Arrays;

/** What a {@link MixedModel} needs only until its fit stands. */
final class MixedWork {
    final MixedData data;
    final MixedPrior prior;
    /** Weight of each row by how far off it lies. */
    final double[] heft;
    /** By group: the coefficients that its rows have, ascending; null for a group without rows. */
    final int[][] at;
    /** Where each term's coefficient stands among those of its group. */
    final int[] place;
    /** Of the last step, by group: the weights of its coefficients with it, its own weight. */
    final double[][] by;

    final double[] own;

    MixedWork(MixedData data, MixedPrior prior, double[] heft) {
        this.data = data;
        this.prior = prior;
        this.heft = heft;
        at = new int[data.groups()][];
        by = new double[at.length][];
        own = new double[at.length];
        place = new int[data.column.length];
        int[] placeOf = new int[prior.size()];
        int[] seenIn = new int[prior.size()];
        int row = 0;
        while (row < data.rows()) {
            int g = data.group(row);
            int from = data.start(row);
            while (row < data.rows() && data.group(row) == g) {
                row++;
            }
            if (g >= 0) {
                group(g, from, data.start(row), seenIn, placeOf);
            }
        }
    }

    private void group(int g, int from, int to, int[] seenIn, int[] placeOf) {
        int[] touched = new int[Math.min(to - from, seenIn.length)];
        int count = 0;
        for (int k = from; k < to; k++) {
            int j = data.column[k];
            if (seenIn[j] != g + 1) {
                seenIn[j] = g + 1;
                touched[count++] = j;
            }
        }
        at[g] = Arrays.copyOf(touched, count);
        Arrays.sort(at[g]);
        by[g] = new double[count];
        for (int k = 0; k < count; k++) {
            placeOf[at[g][k]] = k;
        }
        for (int k = from; k < to; k++) {
            place[k] = placeOf[data.column[k]];
        }
    }
}
