package org.salvedge.bench;

import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * Which contacts of a ribbon to mask next, so that the expected number of trials is least.
 *
 * <p>The model: an unknown set of culprits among the contacts; a trial masks some contacts and is good if and only if every
 * culprit is among them (a group test on the complement; Du and Hwang, "Combinatorial Group Testing and Its Applications", 2nd
 * ed. 2000, chapter 1, for group tests at large). A mask is acceptable when it holds every culprit and at most {@code
 * tolerance} others. Beside the culprit sets stands the possibility, of chance {@code notHere}, that no mask on this side helps:
 * then every trial is bad.
 */
public final class MaskPlan {
    private MaskPlan() {}

    /**
     * @param prior chance of each culprit set; see {@link MaskPrior}
     * @param tolerance needless contacts that a mask may hold
     * @param notHere chance that no mask on this side helps, 0 to below 1
     * @param error chance that a verdict is wrong, 0 to below 0.5
     * @param confidence with which the plan ends where verdicts can be wrong
     */
    public record Question(
            int contacts,
            double[] prior,
            int tolerance,
            double notHere,
            double error,
            double confidence,
            List<MaskTrial> tried) {
        public Question {
            if (prior.length != 1 << contacts) {
                throw new IllegalArgumentException("the prior is for another number of contacts");
            }
            if (tolerance < 0) {
                throw new IllegalArgumentException("tolerance must not be negative, but is " + tolerance);
            }
            if (!(notHere >= 0 && notHere < 1)) {
                throw new IllegalArgumentException("not-here must be 0 or more and below 1, not " + notHere);
            }
            if (!(error >= 0 && error < 0.5)) {
                throw new IllegalArgumentException("error must be 0 or more and below 0.5, not " + error);
            }
            if (!(confidence > 0.5 && confidence < 1)) {
                throw new IllegalArgumentException("confidence must lie between 0.5 and 1, not " + confidence);
            }
            for (MaskTrial t : tried) {
                if (t.masked() < 0 || t.masked() >= prior.length) {
                    throw new IllegalArgumentException("a trial names a contact beyond " + contacts);
                }
            }
            tried = List.copyOf(tried);
        }
    }

    /**
     * @param next contacts to mask in the next trial; null when done or sure that it is not here
     * @param mask the acceptable mask; null until done
     * @param expectedTrials trials to come if the plan is followed
     * @param posterior chance that each contact is a culprit, given that a mask on this side helps
     * @param notHere chance, by now, that no mask on this side helps
     */
    public record Answer(
            boolean done,
            @Nullable Integer next,
            @Nullable Integer mask,
            boolean notHereSure,
            double expectedTrials,
            double[] posterior,
            double notHere) {}

    /** @throws IllegalArgumentException if verdicts cannot be wrong and contradict each other */
    public static Answer of(Question q) {
        double[] w = weights(q);
        int n = q.contacts();
        double here = 0;
        for (int s = 0; s < 1 << n; s++) {
            here += w[s];
        }
        double total = here + w[1 << n];
        if (!(total > 0)) {
            throw new IllegalArgumentException("the trials contradict each other");
        }
        for (int s = 0; s < w.length; s++) {
            w[s] /= total;
        }
        double notHere = w[1 << n];
        double[] posterior = marginals(w, n, 1 - notHere);
        return q.error() == 0 ? exact(q, w, posterior, notHere) : NoisyMask.answer(q, w, posterior, notHere);
    }

    private static Answer exact(Question q, double[] w, double[] posterior, double notHere) {
        int n = q.contacts();
        MaskSearch search = MaskSearch.over(w, n, q.tolerance());
        if (search.notHereSure()) {
            return new Answer(false, null, null, true, 0, posterior, notHere);
        }
        if (search.done()) {
            return new Answer(true, null, search.mask(), false, 0, posterior, notHere);
        }
        MaskSearch.Step step = search.best();
        return new Answer(false, step.masked(), null, false, step.expectedTrials(), posterior, notHere);
    }

    /** Unnormalised posterior over culprit sets, and at index 2^n that of "not here". */
    static double[] weights(Question q) {
        int size = 1 << q.contacts();
        double[] w = new double[size + 1];
        for (int s = 0; s < size; s++) {
            w[s] = (1 - q.notHere()) * q.prior()[s];
        }
        w[size] = q.notHere();
        double right = 1 - q.error();
        for (MaskTrial t : q.tried()) {
            for (int s = 0; s < size; s++) {
                boolean wouldBeGood = (s & ~t.masked()) == 0;
                w[s] *= wouldBeGood == t.good() ? right : q.error();
            }
            w[size] *= t.good() ? q.error() : right;
        }
        return w;
    }

    private static double[] marginals(double[] w, int n, double here) {
        double[] p = new double[n];
        if (here <= 0) {
            return p;
        }
        for (int s = 0; s < 1 << n; s++) {
            for (int i = 0; i < n; i++) {
                if ((s >> i & 1) == 1) {
                    p[i] += w[s] / here;
                }
            }
        }
        for (int i = 0; i < n; i++) {
            p[i] = Math.min(1, p[i]);
        }
        return p;
    }
}
