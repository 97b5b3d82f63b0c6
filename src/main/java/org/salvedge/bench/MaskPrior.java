package org.salvedge.bench;

import java.util.List;
import org.salvedge.shop.Recipe;

/**
 * How likely each set of culprits is before any trial, over the contacts of one ribbon. A set of contacts is a whole number
 * whose bit i stands for contact i + 1; weights are indexed by it, the empty set has none, and they add up to 1.
 */
public final class MaskPrior {
    /** Ribbons up to this many contacts are planned exactly over all their subsets. */
    public static final int MOST_CONTACTS = 16;
    /** Chance of each contact where nothing else is known. Common practice, no source: 5 to 8 contacts are masked of about 20. */
    public static final double USUAL = 0.3;

    private MaskPrior() {}

    /** Each contact is a culprit by its own chance, independently, and at least one is. */
    public static double[] independent(double... chances) {
        int n = requireContacts(chances.length);
        for (double p : chances) {
            if (!(p > 0 && p < 1)) {
                throw new IllegalArgumentException("a chance must lie between 0 and 1, not " + p);
            }
        }
        double[] w = new double[1 << n];
        for (int s = 1; s < w.length; s++) {
            double p = 1;
            for (int i = 0; i < n; i++) {
                p *= (s >> i & 1) == 1 ? chances[i] : 1 - chances[i];
            }
            w[s] = p;
        }
        return normalised(w);
    }

    /** The same chance for each of n contacts. */
    public static double[] independent(int contacts, double chance) {
        double[] chances = new double[requireContacts(contacts)];
        java.util.Arrays.fill(chances, chance);
        return independent(chances);
    }

    /** Exactly one culprit, each contact alike. */
    public static double[] one(int contacts) {
        double[] w = new double[1 << requireContacts(contacts)];
        for (int i = 0; i < contacts; i++) {
            w[1 << i] = 1;
        }
        return normalised(w);
    }

    /** One contiguous run of culprits, all runs alike. */
    public static double[] run(int contacts) {
        double[] w = new double[1 << requireContacts(contacts)];
        for (int from = 0; from < contacts; from++) {
            for (int to = from + 1; to <= contacts; to++) {
                w[(1 << to) - (1 << from)] = 1;
            }
        }
        return normalised(w);
    }

    /**
     * What the panel's recipes teach: the predictive distribution of a Dirichlet process whose base is {@code base} with the
     * weight of one case, each good use of a recipe being a case (Ferguson 1973, Annals of Statistics 1, 209-230).
     */
    public static double[] fromRecipes(double[] base, List<Recipe> recipes) {
        double[] w = base.clone();
        for (Recipe r : recipes) {
            int contacts = contactsOf(r.contacts());
            if (r.good() != null && contacts > 0 && contacts < w.length) {
                w[contacts] += r.good();
            }
        }
        return normalised(w);
    }

    /** Positions such as {@code 3 4 5 9} as a set; -1 if one lies beyond the largest ribbon. */
    public static int contactsOf(String positions) {
        int set = 0;
        for (String p : positions.split("[ ,]+", -1)) {
            int i = Integer.parseInt(p);
            if (i < 1 || i > MOST_CONTACTS) {
                return -1;
            }
            set |= 1 << (i - 1);
        }
        return set;
    }

    private static int requireContacts(int n) {
        if (n < 1 || n > MOST_CONTACTS) {
            throw new IllegalArgumentException("contacts must be 1 to " + MOST_CONTACTS + ", not " + n);
        }
        return n;
    }

    private static double[] normalised(double[] w) {
        double sum = 0;
        for (double x : w) {
            sum += x;
        }
        for (int i = 0; i < w.length; i++) {
            w[i] /= sum;
        }
        return w;
    }
}
