package org.salvedge.stats;

import java.util.Arrays;

/**
 * A regression whose coefficients are drawn from normal distributions of unknown spread, class by class, with one further
 * random effect a group of rows: logistic for counts, linear for measurements.
 *
 * <p>Coefficients are found by penalised likelihood with the groups' effects eliminated, their spread by the fixed-point rule of
 * MacKay, and their uncertainty from the curvature there. Sources: Breslow and Clayton, "Approximate inference in generalized
 * linear mixed models", Journal of the American Statistical Association 88 (1993) 9-25; MacKay, "Bayesian interpolation", Neural
 * Computation 4 (1992) 415-447, eq. 4.8 for the spread; Gelman, Bayesian Analysis 1 (2006) 515-533 on why few groups need a prior
 * on it.
 *
 * <p>Measurements with far outliers may be given noise of Student's law, fitted by weights: Lange, Little and Taylor, "Robust
 * statistical modeling using the t distribution", Journal of the American Statistical Association 84 (1989) 881-896.
 */
public final class MixedModel implements java.io.Serializable {
    private static final int OUTER = 8;
    private static final int INNER = 8;
    private static final double SETTLED = 0.03;
    private static final double CLOSE = 1e-4;
    private static final double LONGEST_STEP = 2.5;
    private static final double EXACT_GROUP_WORK = 3e8;

    private final boolean logistic;
    /** Degrees of freedom of the noise; infinite = normal. */
    private final double tails;
    /** What a measurement tells of the mean, over what it would with normal noise of the same scale. */
    private final double telling;

    private final int p;
    private final double[] beta;
    private final double[] effect;
    private final double[] groupScore;
    private final double[] groupWeight;
    private final double[] variance;
    private double groupVariance;
    private double groupFreedom;
    private double noise;
    private Cholesky factor;

    private MixedModel(MixedData data, MixedPrior prior, boolean logistic, double tails) {
        this.tails = tails;
        telling = tails == Double.POSITIVE_INFINITY ? 1 : (tails + 1) / (tails + 3);
        double[] heft = new double[logistic ? 0 : data.rows()];
        Arrays.fill(heft, telling);
        this.logistic = logistic;
        p = prior.size();
        beta = prior.means();
        effect = new double[data.groups()];
        groupScore = new double[data.groups()];
        groupWeight = new double[data.groups()];
        variance = prior.classVariances();
        groupVariance = prior.groupVariance();
        noise = prior.noise();
        factor = Cholesky.inPlace(new double[0][]);
        fit(new MixedWork(data, prior, heft));
    }

    /** Successes out of trials; both may be fractions. */
    public static MixedModel logistic(MixedData data, MixedPrior prior) {
        return new MixedModel(data, prior, true, Double.POSITIVE_INFINITY);
    }

    /** Means of so many measurements, with normal noise. */
    public static MixedModel linear(MixedData data, MixedPrior prior) {
        return new MixedModel(data, prior, false, Double.POSITIVE_INFINITY);
    }

    /**
     * As {@link #linear} with noise of Student's law, so that far outliers count for little.
     *
     * @param tails degrees of freedom; few = heavy tails
     */
    public static MixedModel robust(MixedData data, MixedPrior prior, double tails) {
        return new MixedModel(data, prior, false, tails);
    }

    private void fit(MixedWork work) {
        for (int outer = 0; outer < OUTER; outer++) {
            int steps = logistic ? INNER : 1;
            for (int i = 0; i < steps; i++) {
                if (step(work) < CLOSE) {
                    break;
                }
            }
            if (respread(work) < SETTLED) {
                break;
            }
        }
        step(work);
    }

