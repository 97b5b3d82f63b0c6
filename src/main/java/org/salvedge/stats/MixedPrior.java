package org.salvedge.stats;

import it.unimi.dsi.fastutil.doubles.DoubleArrayList;
import it.unimi.dsi.fastutil.ints.IntArrayList;

/**
 * What is held of the coefficients of a {@link MixedModel} before its data are seen. Coefficients of a class are alike: normal
 * about their means with one variance, which is known, or unknown with a scaled inverse chi-square prior: worth so many
 * coefficients (its freedom) whose mean square is its scale.
 */
public final class MixedPrior {
    private final IntArrayList classOf = new IntArrayList();
    private final DoubleArrayList means = new DoubleArrayList();
    private final DoubleArrayList scale = new DoubleArrayList();
    private final DoubleArrayList freedom = new DoubleArrayList();
    private double groupScale = 1;
    private double groupFreedom = 1;
    private double noiseScale = 1;
    private double noiseFreedom = 1;

    /** A class whose variance is known. */
    public int fixed(double variance) {
        return spread(variance, Double.POSITIVE_INFINITY);
    }

    /** A class whose variance is to be estimated; returns its number. */
    public int spread(double variance, double worth) {
        scale.add(variance);
        freedom.add(worth);
        return scale.size() - 1;
    }

    /** Adds a coefficient; returns its number. */
    public int coefficient(int ofClass, double mean) {
        classOf.add(ofClass);
        means.add(mean);
        return classOf.size() - 1;
    }

    /** Adds as many coefficients with mean 0; returns the number of the first. */
    public int coefficients(int ofClass, int count) {
        int first = classOf.size();
        for (int i = 0; i < count; i++) {
            coefficient(ofClass, 0);
        }
        return first;
    }

    public MixedPrior groups(double variance, double worth) {
        groupScale = variance;
        groupFreedom = worth;
        return this;
    }

    public MixedPrior noise(double variance, double worth) {
        noiseScale = variance;
        noiseFreedom = worth;
        return this;
    }

    int size() {
        return classOf.size();
    }

    int classes() {
        return scale.size();
    }

    int classOf(int j) {
        return classOf.getInt(j);
    }

    double mean(int j) {
        return means.getDouble(j);
    }

    double[] means() {
        return means.toDoubleArray();
    }

    double[] classVariances() {
        return scale.toDoubleArray();
    }

    boolean fixed(int c) {
        return Double.isInfinite(freedom.getDouble(c));
    }

    double posterior(int c, double squares, double seen) {
        return blend(squares, seen, scale.getDouble(c), freedom.getDouble(c));
    }

    double groupVariance() {
        return groupScale;
    }

    double groupPosterior(double squares, double seen) {
        return blend(squares, seen, groupScale, groupFreedom);
    }

    double noise() {
        return noiseScale;
    }

    double noisePosterior(double squares, double seen) {
        return blend(squares, seen, noiseScale, noiseFreedom);
    }

    private static double blend(double squares, double seen, double scale, double worth) {
        return (squares + worth * scale) / (seen + worth);
    }
}
