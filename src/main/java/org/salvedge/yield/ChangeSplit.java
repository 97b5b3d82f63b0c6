package org.salvedge.yield;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import java.util.Map;
import java.util.TreeMap;
import java.util.function.IntFunction;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.History;
import org.salvedge.shop.Text;
import org.salvedge.stats.Kitagawa;

/**
 * The change of a month's yield or margin per set against the month before, split into mix and rate by cells (Kitagawa 1955, JASA 50,
 * 1168-1194). The cells add up to the change.
 *
 * @param before over the month before; not a number without sets
 * @param now over the month
 * @param cells largest effect first
 */
public record ChangeSplit(double before, double now, double mix, double rate, List<Cell> cells) {
    /**
     * @param keys family and fault, or supplier; "" = without an attempt
     * @param setsBefore of the cell in the month before
     * @param meanBefore yield or margin per set of the cell; not a number without sets
     */
    public record Cell(
            List<String> keys,
            int setsBefore,
            int setsNow,
            double meanBefore,
            double meanNow,
            double mix,
            double rate) {
        public Cell {
            keys = List.copyOf(keys);
        }
    }

    public ChangeSplit {
        cells = List.copyOf(cells);
    }

    /** Of the yield, by family and fault of the deciding attempt. */
    static ChangeSplit yieldByFault(Outcomes o, YearMonth month) {
        return of(o, month, false, set -> faultKeys(o, set));
    }

    /** Of the yield, by supplier. */
    public static ChangeSplit yieldBySupplier(Outcomes o, YearMonth month) {
        return of(o, month, false, set -> supplierKey(o.history(), set));
    }

    /** Of the margin per set gone, units of the currency. */
    static ChangeSplit marginByFault(Outcomes o, YearMonth month) {
        return of(o, month, true, set -> faultKeys(o, set));
    }

    static ChangeSplit marginBySupplier(Outcomes o, YearMonth month) {
        return of(o, month, true, set -> supplierKey(o.history(), set));
    }

    private static List<String> faultKeys(Outcomes o, int set) {
        History h = o.history();
        int deciding = o.deciding(set);
        return List.of(
                h.families().text(h.setFamily(set)),
                deciding < 0 ? "" : h.faults().text(h.attemptFault(deciding)));
    }

    private static List<String> supplierKey(History h, int set) {
        return List.of(h.suppliers().text(h.lotSupplier(h.setLot(set))));
    }

    private static ChangeSplit of(Outcomes o, YearMonth month, boolean margin, IntFunction<List<String>> key) {
        History h = o.history();
        Scope[] scopes = {Scope.of(o, month.minusMonths(1)), Scope.of(o, month)};
        Comparator<List<String>> order = (a, b) -> {
            int c = 0;
            for (int i = 0; i < a.size() && c == 0; i++) {
                c = Text.CODE_POINTS.compare(a.get(i), b.get(i));
            }
            return c;
        };
        Map<List<String>, long[]> cells = new TreeMap<>(order);
        for (int set = 0; set < h.sets(); set++) {
            if (!h.arrived(set)) {
                continue;
            }
            for (int side = 0; side < 2; side++) {
                boolean in = margin
                        ? o.gone(set) && scopes[side].holdsMargin(set)
                        : o.decided(set) && scopes[side].holds(set);
                if (in) {
                    long[] c = cells.computeIfAbsent(key.apply(set), k -> new long[4]);
                    c[side]++;
                    c[2 + side] += margin ? o.margin(set) : o.saved(set) ? 1 : 0;
                }
            }
        }
        double unit = margin ? Math.pow(10, Math.max(0, h.currency().getDefaultFractionDigits())) : 1;
        return split(cells, unit);
    }

    private static ChangeSplit split(Map<List<String>, long[]> cells, double unit) {
        int k = cells.size();
        double[][] share = new double[2][k];
        double[][] mean = new double[2][k];
        long[] sets = new long[2];
        long[] sums = new long[2];
        cells.values().forEach(c -> {
            for (int side = 0; side < 2; side++) {
                sets[side] += c[side];
                sums[side] += c[2 + side];
            }
        });
        int i = 0;
        for (long[] c : cells.values()) {
            for (int side = 0; side < 2; side++) {
                share[side][i] = c[side] / (double) sets[side];
                mean[side][i] = c[side] == 0 ? Double.NaN : c[2 + side] / unit / c[side];
            }
            i++;
        }
        Kitagawa split = sets[0] == 0 || sets[1] == 0 ? null : Kitagawa.of(share[0], mean[0], share[1], mean[1]);
        List<Cell> lines = new ArrayList<>();
        i = 0;
        for (Map.Entry<List<String>, long[]> e : cells.entrySet()) {
            long[] c = e.getValue();
            lines.add(new Cell(
                    e.getKey(),
                    (int) c[0],
                    (int) c[1],
                    mean[0][i],
                    mean[1][i],
                    split == null ? Double.NaN : split.cells().get(i).mix(),
                    split == null ? Double.NaN : split.cells().get(i).rate()));
            i++;
        }
        if (split != null) {
            lines.sort(Comparator.comparingDouble((Cell c) -> -Math.abs(c.mix + c.rate)));
        }
        return new ChangeSplit(
                overall(sums[0], sets[0], unit),
                overall(sums[1], sets[1], unit),
                part(split, true),
                part(split, false),
                lines);
    }

    private static double overall(long sum, long sets, double unit) {
        return sets == 0 ? Double.NaN : sum / unit / sets;
    }

    private static double part(@Nullable Kitagawa split, boolean mix) {
        return split == null ? Double.NaN : mix ? split.mix() : split.rate();
    }
}
