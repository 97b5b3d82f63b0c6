package org.salvedge.worth;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;

/**
 * What is asked of a {@link ShopModel}: this lot, from this supplier, bought on that day.
 *
 * @param supplier null or a name not in the history = a supplier never seen
 * @param on day of the purchase that the estimate is for
 * @param draws number of simulated outcomes
 * @param seed same question, same seed: same answer, on any machine
 */
public record Question(List<Candidate> sets, @Nullable String supplier, LocalDate on, int draws, long seed) {
    /** As many draws as anyone has asked for, times ten. */
    public static final int MOST_DRAWS = 10_000_000;

    public Question {
        sets = List.copyOf(sets);
        if (sets.isEmpty()) {
            throw new IllegalArgumentException("a lot without sets is worth nothing: there is nothing to estimate");
        }
        if (draws < 100 || draws > MOST_DRAWS) {
            throw new IllegalArgumentException("draws must be between 100 and " + MOST_DRAWS + ", not " + draws);
        }
    }
}
