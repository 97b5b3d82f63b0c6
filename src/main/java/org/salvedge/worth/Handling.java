package org.salvedge.worth;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.salvedge.shop.ExitKind;

/**
 * Minutes and parts by fault and by whether the set was saved, grades of the saved, and what becomes of the others: means shrunk
 * to those of the fault, and where there are none to what is assumed.
 */
final class Handling implements java.io.Serializable {
    private static final double WORTH = 5;
    private static final double FAMILY_WORTH = 10;

    /** Bench minutes by fault and saved (1) or not (0). */
    private final double[][] minutes;

    private final double[][] minutesVariance;
    private final double[][] parts;
    private final double[][] partsVariance;
    /** Standard error of the mean over the mean. */
    private final double[][] minutesError;

    private final double[][] partsError;
    private final double[] familyMinutes;
    private final double[] familyParts;
    private final double[][] grades;
    private final double[][][] routes;
    private final double[][] faultRoutes;
    /** Minutes of the exit, by kind. */
    private final double[] packing;

    Handling(Records r, double hourly) {
        int faults = r.codes.faults.size();
        int families = r.history.families().size();
        Stays stays = r.stays;
        double[][] n = new double[faults][2];
        double[][] sum = new double[faults][2];
        double[][] squares = new double[faults][2];
        double[][] spent = new double[faults][2];
        double[][] spentSquares = new double[faults][2];
        double[][] graded = new double[faults][PriceModel.NO_GRADE + 1];
        double[][][] ways = new double[families][faults][];
        faultRoutes = new double[faults][ExitKind.values().length];
        double[] exits = new double[ExitKind.values().length];
        double[] exitMinutes = new double[exits.length];
        for (int s = 0; s < r.fault.length; s++) {
            int k = r.fault[s];
            int kind = stays.exit[s];
            if (kind >= 0 && !Float.isNaN(stays.packing[s])) {
                exits[kind]++;
                exitMinutes[kind] += stays.packing[s];
            }
            boolean saved = stays.result[s] == Stays.SAVED;
            if (k < 0 || !saved && stays.result[s] != Stays.NOT_SAVED) {
                continue;
            }
            int o = saved ? 1 : 0;
            n[k][o]++;
            sum[k][o] += stays.bench[s];
            squares[k][o] += stays.bench[s] * stays.bench[s];
            spent[k][o] += stays.parts[s];
            spentSquares[k][o] += stays.parts[s] * stays.parts[s];
            if (saved) {
                graded[k][PriceModel.manner(r, s)]++;
            } else {
                int f = r.family(s);
                if (ways[f][k] == null) {
                    ways[f][k] = new double[exits.length];
                }
                ways[f][k][kind]++;
                faultRoutes[k][kind]++;
            }
        }
        minutes = new double[faults][2];
        minutesVariance = new double[faults][2];
        parts = new double[faults][2];
        partsVariance = new double[faults][2];
        minutesError = new double[faults][2];
        partsError = new double[faults][2];
        for (int k = 0; k < faults; k++) {
            Assumed.AtBench a = Assumed.fault(r.codes.faults.get(k));
            boolean unseen = k == r.codes.unseen;
            for (int o = 0; o < 2; o++) {
                double before = unseen ? 0 : a.minutes();
                minutes[k][o] = (sum[k][o] + WORTH * before) / (n[k][o] + WORTH);
                minutesVariance[k][o] = variance(n[k][o], sum[k][o], squares[k][o], 0.5 * before * before);
                double cost = unseen ? 0 : a.partsHours() * hourly * (o == 1 ? 1 : 0.5);
                parts[k][o] = (spent[k][o] + WORTH * cost) / (n[k][o] + WORTH);
                partsVariance[k][o] = variance(n[k][o], spent[k][o], spentSquares[k][o], 0.5 * cost * cost);
                minutesError[k][o] = error(minutes[k][o], minutesVariance[k][o], n[k][o]);
                partsError[k][o] = error(parts[k][o], partsVariance[k][o], n[k][o]);
            }
        }
        familyMinutes = new double[families];
        familyParts = new double[families];
        familyRatios(r);
        grades = grades(graded);
        routes = routes(ways);
        packing = new double[exits.length];
        double[] before = {Assumed.PACKING_MINUTES, Assumed.STRIPPING_MINUTES, Assumed.RECYCLING_MINUTES, 5, 0};
        for (int e = 0; e < packing.length; e++) {
            packing[e] = (exitMinutes[e] + WORTH * before[e]) / (exits[e] + WORTH);
        }
    }

    private static double variance(double n, double sum, double squares, double before) {
        double own = n > 1 ? Math.max(0, squares - sum * sum / n) : 0;
        return (own + WORTH * before) / (Math.max(0, n - 1) + WORTH);
    }

    private static double error(double mean, double variance, double n) {
        return mean <= 0 ? 0 : Math.min(0.5, Math.sqrt(variance / (n + WORTH)) / mean);
    }

