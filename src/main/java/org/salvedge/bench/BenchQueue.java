package org.salvedge.bench;

import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.salvedge.shop.Text;
import org.salvedge.worth.turn.Prospect;

/**
 * The order in which to take the sets on the bench: by the rate at which a turn pays. Sets of one family with one likely fault
 * follow each other where the set-up saved lifts the next one over the others.
 */
public final class BenchQueue {
    /** Minutes of set-up that a second set of the same family and fault saves. Assumed, no source. */
    static final double SET_UP = 3;

    private static final double MINUTES_AN_HOUR = 60;

    private BenchQueue() {}

    /**
     * A set that may be taken.
     *
     * @param days since it arrived
     */
    public record Candidate(String unit, String family, int days, Prospect prospect) {
        double rate(boolean sameSetUp) {
            Prospect p = prospect;
            double minutes = minutes(sameSetUp);
            return p.minutes() <= 0 ? p.rate() : p.rate() * p.minutes() / minutes;
        }

        double minutes(boolean sameSetUp) {
            double all = prospect.minutes();
            return sameSetUp ? Math.max(all / 2, all - SET_UP) : all;
        }

        boolean alike(Candidate other) {
            return family.equals(other.family) && prospect.likely().equals(other.prospect.likely());
        }
    }

    /**
     * A place in the queue.
     *
     * @param minutes expected, less what the set-up of the one before saves
     * @param sameSetUp it follows one of its kind
     * @param within it fits into the hours
     */
    public record Place(Candidate candidate, double minutes, boolean sameSetUp, boolean within) {}

    /**
     * Those whose turn is expected to bring something, in the order to take them.
     *
     * @param hours of the day to fill; 0 = none is asked for
     */
    public static List<Place> order(List<Candidate> candidates, double hours) {
        List<Candidate> left = new ArrayList<>(
                candidates.stream().filter(c -> c.prospect().gain() > 0).toList());
        left.sort(Comparator.comparingDouble((Candidate c) -> c.prospect().rate())
                .reversed()
                .thenComparing(Comparator.comparingInt(Candidate::days).reversed())
                .thenComparing(Candidate::unit, Text.CODE_POINTS));
        List<Place> order = new ArrayList<>();
        double free = hours * MINUTES_AN_HOUR;
        Candidate last = null;
        while (!left.isEmpty()) {
            int next = 0;
            boolean same = last != null && left.get(0).alike(last);
            if (last != null && !same) {
                // The list is in order of rate, so the first of its kind is the best of its kind.
                for (int i = 1; i < left.size(); i++) {
                    if (left.get(i).alike(last)) {
                        same = left.get(i).rate(true) > left.get(0).rate(false);
                        next = same ? i : 0;
                        break;
                    }
                }
            }
            Candidate taken = left.remove(next);
            double minutes = taken.minutes(same);
            boolean within = minutes <= free;
            free -= within ? minutes : 0;
            order.add(new Place(taken, minutes, same, within));
            last = taken;
        }
        return order;
    }
}
