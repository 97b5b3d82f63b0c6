package org.salvedge.stats;

/**
 * Yields of cells (as family x fault x fix), each drawn towards its parents (fix x fault, then fault, then all) as far as its own
 * record is thin, with an interval that allows for what sets of one lot share.
 *
 * <p>Hierarchical beta-binomial model, fitted from the bottom: sets of one lot in one cell have correlation rho (see
 * {@link Spread}), so a cell's record counts as its effective number of independent sets; cells of one parent are drawn from a
 * beta distribution about the parent's mean, whose spread is estimated the same way with the cells as samples; and so on up. A
 * parent never counts for more than its own lots allow, for lots are shared by its cells. Then from the top down: with parent
 * mean m (variance V), prior size K = 1/rho - 1 and own record of effective size n and mean p, the cell's mean is
 * (Km + np)/(K + n), and its variance that of the beta posterior plus (K/(K + n))^2 V. The interval has equal tails, of the beta
 * distribution with that mean and variance.
 *
 * <p>Sources: J. C. Kleinman, JASA 68 (1973) 46-54 (shrinkage of proportions by moments); C. N. Morris, "Parametric empirical
 * Bayes inference: theory and applications", JASA 78 (1983) 47-55 (uncertainty of the mean kept);
 * J. N. K. Rao and A. J. Scott, "A simple method for the analysis of clustered binary data", Biometrics 48 (1992) 577-585
 * (effective sizes). Own part: the guess 0.05 for each correlation, worth one large sample, so that a young shop is not certain
 * that nothing varies. The correlations count as known once estimated: on invented shops 95 % intervals held the truth of 92 to
 * 95 % of cells.
 */
public final class ShrunkYield implements java.io.Serializable {
    private static final double GUESS = 0.05;
    private static final double GUESS_SAMPLES = 1;
    private static final double LEAST = 1e-6;

    private final double[] rho;
    private final Spread.Means[] own;
    private final double[][] mean;
    private final double[][] variance;
    private final double[] low;
    private final double[] high;

    private ShrunkYield(double[] rho, Spread.Means[] own, double[][] mean, double[][] variance, double level) {
        this.rho = rho;
        this.own = own;
        this.mean = mean;
        this.variance = variance;
        int cells = mean[0].length;
        low = new double[cells];
        high = new double[cells];
        double tail = (1 - level) / 2;
        for (int c = 0; c < cells; c++) {
            double m = mean[0][c];
            double size = m * (1 - m) / variance[0][c] - 1;
            low[c] = Math.min(m, BetaQuantile.of(tail, size * m, size * (1 - m)));
            high[c] = Math.max(m, 1 - BetaQuantile.of(tail, size * (1 - m), size * m));
        }
    }

    /**
     * Fits the model to rows of one cell and one lot each, in any order (a cell and a lot may have several rows; they are added).
     *
     * @param cells how many cells there are; those without rows get their parent's mean and an interval as wide as cells differ
     * @param cell cell of each row, from 0
     * @param lot lot of each row, from 0
     * @param saved successes of each row
     * @param decided trials of each row, at least the successes; 0 is allowed and says nothing
     * @param parents parents[0][c] is the parent of cell c, parents[1][p] the parent of parent p, and so on, each from 0; above the
     *     last stands one root that need not be given; empty: the cells stand directly under it
     * @param level coverage of the intervals, as 0.95
     */
    public static ShrunkYield fit(
            int cells, int[] cell, int[] lot, int[] saved, int[] decided, int[][] parents, double level) {
        if (cell.length != lot.length || cell.length != saved.length || cell.length != decided.length) {
            throw new IllegalArgumentException("rows differ: " + cell.length + " cells, " + lot.length + " lots, "
                    + saved.length + " saved, " + decided.length + " decided");
        }
        if (!(level > 0 && level < 1)) {
            throw new IllegalArgumentException("level " + level + " is not between 0 and 1");
        }
        int top = parents.length + 1;
        int[][] up = new int[top][];
        int[] nodes = new int[top + 1];
        nodes[0] = cells;
        for (int k = 0; k < top; k++) {
            up[k] = k < parents.length ? parents[k] : new int[nodes[k]];
            nodes[k + 1] = k < parents.length ? count(parents[k], nodes[k], k) : 1;
        }

        double[] rho = new double[top + 1];
        Spread.Means[] own = new Spread.Means[top + 1];
        LotTotals lots = LotTotals.of(cells, cell, lot, saved, decided);
        Spread spread = lots.spread(cells);
        rho[0] = Math.max(LEAST, spread.correlation(GUESS, GUESS_SAMPLES));
        own[0] = spread.means(rho[0]);
        for (int k = 1; k <= top; k++) {
            lots = lots.grouped(nodes[k], up[k - 1]);
            own[k] = climb(rho, k, own[k - 1], up[k - 1], nodes[k], lots.effectiveTrials(nodes[k], rho[0]));
        }
        return descend(rho, own, up, level);
    }

