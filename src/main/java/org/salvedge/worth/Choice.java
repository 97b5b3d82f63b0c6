package org.salvedge.worth;

import java.util.ArrayList;
import java.util.List;
import java.util.Optional;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Money;
import org.salvedge.stats.Knapsack;

/**
 * Which of several lots to go for with limited cash and bench hours: those that together bring the largest expected profit, each
 * bought at the price asked about, else at its highest bid. Labour is paid within the profit, so the shadow price of an hour is
 * what it would be worth beyond its wage.
 *
 * @param lots in the order given
 * @param cash limit on the outlays, book currency; infinite = none
 * @param hours limit on the expected bench hours; infinite = none
 * @param profit expected of the lots taken together
 * @param shadowHour worth of one more bench hour if lots could be split; 0 where hours do not bind
 * @param shadowCash worth of one more unit of cash
 * @param proven whether no other choice is better; else the search was cut off
 */
public record Choice(
        List<Lot> lots,
        double cash,
        double hours,
        double profit,
        double cashUsed,
        double hoursUsed,
        double shadowHour,
        double shadowCash,
        boolean proven) {
    /** As many lots as can be weighed against each other. */
    public static final int MOST_LOTS = 100;

    private static final int MINUTES_AN_HOUR = 60;

    /**
     * A lot among others.
     *
     * @param price that it would be bought at; null where no price makes sense
     * @param outlay at that price, 0 without one
     * @param profit expected at that price
     * @param hours expected at the bench
     */
    public record Lot(
            String name,
            Appraisal answer,
            @Nullable Money price,
            double outlay,
            double profit,
            double hours,
            boolean taken) {}

    public Choice {
        lots = List.copyOf(lots);
    }

    /** @param names of the lots, as many as answers */
    public static Choice of(List<String> names, List<Appraisal> answers, double cash, double hours) {
        int n = answers.size();
        double[] profit = new double[n];
        double[] outlay = new double[n];
        double[] time = new double[n];
        Money[] prices = new Money[n];
        for (int i = 0; i < n; i++) {
            Appraisal a = answers.get(i);
            Optional<Money> price = a.price() != null ? Optional.of(a.price()) : a.highestBid();
            time[i] = a.worth().minutes().mean() / MINUTES_AN_HOUR;
            if (price.isPresent()) {
                prices[i] = price.get();
                outlay[i] = a.terms().outlay(price.get()).toDoubleForStatistics();
                profit[i] = a.worth().recovery().mean() - outlay[i];
            }
        }
        Knapsack best = Knapsack.of(profit, outlay, time, cash, hours);
        List<Lot> lots = new ArrayList<>();
        double cashUsed = 0;
        double hoursUsed = 0;
        for (int i = 0; i < n; i++) {
            boolean taken = best.takes(i);
            lots.add(new Lot(names.get(i), answers.get(i), prices[i], outlay[i], profit[i], time[i], taken));
            cashUsed += taken ? outlay[i] : 0;
            hoursUsed += taken ? time[i] : 0;
        }
        return new Choice(
                lots,
                cash,
                hours,
                best.value(),
                cashUsed,
                hoursUsed,
                best.shadowPriceSecond(),
                best.shadowPriceFirst(),
                best.proven());
    }
}
