package org.salvedge.yield;

import java.util.ArrayList;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.stats.Moments;

/**
 * Whether other sets came to the bench: worse or better ones of one supplier, or of all.
 *
 * <p>A supplier's sets are held against its earlier ones with the same claims, by the faults found in them and by how often fixes work on
 * them. The same sums over all suppliers say whether the mix changed; and so do the claims and suppliers that were bought. A change of one
 * supplier shows in both, and so does one of all: the likelier of the two is taken as it is, the other beside it, as what is left without.
 */
final class SetSuspects {
    private static final int FEWEST = 12;
    private static final int FEWEST_MONTHS = 4;

    private final CauseData data;
    private final FaultWorth worth;
    /** By the faults found: what they promise beyond what claim and supplier did. */
    private final LotScores faults = new LotScores();
    /** By the fixes tried: passes beyond those expected. */
    private final LotScores tries = new LotScores();

    private final int[][] sets;
    private final int[] all = new int[CauseData.MONTHS];

    SetSuspects(CauseData data, FaultWorth worth, Rates fixes) {
        this.data = data;
        this.worth = worth;
        sets = new int[data.history.suppliers().size()][CauseData.MONTHS];
        CauseData.Found found = data.found;
        double squares = 0;
        for (int i = 0; i < found.size(); i++) {
            double away = worth.known[i] - worth.listed[i];
            squares += away * away;
        }
        double each = Math.max(1e-6, squares / Math.max(1, found.size()));
        for (int i = 0; i < found.size(); i++) {
            int lot = found.lot.getInt(i);
            int m = found.month.getInt(i);
            faults.add(lot, m, worth.known[i] - worth.listed[i], each, 1);
            sets[supplier(lot)][m]++;
            all[m]++;
        }
        CauseData.Trials trials = data.trials;
        for (int i = 0; i < trials.size(); i++) {
            double e = fixes.expected(i);
            tries.add(trials.lot.getInt(i), trials.month.getInt(i), trials.passed.getInt(i) - e, e * (1 - e), 1);
        }
        LotScores.settle(tries);
        LotScores.settle(faults);
    }

    private int supplier(int lot) {
        return data.history.lotSupplier(lot);
    }

    List<Suspect> suspects() {
        List<Suspect> suppliers = new ArrayList<>();
        List<Integer> who = new ArrayList<>();
        double spread = supplierSpread();
        for (int s = 0; s < sets.length; s++) {
            int before = 0;
            for (int m = 0; m < CauseData.NOW; m++) {
                before += sets[s][m];
            }
            int n = sets[s][CauseData.NOW];
            if (n >= FEWEST && before >= n / 2) {
                int supplier = s;
                LotScores.Shift found = faults.shift(CauseData.NOW, lot -> supplier(lot) == supplier);
                LotScores.Shift tried = tries.shift(CauseData.NOW, lot -> supplier(lot) == supplier);
                double learnt = 1 + (double) n / before;
                double both = (found.z() / Math.sqrt(spread) + tried.z()) / Math.sqrt(2 * learnt);
                double alone = found.z() / Math.sqrt(spread * learnt);
                suppliers.add(new Suspect(
                        Cause.Kind.SUPPLIER,
                        data.history.suppliers().text(s),
                        (found.estimate() * n + tried.estimate() * tried.size()) / all[CauseData.NOW],
                        Math.abs(both) > Math.abs(alone) ? both : alone,
                        Suspect.FREEDOM,
                        2,
                        n));
                who.add(s);
            }
        }
        Suspect mix = mix(-1);
        if (mix == null) {
            return suppliers;
        }
        int worst = -1;
        double far = Math.abs(faults.shift(CauseData.NOW, lot -> true).z());
        for (int i = 0; i < suppliers.size(); i++) {
            int supplier = who.get(i);
            double z = Math.abs(faults.shift(CauseData.NOW, lot -> supplier(lot) == supplier)
                    .z());
            if (z > far) {
                worst = i;
                far = z;
            }
        }
        List<Suspect> out = new ArrayList<>();
        if (worst >= 0) {
            Suspect rest = mix(who.get(worst));
            out.addAll(suppliers);
            out.add(rest == null ? mix.at(0) : rest.p() > mix.p() ? rest : mix);
        } else {
            for (int i = 0; i < suppliers.size(); i++) {
                out.add(suppliers.get(i).at(beside(suppliers.get(i).t(), who.get(i))));
            }
            out.add(mix);
        }
        return out;
    }

