package org.salvedge.stats;

/**
 * Choosing the best of n that come in random order, by rank alone, without recall: pass some, then take the first that beats them.
 *
 * <p>Source: J. P. Gilbert and F. Mosteller, "Recognizing the maximum of a sequence", JASA 61 (1966) 35-73, section 2 and table 2.
 *
 * @param first position, from 1, from which a candidate may be taken
 * @param chance of ending with the best
 */
public record BestChoice(int first, double chance) {
    public static BestChoice of(int n) {
        if (n < 1) {
            throw new IllegalArgumentException("nothing to choose from");
        }
        double tail = 0;
        int r = n;
        // The first r for which 1/r + ... + 1/(n-1) <= 1 with r - 1 passed.
        while (r > 1 && tail + 1.0 / (r - 1) <= 1) {
            r--;
            tail += 1.0 / r;
        }
        return new BestChoice(r, r == 1 ? 1.0 / n : (r - 1) * (tail + 1.0 / (r - 1)) / n);
    }
}
