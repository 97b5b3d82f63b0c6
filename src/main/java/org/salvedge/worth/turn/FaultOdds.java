package org.salvedge.worth.turn;

import java.util.HashMap;
import java.util.List;
import java.util.Map;

/**
 * How likely each fault is before a set is opened, given what the seller claims, its family and its supplier: shares drawn from
 * claim and family towards the claim, from there towards what is commonly so, as far as the record is thin (Dirichlet priors of
 * fixed weight; Good 1965, "The Estimation of Probabilities", chapter 3), times the supplier's own lean, alike drawn towards none.
 */
final class FaultOdds implements java.io.Serializable {
    private static final double CLAIM_WEIGHT = 12;
    private static final double FAMILY_WEIGHT = 15;
    private static final double SUPPLIER_WEIGHT = 40;

    private final int faults;
    private final Map<String, double[]> byClaim = new HashMap<>();
    private final Map<List<String>, double[]> byFamily = new HashMap<>();
    private final Map<String, double[]> bySupplier = new HashMap<>();
    private final double[] all;
    private final CommonPractice common;

    FaultOdds(BenchRecord record, CommonPractice common) {
        this.common = common;
        faults = record.faults().size();
        all = new double[faults];
        for (BenchRecord.Found f : record.found()) {
            byClaim.computeIfAbsent(f.claim(), c -> new double[faults])[f.fault()]++;
            byFamily.computeIfAbsent(List.of(f.claim(), f.family()), c -> new double[faults])[f.fault()]++;
            bySupplier.computeIfAbsent(f.supplier(), c -> new double[faults])[f.fault()]++;
            all[f.fault()]++;
        }
    }

    /** Chances that add up to 1, in the order of the record's faults. */
    double[] of(String claim, String family, String supplier) {
        double[] share = towards(byClaim.get(claim), common.shares(claim), CLAIM_WEIGHT);
        share = towards(byFamily.get(List.of(claim, family)), share, FAMILY_WEIGHT);
        double[] own = bySupplier.get(supplier);
        double total = sum(all);
        if (own != null && total > 0) {
            double n = sum(own);
            double sum = 0;
            for (int k = 0; k < faults; k++) {
                double usual = (all[k] + 0.5) / (total + 0.5 * faults);
                share[k] *= (own[k] + SUPPLIER_WEIGHT * usual) / (n + SUPPLIER_WEIGHT) / usual;
                sum += share[k];
            }
            for (int k = 0; k < faults; k++) {
                share[k] /= sum;
            }
        }
        return share;
    }

    private static double[] towards(
            double @org.jspecify.annotations.Nullable [] counts, double[] prior, double weight) {
        double[] share = prior.clone();
        if (counts != null) {
            double n = sum(counts);
            for (int k = 0; k < share.length; k++) {
                share[k] = (counts[k] + weight * prior[k]) / (n + weight);
            }
        }
        return share;
    }

    private static double sum(double[] x) {
        double sum = 0;
        for (double v : x) {
            sum += v;
        }
        return sum;
    }
}
