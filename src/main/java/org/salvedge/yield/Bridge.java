package org.salvedge.yield;

import java.time.YearMonth;
import org.salvedge.shop.History;
import org.salvedge.shop.Money;

/**
 * From takings to margin over the sets that left in one month, over their whole time in the shop. Costs are positive:
 * margin = takings - sellingCosts - parts - labour - comebacks - landed, to the minor unit.
 *
 * @param sets how many
 * @param sellingCosts fees, shipping and tax
 * @param comebacks refunds and handling
 */
public record Bridge(
        int sets,
        Money takings,
        Money sellingCosts,
        Money parts,
        Money labour,
        Money comebacks,
        Money landed,
        Money margin) {

    public static Bridge of(Outcomes outcomes, YearMonth month) {
        History h = outcomes.history();
        Scope scope = Scope.of(outcomes, month);
        int sets = 0;
        long[] sums = new long[7];
        for (int set = 0; set < h.sets(); set++) {
            if (h.arrived(set) && outcomes.gone(set) && scope.holdsMargin(set)) {
                sets++;
                add(outcomes, set, sums);
            }
        }
        Money[] m = new Money[sums.length];
        for (int i = 0; i < m.length; i++) {
            m[i] = new Money(sums[i], h.currency());
        }
        return new Bridge(sets, m[0], m[1], m[2], m[3], m[4], m[5], m[6]);
    }

    /** Takes an amount of a kind: 0 takings, 1 selling costs, 2 parts, 3 labour, 4 comebacks, 5 landed cost. */
    interface Step {
        void take(int kind, long minor);
    }

    private static void add(Outcomes o, int set, long[] sums) {
        add(o, set, (kind, minor) -> sums[kind] += minor);
        sums[6] += o.margin(set);
    }

    /** The amounts of one set. */
    static void add(Outcomes o, int set, Step step) {
        History h = o.history();
        for (int e = h.exitStart(set); e < h.exitStart(set + 1); e++) {
            step.take(0, h.exitGross(e));
            step.take(1, h.exitCosts(e));
        }
        for (int a = h.attemptStart(set); a < h.attemptStart(set + 1); a++) {
            step.take(2, h.attemptParts(a));
        }
        step.take(3, o.labour(set));
        for (int c = h.comebackStart(set); c < h.comebackStart(set + 1); c++) {
            step.take(4, h.comebackCost(c));
        }
        step.take(5, o.landed(set));
    }
}
