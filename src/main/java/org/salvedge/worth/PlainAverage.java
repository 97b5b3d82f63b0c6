package org.salvedge.worth;

import java.util.Optional;
import org.salvedge.shop.History;
import org.salvedge.stats.Crps;
import org.salvedge.yield.Outcomes;

/**
 * The yardstick, which is what people do without a program: the mean net recovery of all sets that have gone, times the number of
 * sets; spread as if sets had nothing in common.
 *
 * @param mean of one set, book currency
 * @param variance of one set
 */
record PlainAverage(double mean, double variance) {
    private static final int FEWEST = 2;

    /** Empty where hardly any set has gone. */
    static Optional<PlainAverage> of(Outcomes outcomes) {
        History h = outcomes.history();
        double minor = Math.pow(10, Math.max(0, h.currency().getDefaultFractionDigits()));
        double sum = 0;
        double squares = 0;
        int n = 0;
        for (int s = 0; s < h.sets(); s++) {
            if (h.arrived(s) && outcomes.gone(s)) {
                double net = outcomes.net(s) / minor;
                sum += net;
                squares += net * net;
                n++;
            }
        }
        if (n < FEWEST) {
            return Optional.empty();
        }
        double mean = sum / n;
        return Optional.of(new PlainAverage(mean, Math.max(0, squares / n - mean * mean)));
    }

    double mean(int sets) {
        return mean * sets;
    }

    double crps(int sets, double outcome) {
        return Crps.normal(mean * sets, Math.sqrt(variance * sets), outcome);
    }
}