    /** Factors on the mean minutes (0) and parts (1), by fault and saved, drawn from what is known of them. */
    double[][][] draw(SplittableRandom random) {
        double[][][] factor = new double[2][minutes.length][2];
        for (int k = 0; k < minutes.length; k++) {
            for (int o = 0; o < 2; o++) {
                factor[0][k][o] = Math.max(0, 1 + minutesError[k][o] * random.nextGaussian());
                factor[1][k][o] = Math.max(0, 1 + partsError[k][o] * random.nextGaussian());
            }
        }
        return factor;
    }

    /** Factors of 1. */
    double[][][] asEstimated() {
        double[][][] factor = new double[2][minutes.length][2];
        for (double[][] of : factor) {
            for (double[] row : of) {
                Arrays.fill(row, 1);
            }
        }
        return factor;
    }

    private void familyRatios(Records r) {
        double[] due = new double[familyMinutes.length];
        double[] dueParts = new double[familyMinutes.length];
        double[] usual = {0, 0};
        for (int s = 0; s < r.fault.length; s++) {
            boolean saved = r.stays.result[s] == Stays.SAVED;
            if (r.fault[s] >= 0 && (saved || r.stays.result[s] == Stays.NOT_SAVED)) {
                int f = r.family(s);
                familyMinutes[f] += r.stays.bench[s];
                due[f] += minutes[r.fault[s]][saved ? 1 : 0];
                familyParts[f] += r.stays.parts[s];
                dueParts[f] += parts[r.fault[s]][saved ? 1 : 0];
                usual[0] += minutes[r.fault[s]][saved ? 1 : 0];
                usual[1]++;
            }
        }
        double typical = usual[1] == 0 ? 40 : usual[0] / usual[1];
        double typicalParts = typical / 4;
        for (int f = 0; f < due.length; f++) {
            familyMinutes[f] = (familyMinutes[f] + FAMILY_WORTH * typical) / (due[f] + FAMILY_WORTH * typical);
            familyParts[f] =
                    (familyParts[f] + FAMILY_WORTH * typicalParts) / (dueParts[f] + FAMILY_WORTH * typicalParts);
        }
    }

    private static double[][] grades(double[][] graded) {
        int g = PriceModel.NO_GRADE + 1;
        double[] usual = {0.5, 0.3, 0.2, 0.01};
        double all = 1.01;
        for (double[] of : graded) {
            for (int i = 0; i < g; i++) {
                usual[i] += of[i];
                all += of[i];
            }
        }
        double[][] shares = new double[graded.length][g];
        for (int k = 0; k < shares.length; k++) {
            double n = WORTH;
            for (int i = 0; i < g; i++) {
                n += graded[k][i];
            }
            for (int i = 0; i < g; i++) {
                shares[k][i] = (graded[k][i] + WORTH * usual[i] / all) / n;
            }
        }
        return shares;
    }

    private double[][][] routes(double[][][] ways) {
        int kinds = ExitKind.values().length;
        double[] all = {0.3, 2, 0.7, 0, 0};
        for (double[] of : faultRoutes) {
            for (int e = 0; e < 3; e++) {
                all[e] += of[e];
            }
        }
        for (int k = 0; k < faultRoutes.length; k++) {
            double[] of = faultRoutes[k];
            double n = of[0] + of[1] + of[2];
            double total = all[0] + all[1] + all[2];
            for (int e = 0; e < kinds; e++) {
                of[e] = e > 2 ? 0 : (of[e] + WORTH * all[e] / total) / (n + WORTH);
            }
        }
        double[][][] shares = new double[ways.length][faultRoutes.length][];
        for (int f = 0; f < ways.length; f++) {
            for (int k = 0; k < faultRoutes.length; k++) {
                double[] own = ways[f][k];
                if (own == null) {
                    shares[f][k] = faultRoutes[k];
                    continue;
                }
                double n = own[0] + own[1] + own[2];
                shares[f][k] = new double[kinds];
                for (int e = 0; e < 3; e++) {
                    shares[f][k][e] = (own[e] + WORTH * faultRoutes[k][e]) / (n + WORTH);
                }
            }
        }
        return shares;
    }

    double minutes(int k, int family, boolean saved) {
        return minutes[k][saved ? 1 : 0] * (family < 0 ? 1 : familyMinutes[family]);
    }

    double minutesVariance(int k, boolean saved) {
        return minutesVariance[k][saved ? 1 : 0];
    }

    double parts(int k, int family, boolean saved) {
        return parts[k][saved ? 1 : 0] * (family < 0 ? 1 : familyParts[family]);
    }

    double partsVariance(int k, boolean saved) {
        return partsVariance[k][saved ? 1 : 0];
    }

    /** Share of a grade among the saved with this fault. */
    double grade(int k, int grade) {
        return grades[k][grade];
    }

    /** Share of an exit kind among those not saved. */
    double route(int k, int family, ExitKind kind) {
        return family < 0 ? faultRoutes[k][kind.ordinal()] : routes[family][k][kind.ordinal()];
    }

    double packing(ExitKind kind) {
        return packing[kind.ordinal()];
    }
}