    /** One Newton step; returns the longest move. */
    private double step(MixedWork last) {
        MixedData data = last.data;
        MixedPrior prior = last.prior;
        double[] heft = last.heft;
        double[][] a = new double[p][];
        double[] score = new double[p];
        for (int j = 0; j < p; j++) {
            a[j] = new double[j + 1];
            double precision = 1 / variance[prior.classOf(j)];
            a[j][j] = precision;
            score[j] = -precision * (beta[j] - prior.mean(j));
        }
        int groups = data.groups();
        int[] column = data.column;
        double[] value = data.value;
        double[] s = new double[groups];
        int row = 0;
        while (row < data.rows()) {
            int g = data.group(row);
            double[] by = g < 0 ? new double[0] : last.by[g];
            Arrays.fill(by, 0);
            double weight = 0;
            double pull = 0;
            for (; row < data.rows() && data.group(row) == g; row++) {
                double eta = linear(data, row);
                double w;
                double r;
                if (logistic) {
                    double mu = 1 / (1 + Math.exp(-eta));
                    w = Math.max(data.trials(row) * mu * (1 - mu), 1e-9);
                    r = data.response(row) - data.trials(row) * mu;
                } else {
                    w = telling * data.trials(row) / noise;
                    r = heft[row] * data.trials(row) / noise * (data.response(row) - eta);
                }
                weight += w;
                pull += r;
                int from = data.start(row);
                int to = data.start(row + 1);
                for (int k = from; k < to; k++) {
                    int j = column[k];
                    double x = value[k];
                    double wx = w * x;
                    score[j] += r * x;
                    double[] aj = a[j];
                    for (int m = from; m <= k; m++) {
                        int i = column[m];
                        if (i <= j) {
                            aj[i] += wx * value[m];
                        } else {
                            a[i][j] += w * value[m] * x;
                        }
                    }
                    if (g >= 0) {
                        by[last.place[k]] += wx;
                    }
                }
            }
            if (g >= 0) {
                double own = weight + 1 / groupVariance;
                last.own[g] = own;
                s[g] = pull - effect[g] / groupVariance;
                groupWeight[g] = weight;
                groupScore[g] = pull;
                int[] at = last.at[g];
                for (int k = 0; k < at.length; k++) {
                    score[at[k]] -= by[k] / own * s[g];
                }
                eliminate(a, at, by, own);
            }
        }
        factor = Cholesky.inPlace(a);
        factor.solve(score);
        double longest = 0;
        for (double d : score) {
            longest = Math.max(longest, Math.abs(d));
        }
        double scale = logistic && longest > LONGEST_STEP ? LONGEST_STEP / longest : 1;
        for (int j = 0; j < p; j++) {
            beta[j] += scale * score[j];
        }
        for (int g = 0; g < groups; g++) {
            int[] at = last.at[g];
            if (at == null) {
                continue;
            }
            double[] by = last.by[g];
            double move = s[g];
            for (int k = 0; k < at.length; k++) {
                move -= by[k] * score[at[k]];
            }
            move /= last.own[g];
            effect[g] += scale * Math.max(-LONGEST_STEP, Math.min(LONGEST_STEP, move));
            longest = Math.max(longest, Math.abs(move));
        }
        return longest;
    }

    /** Takes the part that a group's effect accounts for out of its coefficients' curvature; two rows at a time, which is quicker. */
    private static void eliminate(double[][] a, int[] at, double[] by, double own) {
        int k = 0;
        for (; k + 1 < at.length; k += 2) {
            double[] a0 = a[at[k]];
            double[] a1 = a[at[k + 1]];
            double part0 = by[k] / own;
            double part1 = by[k + 1] / own;
            for (int m = 0; m <= k; m++) {
                int j = at[m];
                double y = by[m];
                a0[j] -= part0 * y;
                a1[j] -= part1 * y;
            }
            a1[at[k + 1]] -= part1 * by[k + 1];
        }
        if (k < at.length) {
            double[] ak = a[at[k]];
            double part = by[k] / own;
            for (int m = 0; m <= k; m++) {
                ak[at[m]] -= part * by[m];
            }
        }
    }

