package org.salvedge.yield;

import java.time.LocalDate;
import org.salvedge.shop.Fault;
import org.salvedge.shop.History;
import org.salvedge.stats.Yields;

/**
 * Three steps in a row, each with its own count: glass not broken (among sets with a fault found), saved (among those decided),
 * not come back in 90 days (among sales at least 90 days old). The cohorts differ, so the product is an index, not a chance.
 *
 * @param diagnosed sets with an attempt that found a fault, or found that there is none
 * @param notBroken those of them without broken glass in any attempt
 * @param oldSales sales at least 90 days old
 * @param kept those of them that did not come back within 90 days
 */
public record RolledYield(int diagnosed, int notBroken, int decided, int saved, int oldSales, int kept) {
    /** Days after which a sale counts as kept. */
    public static final int DAYS = 90;

    /** @param asOf the day that the sales are looked at from */
    public static RolledYield of(Outcomes outcomes, LocalDate asOf) {
        History h = outcomes.history();
        int unknown = h.faults().find(Fault.UNKNOWN.code());
        int broken = h.faults().find(Fault.PANEL_BROKEN.code());
        int latest = (int) asOf.toEpochDay() - DAYS;
        int[] n = new int[6];
        for (int set = 0; set < h.sets(); set++) {
            if (!h.arrived(set)) {
                continue;
            }
            boolean found = false;
            boolean glass = false;
            for (int a = h.attemptStart(set); a < h.attemptStart(set + 1); a++) {
                found |= h.attemptFault(a) != unknown;
                glass |= h.attemptFault(a) == broken;
            }
            n[0] += found ? 1 : 0;
            n[1] += found && !glass ? 1 : 0;
            n[2] += outcomes.decided(set) ? 1 : 0;
            n[3] += outcomes.saved(set) ? 1 : 0;
            if (h.comebackStart(set) == h.comebackStart(set + 1)) { // most sets, and quicker
                int sales = salesBy(h, set, latest);
                n[4] += sales;
                n[5] += sales;
                continue;
            }
            for (Sale sale : Sale.of(h, set)) {
                if (h.exitDay(sale.exit()) <= latest) {
                    n[4]++;
                    n[5] += back(h, sale) ? 0 : 1;
                }
            }
        }
        return new RolledYield(n[0], n[1], n[2], n[3], n[4], n[5]);
    }

    private static int salesBy(History h, int set, int latest) {
        int sales = 0;
        for (int e = h.exitStart(set); e < h.exitStart(set + 1); e++) {
            sales += Sale.isSale(h, e) && h.exitDay(e) <= latest ? 1 : 0;
        }
        return sales;
    }

    private static boolean back(History h, Sale sale) {
        return !sale.comebacks().isEmpty() && h.comebackDay(sale.comebacks().get(0)) - h.exitDay(sale.exit()) <= DAYS;
    }

    /** Share of the diagnosed sets without broken glass; not a number without any. */
    public double glass() {
        return share(notBroken, diagnosed);
    }

    /** Share of the decided sets that were saved; not a number without any. */
    public double bench() {
        return share(saved, decided);
    }

    /** Share of the old sales that were kept; not a number without any. */
    public double keeping() {
        return share(kept, oldSales);
    }

    /** The product; not a number where a step has nothing to count. */
    public double index() {
        return diagnosed == 0 || decided == 0 || oldSales == 0
                ? Double.NaN
                : Yields.rolled(glass(), bench(), keeping());
    }

    private static double share(int part, int whole) {
        return whole == 0 ? Double.NaN : (double) part / whole;
    }
}