    private double supplierSpread() {
        double squares = 0;
        int cells = 0;
        for (int s = 0; s < sets.length; s++) {
            int supplier = s;
            for (int m = 0; m < CauseData.NOW; m++) {
                if (sets[s][m] >= FEWEST) {
                    double z = faults.shift(m, lot -> supplier(lot) == supplier).z();
                    squares += z * z;
                    cells++;
                }
            }
        }
        return LotScores.spread(squares, cells);
    }

    /** A supplier's distance from what the others did in the same month, where that is less. */
    private double beside(double own, int supplier) {
        LotScores.Shift its = faults.shift(CauseData.NOW, lot -> supplier(lot) == supplier);
        LotScores.Shift others = faults.shift(CauseData.NOW, lot -> supplier(lot) != supplier);
        double z = Double.isInfinite(others.error())
                ? 0
                : (its.estimate() - others.estimate()) / Math.hypot(its.error(), others.error());
        return z * own <= 0 ? 0 : Math.abs(z) < Math.abs(own) ? z : own;
    }

    /** @param without a supplier left out; -1 = none */
    private @Nullable Suspect mix(int without) {
        if (all[CauseData.NOW] < FEWEST) {
            return null;
        }
        double squares = 0;
        int months = 0;
        for (int m = 0; m < CauseData.NOW; m++) {
            if (all[m] >= FEWEST) {
                double z = faults.shift(m, lot -> supplier(lot) != without).z();
                squares += z * z;
                months++;
            }
        }
        LotScores.Shift shift = faults.shift(CauseData.NOW, lot -> supplier(lot) != without);
        if (months < FEWEST_MONTHS) {
            return null;
        }
        double t = shift.z() / Math.sqrt(LotScores.spread(squares, months) * (1 + 1.0 / months));
        Suspect asFound = new Suspect(Cause.Kind.MIX, "", shift.estimate(), t, Suspect.FREEDOM, 2, all[CauseData.NOW]);
        Suspect asListed = listed(without);
        return asListed != null && asListed.p() < asFound.p() ? asListed : asFound;
    }

    /** What was bought, by its claims and suppliers: each month's mean against the spread of the months before. */
    private @Nullable Suspect listed(int without) {
        double[] sum = new double[CauseData.MONTHS];
        int[] n = new int[CauseData.MONTHS];
        for (int i = 0; i < data.found.size(); i++) {
            if (supplier(data.found.lot.getInt(i)) != without) {
                sum[data.found.month.getInt(i)] += worth.listed[i];
                n[data.found.month.getInt(i)]++;
            }
        }
        double[] before = java.util.stream.IntStream.range(0, CauseData.NOW)
                .filter(m -> n[m] >= FEWEST)
                .mapToDouble(m -> sum[m] / n[m])
                .toArray();
        if (before.length < FEWEST_MONTHS || n[CauseData.NOW] < FEWEST) {
            return null;
        }
        Moments past = Moments.of(before);
        double away = sum[CauseData.NOW] / n[CauseData.NOW] - past.mean();
        double error = Math.sqrt(past.variance() * (1 + 1.0 / before.length));
        return new Suspect(
                Cause.Kind.MIX, "", away, error == 0 ? 0 : away / error, before.length - 1, 2, n[CauseData.NOW]);
    }
}
