package org.salvedge.shop;

import java.util.Collection;
import java.util.Optional;

/** The word that was probably meant. Distance of Damerau and Levenshtein, with swaps of neighbours. */
public final class Nearest {
    private static final int FARTHEST = 3;

    private Nearest() {}

    /** The nearest of the words, the first of equals; empty where none is near. */
    public static Optional<String> to(String typed, Collection<String> words) {
        String best = null;
        int least = Math.min(FARTHEST, Math.max(1, typed.length() * 2 / 5)) + 1;
        for (String word : words) {
            int distance = distance(typed, word);
            if (distance < least) {
                best = word;
                least = distance;
            }
        }
        return Optional.ofNullable(best);
    }

    private static int distance(String a, String b) {
        int[][] d = new int[a.length() + 1][b.length() + 1];
        for (int i = 0; i <= a.length(); i++) {
            for (int j = 0; j <= b.length(); j++) {
                if (i == 0 || j == 0) {
                    d[i][j] = i + j;
                    continue;
                }
                int change = a.charAt(i - 1) == b.charAt(j - 1) ? 0 : 1;
                d[i][j] = Math.min(d[i - 1][j - 1] + change, Math.min(d[i - 1][j], d[i][j - 1]) + 1);
                if (i > 1 && j > 1 && a.charAt(i - 1) == b.charAt(j - 2) && a.charAt(i - 2) == b.charAt(j - 1)) {
                    d[i][j] = Math.min(d[i][j], d[i - 2][j - 2] + 1);
                }
            }
        }
        return d[a.length()][b.length()];
    }
}
