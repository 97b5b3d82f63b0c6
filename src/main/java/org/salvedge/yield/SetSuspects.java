package org.salvedge.yield;

import java.util.ArrayList;
import java.util.List;
import java.util.function.IntPredicate;
import java.util.stream.IntStream;
import org.jspecify.annotations.Nullable;
import org.salvedge.stats.Moments;

/**
 * Whether other sets came to the bench: worse or better ones of one supplier, or of all.
 *
 * <p>A supplier's sets are held against its earlier ones with the same claims, by the faults found in them and by how often the claims
 * came true. The sum of the former over all suppliers says whether the mix changed; and so do the claims and suppliers that were bought. A
 * change of one supplier shows in both, and so does one of all. Before anything is seen, all suppliers together are as likely as the mix, so
 * that each has its share of that only; the likelier after is taken as it is, the other beside it, as what is left without.
 */
final class SetSuspects {
    private static final int FEWEST = 12;
    private static final int FEWEST_MONTHS = 4;

    private final CauseData data;
    private final FaultWorth worth;
    /** By the faults found: what they promise beyond what claim and supplier did. */
    private final LotScores faults = new LotScores();
    /** By the fixes tried: passes beyond those expected. Part of what a supplier did, no test of it. */
    private final LotScores tries = new LotScores();

    private final LotScores claims;

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
        claims = ClaimScores.of(data);
    }

    private int supplier(int lot) {
        return data.history.lotSupplier(lot);
    }

    List<Suspect> suspects() {
        List<Suspect> suppliers = new ArrayList<>();
        List<Integer> who = new ArrayList<>();
        double spread = supplierSpread(this::ofFaults);
        double spreadOfBoth = supplierSpread(this::ofBoth);
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
                double both =
                        ofBoth(CauseData.NOW, lot -> supplier(lot) == supplier) / Math.sqrt(spreadOfBoth * learnt);
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
        double far = square(this::ofBoth, lot -> true, monthSpread(this::ofBoth, -1)) + 2 * Math.log(suppliers.size());
        for (int i = 0; i < suppliers.size(); i++) {
            int supplier = who.get(i);
            double square = square(this::ofBoth, lot -> supplier(lot) == supplier, spreadOfBoth);
            if (square > far) {
                worst = i;
                far = square;
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

    /** Distance of some lots in a month from what was expected, in standard errors. */
    private interface Distance {
        double z(int month, IntPredicate lots);
    }

    private double ofFaults(int month, IntPredicate lots) {
        return faults.shift(month, lots).z();
    }

    /** Faults and claims together (Stouffer's sum). */
    private double ofBoth(int month, IntPredicate lots) {
        return (faults.shift(month, lots).z() + claims.shift(month, lots).z()) / Math.sqrt(2);
    }

    private static double square(Distance distance, IntPredicate lots, double spread) {
        double z = distance.z(CauseData.NOW, lots);
        return z * z / spread;
    }

    private double supplierSpread(Distance distance) {
        double squares = 0;
        int cells = 0;
        for (int s = 0; s < sets.length; s++) {
            int supplier = s;
            for (int m = 0; m < CauseData.NOW; m++) {
                if (sets[s][m] >= FEWEST) {
                    double z = distance.z(m, lot -> supplier(lot) == supplier);
                    squares += z * z;
                    cells++;
                }
            }
        }
        return LotScores.spread(squares, cells);
    }

    private double monthSpread(Distance distance, int without) {
        double squares = 0;
        for (int m = 0; m < CauseData.NOW; m++) {
            if (all[m] >= FEWEST) {
                double z = distance.z(m, lot -> supplier(lot) != without);
                squares += z * z;
            }
        }
        return LotScores.spread(squares, months());
    }

    private int months() {
        return (int)
                IntStream.range(0, CauseData.NOW).filter(m -> all[m] >= FEWEST).count();
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
        int months = months();
        if (months < FEWEST_MONTHS) {
            return null;
        }
        LotScores.Shift shift = faults.shift(CauseData.NOW, lot -> supplier(lot) != without);
        double t = shift.z() / Math.sqrt(monthSpread(this::ofFaults, without) * (1 + 1.0 / months));
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
        double[] before = IntStream.range(0, CauseData.NOW)
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
