package org.salvedge.yield;

import it.unimi.dsi.fastutil.ints.IntArrayList;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Fault;
import org.salvedge.shop.History;
import org.salvedge.shop.Money;
import org.salvedge.shop.Text;
import org.salvedge.stats.ShrunkMeans;
import org.salvedge.stats.ShrunkYield;

/** Counts the suppliers' lines. */
final class SupplierBook {
    private static final int MONTHS = 24;
    private static final double LEVEL = 0.95;
    private static final int FEWEST_LOTS = 2;

    private final Outcomes o;
    private final History h;
    private final int from;
    private final Scope scope;
    private final int suppliers;
    /** lots, listed, missing, month, saved in the month, finished lots. */
    private final int[][] n;

    private final Shares truth = new Shares();
    private final Shares glass = new Shares();
    private final long[] recovered;
    private final int[] here;

    /** A success or failure a row, by supplier and lot. */
    private static final class Shares {
        final IntArrayList supplier = new IntArrayList();
        final IntArrayList lot = new IntArrayList();
        final IntArrayList good = new IntArrayList();

        void add(int ofSupplier, int ofLot, boolean isGood) {
            supplier.add(ofSupplier);
            lot.add(ofLot);
            good.add(isGood ? 1 : 0);
        }

        int count(int ofSupplier) {
            return (int) supplier.intStream().filter(s -> s == ofSupplier).count();
        }

        ShrunkYield fit(int suppliers) {
            int[] ones = new int[supplier.size()];
            java.util.Arrays.fill(ones, 1);
            return ShrunkYield.fit(
                    suppliers, supplier.toIntArray(), lot.toIntArray(), good.toIntArray(), ones, new int[0][], LEVEL);
        }
    }

    private SupplierBook(Outcomes o, YearMonth month) {
        this.o = o;
        h = o.history();
        from = (int) month.minusMonths(MONTHS - 1L).atDay(1).toEpochDay();
        scope = Scope.of(o, month);
        suppliers = h.suppliers().size();
        n = new int[6][suppliers];
        recovered = new long[h.lots()];
        here = new int[h.lots()];
    }

    /** Suppliers with a lot in the 24 months, by name. */
    static List<SupplierLine> of(Outcomes outcomes, YearMonth month) {
        SupplierBook book = new SupplierBook(outcomes, month);
        book.count();
        return book.lines();
    }

    private boolean recent(int lot) {
        return h.lotBought(lot) >= from;
    }

    private void count() {
        int cracked = h.claims().find(Claim.CRACKED.code());
        int broken = h.faults().find(Fault.PANEL_BROKEN.code());
        int unknown = h.faults().find(Fault.UNKNOWN.code());
        for (int lot = 0; lot < h.lots(); lot++) {
            n[0][h.lotSupplier(lot)] += recent(lot) ? 1 : 0;
        }
        for (int set = 0; set < h.sets(); set++) {
            int lot = h.setLot(set);
            if (!recent(lot)) {
                continue;
            }
            int s = h.lotSupplier(lot);
            recovered[lot] += o.net(set);
            n[1][s] += h.onManifest(set) ? 1 : 0;
            n[2][s] += h.onManifest(set) && !h.arrived(set) ? 1 : 0;
            if (!h.arrived(set)) {
                continue;
            }
            here[lot] += o.gone(set) ? 0 : 1;
            if (o.decided(set) && scope.holds(set)) {
                n[3][s]++;
                n[4][s] += o.saved(set) ? 1 : 0;
            }
            int fault = found(set, unknown);
            if (fault < 0) {
                continue;
            }
            String claim = h.claims().text(h.setClaimed(set));
            if (ClaimTruth.says(claim)) {
                truth.add(s, lot, ClaimTruth.holds(claim, h.faults().text(fault)));
            }
            if (h.setClaimed(set) != cracked) {
                glass.add(s, lot, fault == broken);
            }
        }
    }

