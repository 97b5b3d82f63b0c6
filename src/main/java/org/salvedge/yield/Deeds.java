package org.salvedge.yield;

import it.unimi.dsi.fastutil.doubles.DoubleArrayList;
import it.unimi.dsi.fastutil.ints.IntArrayList;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.BitSet;
import java.util.Comparator;
import java.util.List;
import java.util.function.IntPredicate;
import org.salvedge.shop.Fix;
import org.salvedge.shop.History;
import org.salvedge.shop.Timeline.Result;

/**
 * What is worth doing, best first. Each deed is counted on sets of the last three months; a set that an earlier deed counts is counted by
 * no later one, so that their worths may be added.
 */
final class Deeds {
    private static final int MOST = 5;
    private static final int MONTHS = 3;
    /** Deeds of which the gain is this likely at least: 0.84 standard errors above 0 is four in five. */
    private static final double SURE = 0.84;

    private static final double HALF_WIDTH = 1.959964;

    private final Outcomes o;
    private final History h;
    private final int from;
    private final int to;
    private final int noFix;

    /** A deed, the sets it is counted on, and what it is worth for each of them. */
    private record Draft(Deed.Kind kind, String what, String where, String instead, IntArrayList sets, Range each) {
        Deed over(int count) {
            return new Deed(kind, what, where, instead, each.times(count / (double) MONTHS), count / (double) MONTHS);
        }

        double worth() {
            return each.value() * sets.size();
        }
    }

    private Deeds(Outcomes outcomes, YearMonth month) {
        o = outcomes;
        h = outcomes.history();
        from = (int) month.minusMonths(MONTHS - 1L).atDay(1).toEpochDay();
        to = (int) month.atEndOfMonth().toEpochDay();
        noFix = h.fixes().find(Fix.NONE.code());
    }

    static List<Deed> of(
            Outcomes outcomes,
            YearMonth month,
            SetValues values,
            List<Cause> causes,
            List<FixLine> fixes,
            List<Preference> preferences,
            List<SupplierLine> suppliers,
            List<KeptCurve> kept) {
        Deeds deeds = new Deeds(outcomes, month);
        List<Draft> drafts = new ArrayList<>();
        preferences.forEach(p -> deeds.prefer(p, drafts));
        deeds.giveUp(fixes, drafts);
        causes.forEach(c -> deeds.mend(c, values, drafts));
        suppliers.forEach(s -> deeds.payLess(s, drafts));
        deeds.leave(drafts);
        deeds.testLonger(kept, drafts);
        return deeds.choose(drafts);
    }

    private List<Deed> choose(List<Draft> drafts) {
        drafts.removeIf(
                d -> d.sets.isEmpty() || !(d.each.value() - SURE * (d.each.high() - d.each.value()) / HALF_WIDTH > 0));
        drafts.sort(Comparator.comparingDouble(Draft::worth)
                .reversed()
                .thenComparing(Draft::kind)
                .thenComparing(Draft::what)
                .thenComparing(Draft::where));
        BitSet counted = new BitSet();
        List<Deed> deeds = new ArrayList<>();
        List<Draft> left = new ArrayList<>(drafts);
        while (deeds.size() < MOST && !left.isEmpty()) {
            Draft best = left.remove(0);
            deeds.add(best.over(best.sets.size()));
            best.sets.forEach(counted::set);
            left.forEach(d -> d.sets.removeIf(counted::get));
            left.removeIf(d -> d.sets.isEmpty());
            left.sort(Comparator.comparingDouble(Draft::worth).reversed());
        }
        return List.copyOf(deeds);
    }

    private void prefer(Preference p, List<Draft> drafts) {
        if (p.family().isEmpty()) {
            drafts.add(new Draft(
                    Deed.Kind.PREFER, p.fix(), p.fault(), p.over(), firstTried(p.fault(), p.over()), p.gain()));
        }
    }

    /** Sets of the last months whose first fix at a fault was this one. */
    private IntArrayList firstTried(String fault, String fix) {
        int ofFault = h.faults().find(fault);
        int withFix = h.fixes().find(fix);
        return sets(set -> {
            int first = -1;
            for (int a = h.attemptStart(set); a < h.attemptStart(set + 1); a++) {
                if (h.attemptFault(a) == ofFault
                        && h.attemptFix(a) != noFix
                        && (first < 0 || AttemptOrder.before(h, a, first))) {
                    first = a;
                }
            }
            return first >= 0 && h.attemptFix(first) == withFix && recent(h.attemptDay(first));
        });
    }

    private boolean recent(int day) {
        return day >= from && day <= to;
    }

    private IntArrayList sets(IntPredicate which) {
        IntArrayList sets = new IntArrayList();
        for (int set = 0; set < h.sets(); set++) {
            if (h.arrived(set) && which.test(set)) {
                sets.add(set);
            }
        }
        return sets;
    }

