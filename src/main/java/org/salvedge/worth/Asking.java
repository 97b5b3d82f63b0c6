package org.salvedge.worth;

import java.util.List;

/**
 * What sellers' stated values say of families never seen. Within a lot, a family whose sets are said to be worth more brings more,
 * by a power and with an error that are learnt from the record; the sellers' own scale drops out.
 */
final class Asking implements java.io.Serializable {
    private static final double WORTH = 20;

    private final PriceModel sales;
    /** Log of the stated value for one of log price. */
    private final double power;
    /** Variance of a stated value within a lot, about that, by set and by family. */
    private final double setVariance;

    private final double familyVariance;
    private final boolean known;

    Asking(Records r, PriceModel sales) {
        this.sales = sales;
        int lots = r.history.lots();
        double[] n = new double[lots];
        double[] meanX = new double[lots];
        double[] meanY = new double[lots];
        for (int s = 0; s < r.fault.length; s++) {
            if (r.history.setAsking(s) > 0) {
                int l = r.lot(s);
                n[l]++;
                meanX[l] += (price(r, s) - meanX[l]) / n[l];
                meanY[l] += (Math.log((double) r.history.setAsking(s)) - meanY[l]) / n[l];
            }
        }
        double xy = WORTH * 0.05;
        double xx = WORTH * 0.05;
        double all = 0;
        for (int s = 0; s < r.fault.length; s++) {
            int l = r.lot(s);
            if (r.history.setAsking(s) > 0 && n[l] > 1) {
                double x = price(r, s) - meanX[l];
                xy += x * (Math.log((double) r.history.setAsking(s)) - meanY[l]);
                xx += x * x;
                all++;
            }
        }
        power = Math.max(0.2, xy / xx);
        known = all >= WORTH;
        int families = r.history.families().size();
        double[] count = new double[families];
        double[] sum = new double[families];
        double squares = 0.1 * WORTH;
        for (int s = 0; s < r.fault.length; s++) {
            int l = r.lot(s);
            if (r.history.setAsking(s) > 0 && n[l] > 1) {
                double e = Math.log((double) r.history.setAsking(s)) - meanY[l] - power * (price(r, s) - meanX[l]);
                count[r.family(s)]++;
                sum[r.family(s)] += e;
                squares += e * e;
            }
        }
        double between = 0;
        double used = 0;
        double own = 0;
        for (int f = 0; f < families; f++) {
            own += count[f] > 0 ? sum[f] * sum[f] / count[f] : 0;
        }
        setVariance = (squares - own * (all > 0 ? 1 : 0)) / (all + WORTH);
        for (int f = 0; f < families; f++) {
            if (count[f] > 0) {
                double m = sum[f] / count[f];
                between += Math.max(-setVariance, m * m - setVariance / count[f]);
                used++;
            }
        }
        familyVariance = Math.max(0.001, (between + 3 * 0.02) / (used + 3));
    }

    private double price(Records r, int set) {
        return sales.expected(r, set, r.asOf);
    }

    /** By stranger: the mean of its log price beyond what maker and size let expect, and the share of its variance left open. */
    double[][] strangers(List<Candidate> candidates, Kind[] kinds, int[] kindOf, int strangers) {
        double[] mean = new double[strangers];
        double[] open = new double[strangers];
        java.util.Arrays.fill(open, 1);
        if (!known || strangers == 0) {
            return new double[][] {mean, open};
        }
        double prior = sales.familyVariance() + sales.makerVariance() / 2;
        double pins = 0;
        double scale = 0;
        double[] n = new double[strangers];
        double[] sum = new double[strangers];
        for (int i = 0; i < kindOf.length; i++) {
            Kind kind = kinds[kindOf[i]];
            Candidate c = candidates.get(i);
            if (c.asking() == null || c.asking().signum() <= 0) {
                continue;
            }
            double e = Math.log(c.asking().doubleValue()) - power * sales.expected(kind);
            if (kind.stranger() < 0) {
                double w = 1 / (setVariance + familyVariance / 3);
                pins += w;
                scale += w * e;
            } else if (kind.mixture() < 0) {
                n[kind.stranger()]++;
                sum[kind.stranger()] += e;
            }
        }
        // A lot of strangers alone still tells them apart: each pins the scale as far as its own price is known.
        for (int g = 0; g < strangers; g++) {
            if (n[g] > 0) {
                double w = 1 / (setVariance / n[g] + familyVariance + power * power * prior);
                pins += w;
                scale += w * sum[g] / n[g];
            }
        }
        for (int g = 0; g < strangers; g++) {
            if (n[g] > 0) {
                double error = (setVariance / n[g] + familyVariance + 1 / pins) / (power * power);
                double weight = prior / (prior + error);
                mean[g] = weight * (sum[g] / n[g] - scale / pins) / power;
                open[g] = 1 - weight;
            }
        }
        return new double[][] {mean, open};
    }
}