    /** Updates the spreads; returns the largest relative change of one. */
    private double respread(MixedWork last) {
        MixedData data = last.data;
        MixedPrior prior = last.prior;
        double[] inverse = factor.inverseDiagonal();
        int classes = prior.classes();
        double[] squares = new double[classes];
        double[] freedom = new double[classes];
        for (int j = 0; j < p; j++) {
            int c = prior.classOf(j);
            double d = beta[j] - prior.mean(j);
            squares[c] += d * d;
            freedom[c] += 1 - inverse[j] / variance[c];
        }
        double change = 0;
        double used = 0;
        for (int c = 0; c < classes; c++) {
            used += Math.max(0, freedom[c]);
            if (prior.fixed(c)) {
                continue;
            }
            double next = prior.posterior(c, squares[c], Math.max(0, freedom[c]));
            change = Math.max(change, Math.abs(Math.log(next / variance[c])));
            variance[c] = next;
        }
        double sum = 0;
        double free = 0;
        int present = 0;
        boolean exact = (double) data.groups() * p * p < EXACT_GROUP_WORK;
        double[] work = new double[p];
        for (int g = 0; g < data.groups(); g++) {
            if (last.at[g] == null) {
                continue;
            }
            present++;
            double v = 1 / last.own[g];
            if (exact) {
                Arrays.fill(work, 0);
                for (int k = 0; k < last.at[g].length; k++) {
                    work[last.at[g][k]] = last.by[g][k] / last.own[g];
                }
                factor.forward(work);
                for (double x : work) {
                    v += x * x;
                }
            }
            sum += effect[g] * effect[g];
            free += 1 - v / groupVariance;
        }
        groupFreedom = Math.max(0, free);
        if (present > 0) {
            double next = prior.groupPosterior(sum, groupFreedom);
            change = Math.max(change, Math.abs(Math.log(next / groupVariance)));
            groupVariance = next;
        }
        if (!logistic) {
            double residual = data.within();
            double n = 0;
            for (int row = 0; row < data.rows(); row++) {
                double d = data.response(row) - linear(data, row);
                last.heft[row] = tails == Double.POSITIVE_INFINITY ? 1 : (tails + 1) / (tails + d * d / noise);
                residual += last.heft[row] * data.trials(row) * d * d;
                n += data.trials(row);
            }
            double next = prior.noisePosterior(residual, Math.max(0, n - used - groupFreedom));
            change = Math.max(change, Math.abs(Math.log(next / noise)));
            noise = next;
        }
        return change;
    }

    private double linear(MixedData data, int row) {
        double eta = data.offset(row);
        int[] column = data.column;
        double[] value = data.value;
        int to = data.start(row + 1);
        for (int k = data.start(row); k < to; k++) {
            eta += value[k] * beta[column[k]];
        }
        int g = data.group(row);
        return g < 0 ? eta : eta + effect[g];
    }

    /** The coefficient at the mode. */
    public double coefficient(int j) {
        return beta[j];
    }

    /** Posterior standard deviation of a coefficient, given the spreads. */
    public double coefficientSd(int j) {
        return Math.sqrt(factor.inverseDiagonal(j));
    }

    /** Estimated variance of a class of coefficients. */
    public double classVariance(int c) {
        return variance[c];
    }

    /** The group's effect at the mode: shrunk. */
    public double effect(int group) {
        return effect[group];
    }

    /** Weight of the group's own rows about its effect: the inverse variance of {@link #raw}. 0 for a group without rows. */
    public double precision(int group) {
        return groupWeight[group];
    }

    /** What the group's own rows alone say of its effect: unshrunk, by one step from the mode. */
    public double raw(int group) {
        return groupWeight[group] <= 0 ? 0 : effect[group] + groupScore[group] / groupWeight[group];
    }

    /** Variance between groups. */
    public double groupVariance() {
        return groupVariance;
    }

    /** Degrees of freedom that the groups' variance rests on. */
    public double groupFreedom() {
        return groupFreedom;
    }

    /** Variance of the error of what one measurement tells of its expectation; with normal noise that of the measurement itself. */
    public double noise() {
        return noise / telling;
    }

    /**
     * Of measurements that are logarithms: mean and mean square of what they are of, over what the expectation says. Source: Duan,
     * "Smearing estimate: a nonparametric retransformation method", Journal of the American Statistical Association 78 (1983)
     * 605-610.
     *
     * @param data that this was fitted to
     * @param usual variance that is expected of the logarithms beforehand
     * @param worth number of measurements that this is worth
     */
    public double[] smear(MixedData data, double usual, double worth) {
        double n = worth;
        double sum = worth * Math.exp(0.5 * usual);
        double squares = worth * Math.exp(2 * usual);
        for (int row = 0; row < data.rows(); row++) {
            double over = Math.exp(data.response(row) - linear(data, row));
            n += data.trials(row);
            sum += data.trials(row) * over;
            squares += data.trials(row) * over * over;
        }
        return new double[] {sum / n, squares / n};
    }

    /** Coefficients drawn from their joint posterior, by turning a vector of standard normals into them in place. */
    public void draw(double[] normals) {
        factor.backward(normals);
        for (int j = 0; j < p; j++) {
            normals[j] += beta[j];
        }
    }

    public int size() {
        return p;
    }
}