    /** Faults of which even the best fix loses money: all fixes tried first lose theirs. */
    private void giveUp(List<FixLine> fixes, List<Draft> drafts) {
        for (FixLine line : fixes) {
            boolean best = fixes.stream()
                    .filter(f -> f.fault().equals(line.fault()) && f.increment().known())
                    .noneMatch(f -> f.increment().value() > 0);
            if (best && line.increment().known() && line.first() >= Preference.FEWEST) {
                drafts.add(new Draft(
                        Deed.Kind.GIVE_UP,
                        line.fix(),
                        line.fault(),
                        "",
                        firstTried(line.fault(), line.fix()),
                        line.increment().times(-1)));
            }
        }
    }

    private void mend(Cause cause, SetValues values, List<Draft> drafts) {
        if (cause.kind() != Cause.Kind.FIX || !cause.standsOut() || cause.up()) {
            return;
        }
        int fix = h.fixes().find(cause.what());
        double gain = 0;
        int tried = 0;
        IntArrayList sets = new IntArrayList();
        for (int set = 0; set < h.sets(); set++) {
            boolean met = false;
            for (int a = h.attemptStart(set); a < h.attemptStart(set + 1); a++) {
                met |= h.attemptFix(a) == fix
                        && recent(h.attemptDay(a))
                        && (o.result(a) == Result.PASS || o.result(a) == Result.FAIL);
            }
            if (met) {
                gain += values.gain(h.setFamily(set)) / unit();
                tried++;
                sets.add(set);
            }
        }
        if (tried > 0) {
            double lost = -cause.effect() * cause.sets();
            double perSet = lost / Math.max(1, cause.tried()) * gain / tried;
            double error = cause.error() / Math.abs(cause.effect()) * Math.abs(perSet);
            drafts.add(new Draft(Deed.Kind.MEND, cause.what(), "", "", sets, Range.normal(perSet, error)));
        }
    }

    private double unit() {
        return Math.pow(10, Math.max(0, h.currency().getDefaultFractionDigits()));
    }

    private void payLess(SupplierLine line, List<Draft> drafts) {
        if (!line.adjust().known()) {
            return;
        }
        int supplier = h.suppliers().find(line.supplier());
        IntArrayList sets = sets(set -> h.lotSupplier(h.setLot(set)) == supplier && recent(h.lotBought(h.setLot(set))));
        double cost = 0;
        for (int set : sets) {
            cost += o.landed(set) / unit();
        }
        if (!sets.isEmpty()) {
            drafts.add(new Draft(
                    Deed.Kind.PAY_LESS,
                    line.supplier(),
                    "",
                    "",
                    sets,
                    line.adjust().times(-cost / sets.size())));
        }
    }

    /** Families that lose money on the whole. */
    private void leave(List<Draft> drafts) {
        int families = h.families().size();
        IntArrayList[] sets = new IntArrayList[families];
        DoubleArrayList[] margins = new DoubleArrayList[families];
        for (int set = 0; set < h.sets(); set++) {
            if (h.arrived(set) && o.gone(set) && recent(h.exitDay(o.exit(set)))) {
                int f = h.setFamily(set);
                if (sets[f] == null) {
                    sets[f] = new IntArrayList();
                    margins[f] = new DoubleArrayList();
                }
                sets[f].add(set);
                margins[f].add(-o.margin(set) / unit());
            }
        }
        for (int f = 0; f < families; f++) {
            if (sets[f] != null && sets[f].size() >= Preference.FEWEST) {
                int[] lots = sets[f].intStream().map(h::setLot).toArray();
                drafts.add(new Draft(
                        Deed.Kind.LEAVE,
                        h.families().text(f),
                        "",
                        "",
                        sets[f],
                        LotMeans.mean(margins[f].toDoubleArray(), lots)));
            }
        }
    }

    private void testLonger(List<KeptCurve> kept, List<Draft> drafts) {
        if (kept.isEmpty()) {
            return;
        }
        double usual = kept.get(0).costPerSale();
        for (KeptCurve curve : kept.subList(1, kept.size())) {
            double more = curve.costPerSale() - usual;
            if (more > 0 && curve.chance() < 0.2) {
                int fix = h.fixes().find(curve.fix());
                IntArrayList sets = sets(set -> o.gone(set)
                        && recent(h.exitDay(o.exit(set)))
                        && Sale.isSale(h, o.exit(set))
                        && ComebackLine.latestFix(h, set, h.exitDay(o.exit(set))) == fix);
                double error = curve.costPerSale() / Math.sqrt(Math.max(1, curve.comebacks()));
                drafts.add(new Draft(Deed.Kind.TEST_LONGER, curve.fix(), "", "", sets, Range.normal(more, error)));
            }
        }
    }
}
