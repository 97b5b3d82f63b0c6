package org.salvedge.yield;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import org.salvedge.shop.Fault;
import org.salvedge.shop.History;
import org.salvedge.shop.Money;

/**
 * Sets still here at the month's end, of one state and age: at what they have cost so far, and at what they are expected to bring.
 *
 * @param state {@code passed}, {@code tried} (attempts, none passed) or {@code untouched}
 * @param cost landed cost, parts, labour and comebacks so far, less what they have brought
 * @param expected what they are still to bring, units of the currency: a passed set what saved sets of its family bring; one that was
 *     tried what sets of that fault brought after their last attempt; an untouched one the net recovery of sets of that claim; means
 *     over the twelve months, drawn to that of all as if it were worth ten sets
 */
public record WorkLine(String state, String age, int sets, Money cost, double expected) {
    /** Upper ends of the ages, in days since the lot arrived. */
    public static final List<Integer> AGES = List.of(30, 60, 90);

    private static final List<String> STATES = List.of("passed", "tried", "untouched");
    private static final double DRAWN = 10;
    private static final int MONTHS = 12;

    static List<WorkLine> of(Outcomes o, YearMonth month, SetValues values) {
        History h = o.history();
        int today = (int) month.atEndOfMonth().toEpochDay();
        int from = (int) month.minusMonths(MONTHS - 1L).atDay(1).toEpochDay();
        int unknown = h.faults().find(Fault.UNKNOWN.code());
        Means byClaim = new Means(h.claims().size());
        Means byFault = new Means(h.faults().size());
        for (int set = 0; set < h.sets(); set++) {
            if (h.arrived(set) && o.gone(set) && o.decided(set) && h.exitDay(o.exit(set)) >= from) {
                byClaim.add(h.setClaimed(set), (double) o.net(set));
                int d = o.deciding(set);
                if (d >= 0 && h.attemptFault(d) != unknown) {
                    byFault.add(
                            h.attemptFault(d),
                            o.saved(set) ? values.saved(h.setFamily(set)) : values.given(h.setFamily(set)));
                }
            }
        }
        int ages = AGES.size() + 1;
        int[] sets = new int[STATES.size() * ages];
        long[] cost = new long[sets.length];
        double[] expected = new double[sets.length];
        for (int set = 0; set < h.sets(); set++) {
            if (!h.arrived(set) || o.gone(set) || h.lotArrival(h.setLot(set)) > today) {
                continue;
            }
            int latest = o.deciding(set);
            int state = o.passed(set) ? 0 : latest >= 0 ? 1 : 2;
            int cell = state * ages + age(today - h.lotArrival(h.setLot(set)));
            sets[cell]++;
            cost[cell] -= o.margin(set);
            expected[cell] += state == 0
                    ? values.saved(h.setFamily(set))
                    : state == 1 ? byFault.of(h.attemptFault(latest)) : byClaim.of(h.setClaimed(set));
        }
        double unit = Math.pow(10, Math.max(0, h.currency().getDefaultFractionDigits()));
        List<WorkLine> lines = new ArrayList<>();
        for (int c = 0; c < sets.length; c++) {
            lines.add(new WorkLine(
                    STATES.get(c / ages),
                    words(c % ages),
                    sets[c],
                    new Money(cost[c], h.currency()),
                    expected[c] / unit));
        }
        return List.copyOf(lines);
    }

    private static int age(int days) {
        int age = 0;
        while (age < AGES.size() && days > AGES.get(age)) {
            age++;
        }
        return age;
    }

    private static String words(int age) {
        return age == 0
                ? "up to " + AGES.get(0) + " days"
                : age == AGES.size()
                        ? "over " + AGES.get(age - 1) + " days"
                        : AGES.get(age - 1) + 1 + " to " + AGES.get(age) + " days";
    }

    private static final class Means {
        private final double[] sum;
        private final double[] n;
        private double all;
        private double count;

        Means(int cells) {
            sum = new double[cells];
            n = new double[cells];
        }

        void add(int cell, double value) {
            sum[cell] += value;
            n[cell]++;
            all += value;
            count++;
        }

        double of(int cell) {
            double mean = count == 0 ? 0 : all / count;
            return (sum[cell] + DRAWN * mean) / (n[cell] + DRAWN);
        }
    }
}
