package org.salvedge.stats;

/**
 * When to give up a job that may succeed at any minute, with each minute costing something: go on while the best future stretch has
 * positive expected gain.
 *
 * <p>While the job lasts nothing is learnt but that it lasts, so a policy is a minute at which to stop, and the best one maximises
 * gain x (chance to succeed by then) - cost x (expected minutes until then). Optimal stopping of a deterministic sequence:
 * T. S. Ferguson, "Optimal Stopping and Applications", chapter 1; the curves are cumulative incidences (see
 * {@link CumulativeIncidence}). Between the given minutes nothing happens, so only they need be tried.
 */
public final class StopRule {
    private static final double ROUNDING = 1e-9;

    private final double[] minute;
    private final double[] success;
    private final double[] lasting;
    /** Expected minutes spent up to each minute. */
    private final double[] spent;

    /**
     * Where to stop.
     *
     * @param minute at which to stop, counted from the start of the job; that given if it is best not to go on
     * @param gain expected from going on until then, in the unit of the gain; 0 if it is best not to
     * @param chance to succeed if one goes on until then
     * @param minutes expected to be spent from now on
     */
    public record Stop(double minute, double gain, double chance, double minutes) {}

    private StopRule(double[] minute, double[] success, double[] lasting, double[] spent) {
        this.minute = minute;
        this.success = success;
        this.lasting = lasting;
        this.spent = spent;
    }

    /**
     * @param minute times at which something may happen, ascending and above 0; what comes after the last is not known, so one never
     *     goes on beyond it
     * @param success chance to have succeeded by each
     * @param over chance to have ended by each in another way that costs no more minutes, as a panel that broke; zeros if there is
     *     none. A give-up is not one if the set could have been worked on: leave it out of both (censored), or take the success curve
     *     in which give-ups never succeed (failures).
     */
    public static StopRule of(double[] minute, double[] success, double[] over) {
        int n = minute.length;
        double[] lasting = new double[n];
        double[] spent = new double[n];
        for (int i = 0; i < n; i++) {
            double before = i == 0 ? 0 : minute[i - 1];
            double until = i == 0 ? 1 : lasting[i - 1];
            lasting[i] = 1 - success[i] - over[i];
            if (!(minute[i] > before
                    && lasting[i] >= -ROUNDING
                    && lasting[i] <= until + ROUNDING
                    && success[i] >= (i == 0 ? 0 : success[i - 1]))) {
                throw new IllegalArgumentException(
                        "minute " + minute[i] + " after " + before + ": succeeded " + success[i] + ", over " + over[i]);
            }
            lasting[i] = Math.max(0, lasting[i]);
            spent[i] = (i == 0 ? 0 : spent[i - 1]) + until * (minute[i] - before);
        }
        return new StopRule(minute.clone(), success.clone(), lasting, spent);
    }

    /** Where to stop a job not yet begun. */
    public Stop best(double gain, double costPerMinute) {
        return after(0, gain, costPerMinute);
    }

    /**
     * Where to stop a job that has lasted this many minutes.
     *
     * @param gain if it succeeds over not going on, as saved over stripped
     * @param costPerMinute above or equal 0
     */
    public Stop after(double minutesSpent, double gain, double costPerMinute) {
        if (!(costPerMinute >= 0)) {
            throw new IllegalArgumentException("cost of a minute " + costPerMinute);
        }
        int next = 0;
        while (next < minute.length && minute[next] <= minutesSpent) {
            next++;
        }
        double alive = next == 0 ? 1 : lasting[next - 1];
        if (!(alive > 0)) {
            return new Stop(minutesSpent, 0, 0, 0);
        }
        int at = -1;
        double most = 0;
        double done = next == 0 ? 0 : success[next - 1];
        double used = (next == 0 ? 0 : spent[next - 1]) + alive * (minutesSpent - (next == 0 ? 0 : minute[next - 1]));
        for (int i = next; i < minute.length; i++) {
            double chance = (success[i] - done) / alive;
            double minutes = (spent[i] - used) / alive;
            double net = gain * chance - costPerMinute * minutes;
            if (net > most) {
                most = net;
                at = i;
            }
        }
        return at < 0
                ? new Stop(minutesSpent, 0, 0, 0)
                : new Stop(minute[at], most, (success[at] - done) / alive, (spent[at] - used) / alive);
    }
}