    /** The fault of the first attempt that found one; -1 without. */
    private int found(int set, int unknown) {
        int first = -1;
        for (int a = h.attemptStart(set); a < h.attemptStart(set + 1); a++) {
            if (h.attemptFault(a) != unknown && (first < 0 || AttemptOrder.before(h, a, first))) {
                first = a;
            }
        }
        return first < 0 ? -1 : h.attemptFault(first);
    }

    private List<SupplierLine> lines() {
        Range[] adjust = adjust();
        long[][] money = new long[2][suppliers];
        for (int lot = 0; lot < h.lots(); lot++) {
            if (finished(lot)) {
                n[5][h.lotSupplier(lot)]++;
                money[0][h.lotSupplier(lot)] += h.lotCost(lot);
                money[1][h.lotSupplier(lot)] += recovered[lot] - o.labourOfLot(lot);
            }
        }
        ShrunkYield truths = truth.fit(suppliers);
        ShrunkYield broken = glass.fit(suppliers);
        List<SupplierLine> lines = new ArrayList<>();
        for (int s = 0; s < suppliers; s++) {
            if (n[0][s] > 0) {
                int checked = truth.count(s);
                int looked = glass.count(s);
                lines.add(new SupplierLine(
                        h.suppliers().text(s),
                        n[0][s],
                        n[1][s],
                        n[2][s],
                        checked,
                        checked == 0 ? Range.UNDEFINED : range(truths, s),
                        looked,
                        looked == 0 ? Range.UNDEFINED : range(broken, s),
                        n[5][s],
                        new Money(money[0][s], h.currency()),
                        new Money(money[1][s], h.currency()),
                        adjust[s],
                        n[3][s],
                        n[4][s]));
            }
        }
        lines.sort(Comparator.comparing(SupplierLine::supplier, Text.CODE_POINTS));
        return List.copyOf(lines);
    }

    private static Range range(ShrunkYield shrunk, int s) {
        return new Range(shrunk.mean(s), shrunk.low(s), shrunk.high(s));
    }

    private boolean finished(int lot) {
        return recent(lot) && here[lot] == 0 && h.lotCost(lot) > 0;
    }

    /** Each lot's recovery over its cost, against that of all lots together; suppliers' means drawn to their common mean. */
    private Range[] adjust() {
        Range[] out = new Range[suppliers];
        java.util.Arrays.fill(out, Range.UNDEFINED);
        double spent = 0;
        double back = 0;
        double[] sum = new double[suppliers];
        int[] lots = new int[suppliers];
        for (int lot = 0; lot < h.lots(); lot++) {
            if (finished(lot)) {
                spent += h.lotCost(lot);
                back += recovered[lot] - o.labourOfLot(lot);
                lots[h.lotSupplier(lot)]++;
                sum[h.lotSupplier(lot)] += ratio(lot);
            }
        }
        double all = spent == 0 ? 0 : back / spent;
        int[] known = java.util.stream.IntStream.range(0, suppliers)
                .filter(s -> lots[s] >= FEWEST_LOTS)
                .toArray();
        if (all <= 0 || known.length < 2) {
            return out;
        }
        double squares = 0;
        int freedom = 0;
        for (int lot = 0; lot < h.lots(); lot++) {
            int s = h.lotSupplier(lot);
            if (finished(lot) && lots[s] >= FEWEST_LOTS) {
                double away = ratio(lot) - sum[s] / lots[s];
                squares += away * away;
                freedom++;
            }
        }
        double within = squares / Math.max(1, freedom - known.length);
        if (!(within > 0)) {
            return out;
        }
        double[] means = new double[known.length];
        double[] errors = new double[known.length];
        for (int i = 0; i < known.length; i++) {
            means[i] = sum[known[i]] / lots[known[i]] / all - 1;
            errors[i] = within / lots[known[i]] / (all * all);
        }
        ShrunkMeans shrunk = ShrunkMeans.of(means, errors);
        for (int i = 0; i < known.length; i++) {
            out[known[i]] = Range.of(shrunk.mean(i), shrunk.interval(i, LEVEL));
        }
        return out;
    }

    private double ratio(int lot) {
        return (recovered[lot] - o.labourOfLot(lot)) / (double) h.lotCost(lot);
    }
}
