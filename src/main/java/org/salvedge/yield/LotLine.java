package org.salvedge.yield;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.salvedge.shop.History;
import org.salvedge.shop.Money;
import org.salvedge.shop.Text;

/**
 * How a lot stands.
 *
 * @param listed sets booked, arrived or not
 * @param inProgress arrived and neither decided, returned nor lost
 * @param here passed or in progress
 * @param landed landed cost of the whole lot
 * @param recovered net recovery so far: takings less selling costs, parts, comebacks and labour, the lot's own minutes included
 */
public record LotLine(
        String lot,
        String supplier,
        LocalDate bought,
        LocalDate arrival,
        int listed,
        int arrived,
        int decided,
        int saved,
        int inProgress,
        int here,
        Money landed,
        Money recovered) {

    /** recovered - landed: final only when nothing is here any more. */
    public Money result() {
        return recovered.minus(landed);
    }

    /** All lots, by name in order of code points. */
    public static List<LotLine> of(Outcomes outcomes) {
        History h = outcomes.history();
        int[][] n = new int[6][h.lots()];
        long[] recovered = new long[h.lots()];
        for (int set = 0; set < h.sets(); set++) {
            int lot = h.setLot(set);
            n[0][lot]++;
            recovered[lot] += outcomes.net(set);
            if (h.arrived(set)) {
                n[1][lot]++;
                n[2][lot] += outcomes.decided(set) ? 1 : 0;
                n[3][lot] += outcomes.saved(set) ? 1 : 0;
                n[4][lot] += outcomes.inProgress(set) ? 1 : 0;
                n[5][lot] += outcomes.gone(set) ? 0 : 1;
            }
        }
        List<LotLine> lines = new ArrayList<>();
        for (int lot = 0; lot < h.lots(); lot++) {
            lines.add(new LotLine(
                    h.lotNames().text(lot),
                    h.suppliers().text(h.lotSupplier(lot)),
                    LocalDate.ofEpochDay(h.lotBought(lot)),
                    LocalDate.ofEpochDay(h.lotArrival(lot)),
                    n[0][lot],
                    n[1][lot],
                    n[2][lot],
                    n[3][lot],
                    n[4][lot],
                    n[5][lot],
                    new Money(h.lotCost(lot), h.currency()),
                    new Money(recovered[lot] - outcomes.labourOfLot(lot), h.currency())));
        }
        lines.sort(Comparator.comparing(LotLine::lot, Text.CODE_POINTS));
        return List.copyOf(lines);
    }
}
