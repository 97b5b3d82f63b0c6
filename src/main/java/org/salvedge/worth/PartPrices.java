package org.salvedge.worth;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Fix;
import org.salvedge.shop.History;
import org.salvedge.shop.Part;
import org.salvedge.shop.PartKind;

/**
 * What boards cost a shop that buys them, what those out of donors are put down at, and what it would have paid had it bought those
 * as well: the estimates are made as if no donor had been used, so that what donors save is counted once, on top of them.
 */
final class PartPrices implements java.io.Serializable {
    static final List<PartKind> KINDS = PartKind.BEHIND_THE_GLASS;
    /** So many boards must have been bought before a price is taken from the record. */
    private static final int FEWEST = 3;

    private static final double WORTH = 5;

    /** Price of a bought board by kind and family; NaN = the record does not say. */
    private final double[][] price;
    /** What a board out of a donor is put down at, by kind; NaN = the record does not say. */
    private final double[] value = new double[KINDS.size()];
    /** Minutes that taking one out costs beyond stripping. */
    final double minutes;
    /** By turn at the bench: what bought boards would have cost beyond what those out of donors were put down at. */
    private final Map<Integer, Double> beyond = new HashMap<>();
    /** By set: what its boards that were used or have gone were put down at. */
    private final Map<Integer, Double> moved = new HashMap<>();
    /** A board out of a donor has gone into another set. */
    final boolean used;

    PartPrices(History h, List<Part> parts) {
        price = new double[KINDS.size()][h.families().size()];
        for (double[] row : price) {
            Arrays.fill(row, Double.NaN);
        }
        Map<Integer, List<Part>> byAttempt = new HashMap<>();
        double[] worth = new double[value.length];
        double[] count = new double[value.length];
        for (Part p : parts) {
            int kind = KINDS.indexOf(p.kind());
            if (p.fromUnit() != null && kind >= 0) {
                worth[kind] += p.value().toDoubleForStatistics();
                count[kind]++;
                if (p.attempt() != null) {
                    byAttempt
                            .computeIfAbsent(p.attempt(), a -> new ArrayList<>())
                            .add(p);
                }
            }
        }
        for (int k = 0; k < value.length; k++) {
            value[k] = worth[k] / count[k];
        }
        Map<Integer, List<Part>> byRow = new HashMap<>();
        if (!byAttempt.isEmpty()) {
            for (int a = 0; a < h.attempts(); a++) {
                List<Part> in = byAttempt.get(h.attemptNumber(a));
                if (in != null) {
                    byRow.put(a, in);
                }
            }
        }
        used = !byRow.isEmpty();
        minutes = used ? takingOut(h) : 0;
        if (used) {
            bought(h, byRow);
            instead(h, byRow, parts);
        }
    }

    /** Prices of a kind, each family's drawn towards the kind's. */
    private void bought(History h, Map<Integer, List<Part>> fromDonors) {
        double minor = Math.pow(10, Math.max(0, h.currency().getDefaultFractionDigits()));
        int[] kindOf = new int[h.fixes().size()];
        for (int x = 0; x < kindOf.length; x++) {
            PartKind needed = PartKind.neededBy(new Fix(h.fixes().text(x)));
            kindOf[x] = needed == null ? -1 : KINDS.indexOf(needed);
        }
        double[][] sum = new double[price.length][h.families().size()];
        double[][] n = new double[price.length][h.families().size()];
        for (int a = 0; a < h.attempts(); a++) {
            int kind = kindOf[h.attemptFix(a)];
            if (kind >= 0 && h.attemptParts(a) > 0 && !fromDonors.containsKey(a)) {
                int family = h.setFamily(h.attemptSet(a));
                sum[kind][family] += h.attemptParts(a) / minor;
                n[kind][family]++;
            }
        }
        for (int k = 0; k < price.length; k++) {
            double all = Arrays.stream(n[k]).sum();
            if (all < FEWEST) {
                continue;
            }
            double usual = Arrays.stream(sum[k]).sum() / all;
            for (int f = 0; f < price[k].length; f++) {
                price[k][f] = (sum[k][f] + WORTH * usual) / (n[k][f] + WORTH);
            }
        }
    }

    private void instead(History h, Map<Integer, List<Part>> byRow, List<Part> parts) {
        for (Map.Entry<Integer, List<Part>> of : byRow.entrySet()) {
            double more = 0;
            for (Part p : of.getValue()) {
                double paid = price[KINDS.indexOf(p.kind())][h.setFamily(h.attemptSet(of.getKey()))];
                more += Double.isNaN(paid) ? 0 : paid - p.value().toDoubleForStatistics();
            }
            beyond.put(of.getKey(), more);
        }
        Map<String, Double> byDonor = new HashMap<>();
        for (Part p : parts) {
            if (p.fromUnit() != null && (p.attempt() != null || p.goneOn() != null)) {
                byDonor.merge(p.fromUnit().value(), p.value().toDoubleForStatistics(), Double::sum);
            }
        }
        for (int s = 0; s < h.sets(); s++) {
            Double sum = byDonor.get(h.label(s));
            if (sum != null) {
                moved.put(s, sum);
            }
        }
    }

    private static double takingOut(History h) {
        double sum = 0;
        double n = 0;
        for (int e = 0; e < h.exits(); e++) {
            if (h.exitGone(e) == 0 && h.exitKind(e) == ExitKind.STRIPPED.ordinal() && h.exitMicros(e) >= 0) {
                sum += h.exitMicros(e) / 1e6;
                n++;
            }
        }
        return (sum + WORTH * Assumed.TAKING_OUT_MINUTES) / (n + WORTH);
    }

    /** @param attempt row in the history */
    double beyond(int attempt) {
        return used ? beyond.getOrDefault(attempt, 0.0) : 0;
    }

    double moved(int set) {
        return used ? moved.getOrDefault(set, 0.0) : 0;
    }

    /** What a board out of a donor saves a set of a family; NaN where the record does not say. */
    double saves(int kind, int family) {
        return price[kind][family] - value[kind];
    }

    /** What a board out of a donor is put down at. */
    double value(int kind) {
        return value[kind];
    }
}
