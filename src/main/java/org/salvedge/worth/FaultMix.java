package org.salvedge.worth;

import java.util.SplittableRandom;
import org.salvedge.stats.Gammas;

/**
 * Which fault a set with whole glass has, given what its seller claims and its family: shares by claim, shrunk to the usual mix,
 * times what is peculiar to the family. Suppliers' claims are true to a different degree: the claim's shares are tilted from the
 * usual mix by a power, 1 for a seller as true as the average.
 */
final class FaultMix implements java.io.Serializable {
    private static final double WORTH_OF_USUAL = 12;
    private static final double WORTH_OF_CLAIM = 8;

    final int faults;
    private final int broken;
    private final double[] usual;
    private final double[][] claimAlpha;
    private final double[][] claimShare;
    private final double[][] seen;
    private final double[][] expected;
    private final double worthOfRatio;

    FaultMix(Records r) {
        Codebook codes = r.codes;
        faults = codes.faults.size();
        broken = codes.broken;
        int claims = codes.claims.size();
        double[][] counts = new double[claims][faults];
        int families = r.history.families().size();
        double[][] familyClaims = new double[families][claims];
        seen = new double[families][faults];
        expected = new double[families][faults];
        for (int s = 0; s < r.fault.length; s++) {
            int k = r.fault[s];
            if (k >= 0 && k != broken) {
                counts[r.claim[s]][k]++;
                familyClaims[r.family(s)][r.claim[s]]++;
                seen[r.family(s)][k]++;
            }
        }
        usual = new double[faults];
        double all = 0;
        for (int k = 0; k < faults; k++) {
            if (k == broken) {
                continue;
            }
            usual[k] = WORTH_OF_USUAL
                    * (k == codes.unseen
                            ? 0.001
                            : Assumed.fault(codes.faults.get(k)).share());
            for (int c = 0; c < claims; c++) {
                usual[k] += counts[c][k];
            }
            all += usual[k];
        }
        for (int k = 0; k < faults; k++) {
            usual[k] /= all;
        }
        claimAlpha = new double[claims][faults];
        claimShare = new double[claims][faults];
        for (int c = 0; c < claims; c++) {
            double sum = 0;
            for (int k = 0; k < faults; k++) {
                double before = k == broken ? 0 : Assumed.share(codes.claims.get(c), codes.faults.get(k), usual[k]);
                claimAlpha[c][k] = k == broken ? 0 : WORTH_OF_CLAIM * before + counts[c][k];
                sum += claimAlpha[c][k];
            }
            for (int k = 0; k < faults; k++) {
                claimShare[c][k] = claimAlpha[c][k] / sum;
            }
        }
        worthOfRatio = familyRatios(familyClaims);
    }

    /** Expected counts of each family and how alike families are: 1 / variance of the ratio of seen to expected, by moments. */
    private double familyRatios(double[][] familyClaims) {
        double excess = 0;
        double squares = 0;
        for (int f = 0; f < seen.length; f++) {
            for (int c = 0; c < familyClaims[f].length; c++) {
                if (familyClaims[f][c] > 0) {
                    for (int k = 0; k < faults; k++) {
                        expected[f][k] += familyClaims[f][c] * claimShare[c][k];
                    }
                }
            }
            for (int k = 0; k < faults; k++) {
                double d = seen[f][k] - expected[f][k];
                excess += d * d - expected[f][k];
                squares += expected[f][k] * expected[f][k];
            }
        }
        double ratioVariance = squares < 1 ? 0.1 : (Math.max(0, excess) + 0.05 * 20) / (squares + 20);
        return 1 / Math.max(0.005, Math.min(0.5, ratioVariance));
    }

    /** What a claim says beyond the usual mix, log ratio; the direction of the tilt. */
    double direction(int claim, int k) {
        return k == broken || usual[k] <= 0 ? 0 : Math.log(claimShare[claim][k] / usual[k]);
    }

    /** Ratio of what the family has to what its claims let expect; 1 for none. */
    double ratio(int family, int k) {
        return family < 0 || k == broken ? 1 : (seen[family][k] + worthOfRatio) / (expected[family][k] + worthOfRatio);
    }

    /** Share of a fault, unscaled, without a family. */
    double share(int claim, int k) {
        return claimShare[claim][k];
    }

    /** Shares by claim. */
    double[][] shares() {
        double[][] copy = new double[claimShare.length][];
        for (int c = 0; c < copy.length; c++) {
            copy[c] = claimShare[c].clone();
        }
        return copy;
    }

    /** A family's ratios as estimated. */
    double[] ratios(int family) {
        double[] out = new double[faults];
        for (int k = 0; k < faults; k++) {
            out[k] = k == broken ? 0 : ratio(family, k);
        }
        return out;
    }

    /** Shares by claim drawn from their posterior. */
    double[][] drawShares(SplittableRandom random) {
        double[][] drawn = new double[claimAlpha.length][faults];
        for (int c = 0; c < drawn.length; c++) {
            double sum = 0;
            for (int k = 0; k < faults; k++) {
                drawn[c][k] = claimAlpha[c][k] > 0 ? Gammas.draw(claimAlpha[c][k], random) : 0;
                sum += drawn[c][k];
            }
            for (int k = 0; k < faults; k++) {
                drawn[c][k] /= sum;
            }
        }
        return drawn;
    }

    /** A family's ratios drawn from their posterior; those of a family never seen for -1. */
    double[] drawRatios(int family, SplittableRandom random) {
        double[] drawn = new double[faults];
        for (int k = 0; k < faults; k++) {
            double had = family < 0 ? 0 : seen[family][k];
            double due = family < 0 ? 0 : expected[family][k];
            drawn[k] = k == broken ? 0 : Gammas.draw(had + worthOfRatio, random) / (due + worthOfRatio);
        }
        return drawn;
    }

    double usual(int k) {
        return usual[k];
    }
}
