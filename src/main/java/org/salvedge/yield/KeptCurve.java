package org.salvedge.yield;

import it.unimi.dsi.fastutil.booleans.BooleanArrayList;
import it.unimi.dsi.fastutil.doubles.DoubleArrayList;
import it.unimi.dsi.fastutil.ints.IntArrayList;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import java.util.TreeMap;
import org.salvedge.shop.History;
import org.salvedge.shop.Text;
import org.salvedge.stats.KaplanMeier;
import org.salvedge.stats.LogRank;

/**
 * How long sold sets stay sold, by the latest fix before the sale, over the sales of the 24 months up to the month's end.
 *
 * @param fix "" = all together; a set that was sold without an attempt stands only there
 * @param points share not come back by {@link #DAYS}
 * @param costPerSale refunds, transport and handling of these sales so far, units of the currency a sale
 * @param chance of a difference from all others at least as large where there is none (log-rank); not a number for all together
 */
public record KeptCurve(String fix, int sales, int comebacks, List<Point> points, double costPerSale, double chance) {
    /** Days after the sale. */
    public static final List<Integer> DAYS = List.of(30, 60, 90, 180);

    private static final int MONTHS = 24;
    private static final int FEWEST = 20;
    private static final double LEVEL = 0.95;

    /** @param atRisk sales that were looked at so long without a comeback before that day */
    public record Point(int days, int atRisk, Range kept) {}

    public KeptCurve {
        points = List.copyOf(points);
    }

    private static final class Sales {
        final DoubleArrayList days = new DoubleArrayList();
        final BooleanArrayList back = new BooleanArrayList();
        final IntArrayList fix = new IntArrayList();
        final DoubleArrayList cost = new DoubleArrayList();
    }

    /** All together, then each fix with enough sales, by code. */
    static List<KeptCurve> of(Outcomes o, YearMonth month) {
        History h = o.history();
        Days days = days(month);
        Sales sales = new Sales();
        for (int set = 0; set < h.sets(); set++) {
            if (h.arrived(set) && soldWithin(h, set, days)) {
                add(h, set, days, sales);
            }
        }
        List<KeptCurve> curves = new ArrayList<>();
        if (sales.days.isEmpty()) {
            return curves;
        }
        double unit = Math.pow(10, Math.max(0, h.currency().getDefaultFractionDigits()));
        curves.add(curve("", sales, -1, unit));
        TreeMap<String, Integer> fixes = new TreeMap<>(Text.CODE_POINTS);
        for (int f = 0; f < h.fixes().size(); f++) {
            fixes.put(h.fixes().text(f), f);
        }
        int[] count = new int[h.fixes().size()];
        sales.fix.forEach((int f) -> {
            if (f >= 0) {
                count[f]++;
            }
        });
        fixes.entrySet().stream().filter(e -> count[e.getValue()] >= FEWEST).toList().parallelStream()
                .map(e -> curve(e.getKey(), sales, e.getValue(), unit))
                .forEachOrdered(curves::add);
        return List.copyOf(curves);
    }

    /** The days of the sales that the curves rest on. */
    static Days days(YearMonth month) {
        return new Days(
                Days.of(month.minusMonths(MONTHS - 1L)).first(), Days.of(month).last());
    }

    static boolean soldWithin(History h, int set, Days days) {
        for (int e = h.exitStart(set); e < h.exitStart(set + 1); e++) {
            if (Sale.isSale(h, e) && days.hold(h.exitDay(e))) {
                return true;
            }
        }
        return false;
    }

    private static void add(History h, int set, Days of, Sales sales) {
        for (Sale sale : Sale.of(h, set)) {
            int day = h.exitDay(sale.exit());
            if (!of.hold(day)) {
                continue;
            }
            boolean back = !sale.comebacks().isEmpty();
            long cost = 0;
            for (int c : sale.comebacks()) {
                cost += h.comebackCost(c);
            }
            sales.days.add((back ? h.comebackDay(sale.comebacks().get(0)) : of.last()) - day);
            sales.back.add(back);
            sales.fix.add(ComebackLine.latestFix(h, set, day));
            sales.cost.add((double) cost);
        }
    }

    private static KeptCurve curve(String code, Sales sales, int fix, double unit) {
        int n = sales.days.size();
        DoubleArrayList days = new DoubleArrayList();
        BooleanArrayList back = new BooleanArrayList();
        boolean[] first = new boolean[n];
        double cost = 0;
        int comebacks = 0;
        for (int i = 0; i < n; i++) {
            first[i] = fix < 0 || sales.fix.getInt(i) == fix;
            if (first[i]) {
                days.add(sales.days.getDouble(i));
                back.add(sales.back.getBoolean(i));
                comebacks += sales.back.getBoolean(i) ? 1 : 0;
                cost += sales.cost.getDouble(i) / unit;
            }
        }
        KaplanMeier kept = KaplanMeier.of(days.toDoubleArray(), back.toBooleanArray());
        List<Point> points = new ArrayList<>();
        for (int day : DAYS) {
            KaplanMeier.Step step = kept.at(day);
            int atRisk = kept.atRisk(day);
            points.add(new Point(
                    day, atRisk, atRisk == 0 ? Range.UNDEFINED : Range.of(step.survival(), step.interval(LEVEL))));
        }
        double chance = fix < 0
                ? Double.NaN
                : LogRank.of(sales.days.toDoubleArray(), sales.back.toBooleanArray(), first)
                        .p();
        return new KeptCurve(code, days.size(), comebacks, points, cost / days.size(), chance);
    }
}
