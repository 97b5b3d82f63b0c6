package org.salvedge.worth.turn;

import java.util.SplittableRandom;
import java.util.stream.IntStream;
import org.salvedge.stats.Gaussian;

/**
 * Scores for drawing what the record leaves open, the same for every fault and family so that answers can be compared: standard
 * normal, each of the figures spread evenly over the draws (Latin hypercube; McKay, Beckman and Conover 1979, Technometrics 21,
 * 239-245). In the odd draws those who gave up would never have succeeded, in the even ones giving up tells nothing of the minutes
 * that were not tried.
 */
final class PossibleTries implements java.io.Serializable {
    /** Draws of each reading of giving up. */
    private static final int EACH = 24;

    static final int DRAWS = 2 * EACH;
    static final int CHANCE = 0;
    static final int SUCCESS = 1;
    static final int FAILURE = 2;
    static final int PACE = 3;
    static final int PRICE = 4;
    private static final int FIGURES = 5;
    private static final long SEED = 7;

    private final double[][] score = new double[FIGURES][DRAWS];

    PossibleTries() {
        SplittableRandom random = new SplittableRandom(SEED);
        for (double[] of : score) {
            for (int reading = 0; reading < 2; reading++) {
                int[] place = IntStream.range(0, EACH).toArray();
                for (int i = EACH - 1; i > 0; i--) {
                    int j = random.nextInt(i + 1);
                    int swapped = place[i];
                    place[i] = place[j];
                    place[j] = swapped;
                }
                for (int i = 0; i < EACH; i++) {
                    of[2 * i + reading] = Gaussian.quantile((place[i] + 0.5) / EACH);
                }
            }
        }
    }

    /** One draw of a try: chances of success, and of its hopeless end, by each of {@link TrySpan#minutes}. */
    record Try(double[] success, double[] failure) {}

    double score(int figure, int draw) {
        return score[figure][draw];
    }

    static boolean tellsNothing(int draw) {
        return draw % 2 == 0;
    }
}
