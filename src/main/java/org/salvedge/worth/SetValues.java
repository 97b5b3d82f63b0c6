package org.salvedge.worth;

import java.util.Arrays;

/**
 * What a set of a family brings when it is saved, and when it is stripped: takings less fees, shipping, packing or stripping labour
 * and what comebacks cost. Means over the record in which a set counts half as much for every half year of its age; a family is
 * drawn towards its size class and that to the whole shop, each as far as its record is thin (credibility n / (n + k): Buhlmann,
 * ASTIN Bulletin 4 (1967) 199-207).
 */
final class SetValues {
    private static final double WORTH = 5;
    private static final double HALF_LIFE_DAYS = 182;
    private static final int CLASS_INCHES = 10;
    private static final int CLASSES = 20;

    private final double[] saved;
    private final double[] stripped;
    private final double usualSaved;
    private final double usualStripped;

    SetValues(Records r, double hourly) {
        Stays stays = r.stays;
        int families = r.history.families().size();
        Tally sales = new Tally(
                families,
                Assumed.PRICE_HOURS * hourly * (1 - Assumed.FEES)
                        - Assumed.SHIPPING_HOURS * hourly
                        - Assumed.PACKING_MINUTES * hourly / 60);
        Tally strips = new Tally(
                families, Assumed.PRICE_HOURS * hourly * Assumed.STRIP_SHARE - Assumed.STRIPPING_MINUTES * hourly / 60);
        int[] sizeOf = new int[families];
        for (int f = 0; f < families; f++) {
            double inches = Records.USUAL_INCHES * Math.exp(r.familyLogInches[f]);
            sizeOf[f] = Math.min(CLASSES - 1, (int) (inches / CLASS_INCHES));
        }
        for (int s = 0; s < r.fault.length; s++) {
            boolean isSale = stays.result[s] == Stays.SAVED && stays.sold(s);
            boolean isStrip = stays.result[s] == Stays.NOT_SAVED && !stays.sold(s);
            if (!isSale && !isStrip) {
                continue;
            }
            double packing = Float.isNaN(stays.packing[s])
                    ? isSale ? Assumed.PACKING_MINUTES : Assumed.STRIPPING_MINUTES
                    : stays.packing[s];
            double net = stays.gross[s] - stays.costs[s] - packing * hourly / 60;
            if (isSale && !stays.backHere[s]) {
                net += stays.afterwards[s];
            }
            double weight = Math.pow(0.5, (r.asOf - stays.exitDay[s]) / HALF_LIFE_DAYS);
            (isSale ? sales : strips).add(r.family(s), sizeOf[r.family(s)], net, weight);
        }
        saved = sales.means(sizeOf);
        stripped = strips.means(sizeOf);
        usualSaved = sales.usual();
        usualStripped = strips.usual();
    }

    /** @param family number in the history, -1 = not known there */
    double saved(int family) {
        return family < 0 ? usualSaved : saved[family];
    }

    double stripped(int family) {
        return family < 0 ? usualStripped : stripped[family];
    }

    /** Weighted sums by family and by size class. */
    private static final class Tally {
        private final double before;
        private final double[] sum;
        private final double[] weight;
        private final double[] sizeSum = new double[CLASSES];
        private final double[] sizeWeight = new double[CLASSES];

        Tally(int families, double before) {
            this.before = before;
            sum = new double[families];
            weight = new double[families];
        }

        void add(int family, int size, double net, double w) {
            sum[family] += w * net;
            weight[family] += w;
            sizeSum[size] += w * net;
            sizeWeight[size] += w;
        }

        double usual() {
            double s = Arrays.stream(sizeSum).sum();
            double w = Arrays.stream(sizeWeight).sum();
            return (s + WORTH * before) / (w + WORTH);
        }

        double[] means(int[] sizeOf) {
            double usual = usual();
            double[] means = new double[sum.length];
            for (int f = 0; f < means.length; f++) {
                int c = sizeOf[f];
                double parent = (sizeSum[c] + WORTH * usual) / (sizeWeight[c] + WORTH);
                means[f] = (sum[f] + WORTH * parent) / (weight[f] + WORTH);
            }
            return means;
        }
    }
}
