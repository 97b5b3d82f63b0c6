package org.salvedge.yield;

import java.util.ArrayList;
import java.util.Arrays;
import java.util.List;

/**
 * Whether a fix works more or less often than in the twelve months before on the same faults and families. What is expected of each
 * attempt comes from those months, families drawn to the fix on that fault and that to the fix; the months before tell how far a
 * lot and a month stray without a cause.
 */
final class FixSuspects {
    private static final double TO_FIX = 8;
    private static final double TO_FAULT = 20;
    private static final int FEWEST = 8;

    private final CauseData data;
    private final CauseData.Trials trials;
    private final Rates rates;
    private final LotScores[] scores;
    private final int[][] count;

    FixSuspects(CauseData data) {
        this.data = data;
        trials = data.trials;
        int fixes = data.history.fixes().size();
        int faults = data.faults;
        rates = new Rates(trials.size(), TO_FIX, TO_FAULT);
        for (int i = 0; i < trials.size(); i++) {
            long fix = trials.fix.getInt(i);
            long onFault = fix * faults + trials.fault.getInt(i);
            long inFamily = onFault * data.history.families().size() + trials.family.getInt(i);
            rates.add(trials.month.getInt(i) < CauseData.NOW, trials.passed.getInt(i), fix, onFault, inFamily);
        }
        scores = new LotScores[fixes];
        count = new int[fixes][CauseData.MONTHS];
        for (int f = 0; f < fixes; f++) {
            scores[f] = new LotScores();
        }
        for (int i = 0; i < trials.size(); i++) {
            int fix = trials.fix.getInt(i);
            int m = trials.month.getInt(i);
            double e = rates.expected(i);
            scores[fix].add(trials.lot.getInt(i), m, trials.passed.getInt(i) - e, e * (1 - e), 1);
            count[fix][m]++;
        }
        LotScores.settle(scores);
    }

    /** What each attempt was expected to do, by row of the trials. */
    Rates expected() {
        return rates;
    }

    /** @param sets of the month, that effects are shares of */
    List<Suspect> suspects(int sets) {
        List<Suspect> suspects = new ArrayList<>();
        double spread = spread();
        for (int f = 0; f < scores.length; f++) {
            int before = Arrays.stream(count[f], 0, CauseData.NOW).sum();
            int n = count[f][CauseData.NOW];
            if (n >= FEWEST && before >= n / 2) {
                LotScores.Shift shift = scores[f].shift(CauseData.NOW, lot -> true);
                double z = shift.z() / Math.sqrt(spread * (1 + (double) n / before));
                suspects.add(new Suspect(
                        Cause.Kind.FIX,
                        data.history.fixes().text(f),
                        shift.estimate() * n / sets,
                        z,
                        Suspect.FREEDOM,
                        1,
                        n));
            }
        }
        return suspects;
    }

    private double spread() {
        double squares = 0;
        int cells = 0;
        for (int f = 0; f < scores.length; f++) {
            for (int m = 0; m < CauseData.NOW; m++) {
                if (count[f][m] >= FEWEST) {
                    double z = scores[f].shift(m, lot -> true).z();
                    squares += z * z;
                    cells++;
                }
            }
        }
        return LotScores.spread(squares, cells);
    }
}
