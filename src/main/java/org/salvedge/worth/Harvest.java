package org.salvedge.worth;

import java.util.ArrayList;
import java.util.HashSet;
import java.util.List;
import java.util.Set;
import java.util.SplittableRandom;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Part;
import org.salvedge.shop.PartKind;
import org.salvedge.shop.PartTest;
import org.salvedge.stats.Gammas;

/**
 * Boards out of sets with broken glass for sets that need one, as far as the shop's record shows that it does so: what fits what,
 * what a board saves, what is in stock and not needed by the sets on the bench, and how often a pairing that could have been was.
 */
final class Harvest implements java.io.Serializable {
    private static final int KINDS = PartPrices.KINDS.size();
    private static final double LIKELY = 0.5;

    private final PartPrices prices;
    private final double labour;
    /** Of the saved sets with a fault, the share that took a board of each kind; by fault and kind. */
    private final double[][] needs;

    final PartFits fits;
    /** Boards in stock and in open donors that no set on the bench needs, and sets on the bench left without one; by group. */
    private final double[] stock;

    private final double[] unmet;
    private final double[] unmetGain;
    private double made;
    private double notMade;

    Harvest(Records r, PartPrices prices, List<Part> parts, double hourly) {
        this.prices = prices;
        labour = prices.minutes * hourly / 60;
        needs = new double[r.codes.faults.size()][KINDS];
        fits = new PartFits(r, prices.used ? parts : List.of());
        int groups = fits.count();
        stock = new double[groups];
        unmet = new double[groups];
        unmetGain = new double[groups];
        if (!prices.used) {
            return;
        }
        needs(r);
        atHand(r, parts);
        PastPairings past = new PastPairings(r, this, parts);
        made = 1 + past.made;
        notMade = 1 + past.could - past.made;
    }

    /** Whether there is anything to count. */
    boolean active() {
        return prices.used;
    }

    /** Kind of the board that a set took; -1 = none. */
    static int kind(Records r, int s) {
        int fix = r.stays.fix[s];
        PartKind needed =
                fix < 0 ? null : PartKind.neededBy(new Fix(r.history.fixes().text(fix)));
        return needed == null || r.stays.parts[s] <= 0 ? -1 : PartPrices.KINDS.indexOf(needed);
    }

    private void needs(Records r) {
        double[] saved = new double[needs.length];
        for (int s = 0; s < r.fault.length; s++) {
            if (r.stays.result[s] == Stays.SAVED && r.fault[s] >= 0) {
                saved[r.fault[s]]++;
                int kind = kind(r, s);
                if (kind >= 0) {
                    needs[r.fault[s]][kind]++;
                }
            }
        }
        for (int k = 0; k < needs.length; k++) {
            for (int kind = 0; kind < KINDS; kind++) {
                needs[k][kind] = saved[k] == 0 ? 0 : needs[k][kind] / saved[k];
            }
        }
    }

    /** Pairs the sets on the bench with what is there, and keeps what is left on either side. */
    private void atHand(Records r, List<Part> parts) {
        List<List<Donors.Patient>> patients = new ArrayList<>();
        List<List<Donors.Supply>> supplies = new ArrayList<>();
        for (int g = 0; g < stock.length; g++) {
            patients.add(new ArrayList<>());
            supplies.add(new ArrayList<>());
        }
        Set<List<Object>> taken = new HashSet<>();
        for (Part p : parts) {
            taken.add(List.of(String.valueOf(p.fromUnit()), p.kind()));
            int g = fits.of(r, p);
            if (g >= 0 && inStock(p)) {
                supplies.get(g).add(new Donors.Supply(p.part(), "", p.kind(), null, 0));
            }
        }
        for (int s = 0; s < r.fault.length; s++) {
            if (r.stays.result[s] != Stays.OPEN || r.fault[s] < 0) {
                continue;
            }
            String label = r.history.label(s);
            for (int kind = 0; kind < KINDS; kind++) {
                int g = fits.usual(kind, r.family(s));
                PartKind what = PartPrices.KINDS.get(kind);
                double gain = gain(kind, r.family(s));
                if (r.fault[s] == r.codes.broken && !taken.contains(List.of(label, what))) {
                    supplies.get(g).add(new Donors.Supply(label, "", what, null, 0));
                } else if (needs[r.fault[s]][kind] >= LIKELY && gain > 0) {
                    patients.get(g).add(new Donors.Patient(label, "", what, List.of(), gain));
                }
            }
        }
        for (int g = 0; g < stock.length; g++) {
            List<Donors.Pair> pairs = Donors.pairs(patients.get(g), supplies.get(g));
            stock[g] = supplies.get(g).size() - pairs.size();
            unmet[g] = patients.get(g).size() - pairs.size();
            double all =
                    patients.get(g).stream().mapToDouble(Donors.Patient::saves).sum();
            double met = pairs.stream().mapToDouble(Donors.Pair::gain).sum();
            unmetGain[g] = unmet[g] == 0 ? 0 : (all - met) / unmet[g];
        }
    }

    private static boolean inStock(Part p) {
        return p.attempt() == null && p.goneOn() == null && p.tested() != PartTest.BAD;
    }

    /** What a board out of a donor brings to the books of a set of a family: price saved less taking it out; below 0 or NaN: nothing. */
    double gain(int kind, int family) {
        return prices.saves(kind, family) - labour;
    }

    /** Chance that a saved set with a fault needs a board of a kind. */
    double needs(int fault, int kind) {
        return needs[fault][kind];
    }

    double stock(int group) {
        return stock[group];
    }

    double unmet(int group) {
        return unmet[group];
    }

    double unmetGain(int group) {
        return unmetGain[group];
    }

    /** Share of the pairings that could be that are made, drawn from what the record says of it. */
    double drawTakeUp(SplittableRandom random) {
        return Gammas.beta(made, notMade, random);
    }

    double takeUp() {
        return made / (made + notMade);
    }
}
