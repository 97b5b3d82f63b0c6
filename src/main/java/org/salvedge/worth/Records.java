package org.salvedge.worth;

import java.util.Arrays;
import java.util.List;
import org.salvedge.shop.History;

/** The history as the model's parts read it: {@link Stays} with codes, sizes and ages worked out once for all of them. */
final class Records {
    private static final double DAYS_A_MONTH = 365.25 / 12;
    static final double USUAL_INCHES = 50;

    final History history;
    final Stays stays;
    final Codebook codes;
    final int asOf;
    /** Fault by set in the codebook, -1 = not known. Glass that went without a turn at the bench counts as broken. */
    final int[] fault;
    /** Claim by set in the codebook. */
    final int[] claim;
    /** Log of the diagonal over the usual one, by set and by family; 0 where nobody knows. */
    final float[] logInches;

    final double[] familyLogInches;
    /** A size, of a set or of the family, was known. */
    final boolean[] familySized;

    /** As the books have it. */
    Records(History history, int asOf, double perMinute) {
        this(history, new PartPrices(history, List.of()), asOf, perMinute);
    }

    /** As if boards out of donors had been bought. */
    Records(History history, PartPrices prices, int asOf, double perMinute) {
        this.history = history;
        this.asOf = asOf;
        stays = new Stays(history, prices, perMinute);
        codes = new Codebook(history);
        int n = history.sets();
        fault = new int[n];
        claim = new int[n];
        logInches = new float[n];
        familyLogInches = new double[history.families().size()];
        familySized = new boolean[familyLogInches.length];
        double[] sum = new double[familyLogInches.length];
        int[] count = new int[familyLogInches.length];
        for (int s = 0; s < n; s++) {
            claim[s] = codes.claim(history.setClaimed(s));
            fault[s] = faultOf(s);
            double inches = stays.inches(s);
            if (inches > 0) {
                sum[history.setFamily(s)] += Math.log(inches / USUAL_INCHES);
                count[history.setFamily(s)]++;
            }
        }
        for (int f = 0; f < sum.length; f++) {
            familySized[f] = count[f] > 0;
            familyLogInches[f] = count[f] > 0 ? sum[f] / count[f] : 0;
        }
        for (int s = 0; s < n; s++) {
            double inches = stays.inches(s);
            logInches[s] =
                    (float) (inches > 0 ? Math.log(inches / USUAL_INCHES) : familyLogInches[history.setFamily(s)]);
        }
    }

    private int faultOf(int s) {
        byte result = stays.result[s];
        if (stays.fault[s] >= 0) {
            return codes.fault(stays.fault[s]);
        }
        if (result != Stays.NOT_SAVED) {
            return -1;
        }
        return stays.sold(s) ? codes.unseen : codes.broken;
    }

    int lot(int set) {
        return history.setLot(set);
    }

    int supplier(int set) {
        return history.lotSupplier(history.setLot(set));
    }

    int family(int set) {
        return history.setFamily(set);
    }

    /** Months from a day to the day the history is as of; negative for days before. */
    double months(int day) {
        return (day - asOf) / DAYS_A_MONTH;
    }

    /** Lots in order of purchase. */
    int[] lotsInOrder() {
        Integer[] order = new Integer[history.lots()];
        Arrays.setAll(order, i -> i);
        Arrays.sort(order, (a, b) -> Integer.compare(history.lotBought(a), history.lotBought(b)));
        return Arrays.stream(order).mapToInt(Integer::intValue).toArray();
    }
}
