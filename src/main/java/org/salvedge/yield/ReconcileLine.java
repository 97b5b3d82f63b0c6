package org.salvedge.yield;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.List;
import org.salvedge.shop.History;
import org.salvedge.shop.Money;

/**
 * One kind of amount of the whole ledger, and where it went: into margins of sets that left before the month or in it, into sets that
 * are here, or into no set.
 *
 * @param ledger sum over the ledger's own rows, not by sets
 * @param outside of sets that never arrived, lots of which nothing arrived, and labour on lots as a whole
 * @param rounding of labour, once a set or lot, against the sum of all minutes
 * @param left ledger - all others: 0 where the books agree
 */
public record ReconcileLine(
        String what, Money ledger, Money before, Money month, Money here, Money outside, Money rounding, Money left) {

    static List<ReconcileLine> of(Outcomes o, YearMonth month) {
        History h = o.history();
        Days days = Days.of(month);
        // takings, selling costs, parts, labour, comebacks, landed cost; by before, month, here, outside
        long[][] sums = new long[6][4];
        boolean[] arrived = new boolean[h.lots()];
        for (int set = 0; set < h.sets(); set++) {
            arrived[h.setLot(set)] |= h.arrived(set);
            int where = !h.arrived(set) ? 3 : !o.gone(set) ? 2 : days.hold(h.exitDay(o.exit(set))) ? 1 : 0;
            Bridge.add(o, set, (kind, amount) -> sums[kind][where] += amount);
        }
        long micros = 0;
        long[] ledger = new long[6];
        for (int e = 0; e < h.exits(); e++) {
            ledger[0] += h.exitGross(e);
            ledger[1] += h.exitCosts(e);
            micros += Math.max(0, h.exitMicros(e));
        }
        for (int a = 0; a < h.attempts(); a++) {
            ledger[2] += h.attemptParts(a);
            micros += o.attemptMicros(a);
        }
        for (int c = 0; c < h.comebacks(); c++) {
            ledger[4] += h.comebackCost(c);
        }
        for (int lot = 0; lot < h.lots(); lot++) {
            ledger[5] += h.lotCost(lot);
            micros += Math.max(0, h.lotMicros(lot));
            sums[3][3] += o.labourOfLot(lot);
            sums[5][3] += arrived[lot] ? 0 : h.lotCost(lot);
        }
        ledger[3] = o.labourOf(micros);
        String[] names = {"takings", "fees, shipping, tax", "parts", "labour", "comebacks", "landed cost"};
        List<ReconcileLine> lines = new ArrayList<>();
        for (int k = 0; k < names.length; k++) {
            long sum = sums[k][0] + sums[k][1] + sums[k][2] + sums[k][3];
            long rounding = k == 3 ? ledger[k] - sum : 0;
            lines.add(line(h, names[k], ledger[k], sums[k], rounding, ledger[k] - sum - rounding));
        }
        return List.copyOf(lines);
    }

    private static ReconcileLine line(History h, String what, long ledger, long[] sums, long rounding, long left) {
        Money[] m = new Money[7];
        long[] minor = {ledger, sums[0], sums[1], sums[2], sums[3], rounding, left};
        for (int i = 0; i < m.length; i++) {
            m[i] = new Money(minor[i], h.currency());
        }
        return new ReconcileLine(what, m[0], m[1], m[2], m[3], m[4], m[5], m[6]);
    }
}
