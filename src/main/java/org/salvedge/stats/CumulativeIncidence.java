package org.salvedge.stats;

import java.util.ArrayList;
import java.util.List;

/**
 * Share that has ended by each cause by each time, where causes compete and some durations are censored.
 *
 * <p>Sources: O. O. Aalen and S. Johansen, "An empirical transition matrix for non-homogeneous Markov chains based on censored
 * observations", Scandinavian Journal of Statistics 5 (1978) 141-150; variance by the delta method: J. J. Gaynor et al., JASA 88
 * (1993) 400-409, in the form of E. Marubini and M. G. Valsecchi, "Analysing Survival Data from Clinical Trials and Observational
 * Studies" (1995), chapter 10.
 */
public final class CumulativeIncidence {
    private final List<Step> steps;

    /**
     * A time at which something ended by the cause asked for.
     *
     * @param atRisk units with a duration of at least this
     * @param incidence share ended by the cause up to and with this time
     * @param se standard error of the incidence
     * @param survival share ended by no cause just after
     */
    public record Step(double time, int atRisk, double incidence, double se, double survival) {}

    private CumulativeIncidence(List<Step> steps) {
        this.steps = steps;
    }

    /**
     * @param time durations, none negative, in any order
     * @param cause how each ended: 0 = censored, else the number of the cause
     * @param of the cause whose incidence is asked
     */
    public static CumulativeIncidence of(double[] time, int[] cause, int of) {
        if (of <= 0) {
            throw new IllegalArgumentException("cause " + of + ": causes are numbered from 1");
        }
        int[] order = Durations.order(time, cause);
        int n = time.length;
        List<Step> steps = new ArrayList<>();
        double survival = 1;
        double incidence = 0;
        // Sums of the variance, expanded in powers of the incidence at the time asked for.
        double constant = 0;
        double linear = 0;
        double square = 0;
        for (int i = 0; i < n; ) {
            double t = time[order[i]];
            double atRisk = n - i;
            double all = 0;
            double own = 0;
            for (; i < n && time[order[i]] == t; i++) {
                int c = cause[order[i]];
                all += c != 0 ? 1 : 0;
                own += c == of ? 1 : 0;
            }
            if (all == 0) {
                continue;
            }
            incidence += survival * own / atRisk;
            double hazard = survival * own / (atRisk * atRisk);
            constant += survival * hazard * (atRisk - own) / atRisk + 2 * incidence * hazard;
            linear -= 2 * hazard;
            if (all < atRisk) {
                double greenwood = all / (atRisk * (atRisk - all));
                square += greenwood;
                linear -= 2 * incidence * greenwood;
                constant += incidence * incidence * greenwood;
            }
            survival *= (atRisk - all) / atRisk;
            if (own > 0) {
                double variance = constant + incidence * (linear + incidence * square);
                steps.add(new Step(t, (int) atRisk, incidence, Math.sqrt(Math.max(0, variance)), survival));
            }
        }
        return new CumulativeIncidence(List.copyOf(steps));
    }

    /** Times at which something ended by the cause, ascending. */
    public List<Step> steps() {
        return steps;
    }

    /** Share ended by the cause up to and with t. */
    public double at(double t) {
        double incidence = 0;
        for (Step s : steps) {
            if (s.time() > t) {
                break;
            }
            incidence = s.incidence();
        }
        return incidence;
    }
}
