package org.salvedge.stats;

/**
 * A choice among actions whose payoff depends on an unknown state, and what it is worth to know more first.
 *
 * <p>Source: H. Raiffa and R. Schlaifer, "Applied Statistical Decision Theory" (1961), chapters 1 and 4; H. Raiffa, "Decision
 * Analysis" (1968), chapter 2.
 */
public final class FiniteDecision {
    private static final double ROUNDING = 1e-9;

    private final double[] prior;
    private final double[][] payoff;

    private FiniteDecision(double[] prior, double[][] payoff) {
        this.prior = prior;
        this.payoff = payoff;
    }

    /**
     * @param prior chances of the states; they add up to 1
     * @param payoff payoff[a][s] of action a in state s, in any unit
     */
    public static FiniteDecision of(double[] prior, double[][] payoff) {
        double sum = 0;
        for (double p : prior) {
            if (!(p >= 0)) {
                throw new IllegalArgumentException("chance " + p);
            }
            sum += p;
        }
        if (Math.abs(sum - 1) > ROUNDING) {
            throw new IllegalArgumentException("chances of the states add up to " + sum + ", not to 1");
        }
        double[][] copy = new double[payoff.length][];
        for (int a = 0; a < payoff.length; a++) {
            copy[a] = payoff[a].clone();
            if (copy[a].length != prior.length) {
                throw new IllegalArgumentException(
                        "action " + a + " has " + copy[a].length + " payoffs for " + prior.length + " states");
            }
        }
        if (copy.length == 0) {
            throw new IllegalArgumentException("no action to choose");
        }
        return new FiniteDecision(prior.clone(), copy);
    }

    /** Expected payoff of an action. */
    public double expected(int action) {
        double sum = 0;
        for (int s = 0; s < prior.length; s++) {
            sum += prior[s] * payoff[action][s];
        }
        return sum;
    }

    /** The action with the largest expected payoff; the first of equal ones. */
    public int best() {
        int best = 0;
        for (int a = 1; a < payoff.length; a++) {
            best = expected(a) > expected(best) ? a : best;
        }
        return best;
    }

    /** Expected payoff of the best action. */
    public double value() {
        return expected(best());
    }

    /** Expected value of perfect information: the most that any look can be worth. */
    public double evpi() {
        double sum = 0;
        for (int s = 0; s < prior.length; s++) {
            double most = Double.NEGATIVE_INFINITY;
            for (double[] ofAction : payoff) {
                most = Math.max(most, ofAction[s]);
            }
            sum += prior[s] * most;
        }
        return sum - value();
    }

    /**
     * Chance of a signal.
     *
     * @param likelihood likelihood[s][k]: chance of signal k in state s
     */
    public double chance(double[][] likelihood, int signal) {
        double sum = 0;
        for (int s = 0; s < prior.length; s++) {
            sum += prior[s] * likelihood[s][signal];
        }
        return sum;
    }

    /** The decision after a signal that can occur. */
    public FiniteDecision after(double[][] likelihood, int signal) {
        double chance = chance(likelihood, signal);
        if (!(chance > 0)) {
            throw new IllegalArgumentException("signal " + signal + " cannot occur");
        }
        double[] posterior = new double[prior.length];
        for (int s = 0; s < prior.length; s++) {
            posterior[s] = prior[s] * likelihood[s][signal] / chance;
        }
        return new FiniteDecision(posterior, payoff);
    }

    /** Expected value of the information in the signal, before its cost; never negative. */
    public double evsi(double[][] likelihood) {
        double sum = 0;
        for (int k = 0; k < likelihood[0].length; k++) {
            double chance = chance(likelihood, k);
            if (chance > 0) {
                sum += chance * after(likelihood, k).value();
            }
        }
        return Math.max(0, sum - value());
    }
}