    private static Spread.Means climb(
            double[] rho, int k, Spread.Means below, int[] parentOf, int nodes, double[] atMost) {
        Spread.Builder children = new Spread.Builder(nodes);
        for (int c = 0; c < parentOf.length; c++) {
            if (below.effective[c] > 0) {
                children.add(parentOf[c], below.effective[c], below.mean[c]);
            }
        }
        Spread spread = children.build();
        rho[k] = Math.max(LEAST, spread.correlation(GUESS, GUESS_SAMPLES));
        Spread.Means means = spread.means(rho[k]);
        for (int n = 0; n < nodes; n++) {
            means.effective[n] = Math.min(means.effective[n], atMost[n]);
        }
        return means;
    }

    private static ShrunkYield descend(double[] rho, Spread.Means[] own, int[][] up, double level) {
        int top = rho.length - 1;
        double[][] mean = new double[top + 1][];
        double[][] variance = new double[top + 1][];
        // The root: Jeffreys' prior.
        double n = own[top].effective[0];
        double m = (0.5 + n * own[top].mean[0]) / (1 + n);
        mean[top] = new double[] {m};
        variance[top] = new double[] {m * (1 - m) / (n + 2)};
        for (int k = top - 1; k >= 0; k--) {
            int nodes = up[k].length;
            mean[k] = new double[nodes];
            variance[k] = new double[nodes];
            double prior = 1 / rho[k + 1] - 1;
            for (int c = 0; c < nodes; c++) {
                double size = own[k].effective[c];
                double share = prior / (prior + size);
                int p = up[k][c];
                mean[k][c] = share * mean[k + 1][p] + (1 - share) * own[k].mean[c];
                double inherited = share * share * variance[k + 1][p];
                variance[k][c] = (mean[k][c] * (1 - mean[k][c]) - inherited) / (prior + size + 1) + inherited;
            }
        }
        return new ShrunkYield(rho, own, mean, variance, level);
    }

    private static int count(int[] parentOf, int children, int k) {
        if (parentOf.length != children) {
            throw new IllegalArgumentException(
                    "parents[" + k + "] has " + parentOf.length + " entries for " + children + " children");
        }
        int most = -1;
        for (int p : parentOf) {
            if (p < 0) {
                throw new IllegalArgumentException("parents[" + k + "] holds " + p);
            }
            most = Math.max(most, p);
        }
        return most + 1;
    }

    /** Number of cells. */
    public int cells() {
        return low.length;
    }

    /** Shrunk yield of a cell, in [0, 1]. */
    public double mean(int cell) {
        return mean[0][cell];
    }

    /** Lower end of the cell's interval; never above the mean. */
    public double low(int cell) {
        return low[cell];
    }

    /** Upper end of the cell's interval; never below the mean. */
    public double high(int cell) {
        return high[cell];
    }

    /** Standard deviation of the cell's yield given the record. */
    public double sd(int cell) {
        return Math.sqrt(variance[0][cell]);
    }

    /** The cell's own record: mean of its lots, each weighted by its effective size; 0 without a record. */
    public double ownMean(int cell) {
        return own[0].mean[cell];
    }

    /** How many independent sets the cell's record is worth: the sum of n/(1+(n-1)rho) over its lots. */
    public double effectiveSize(int cell) {
        return own[0].effective[cell];
    }

    /** Shrunk yield of a node above the cells: step 1 = their parents; the step after the last given parents is the root. */
    public double parentMean(int step, int node) {
        return mean[step][node];
    }

    /** Correlation of sets of one lot within a cell. */
    public double lotCorrelation() {
        return rho[0];
    }

    /** Spread of the nodes one step below, about their parent's mean m, as variance / (m(1-m)); step 1 = cells. */
    public double correlation(int step) {
        return rho[step];
    }
}
