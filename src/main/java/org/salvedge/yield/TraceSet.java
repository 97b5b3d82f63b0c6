package org.salvedge.yield;

import java.time.YearMonth;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.History;
import org.salvedge.shop.Money;
import org.salvedge.shop.Text;

/**
 * A set that a figure of the month or of the month before rests on.
 *
 * @param fault of the deciding attempt; "" without one
 * @param decided month it was decided in; null = not decided
 * @param gone month it left in; null = here
 * @param margin null = here
 */
public record TraceSet(
        String unit,
        String supplier,
        String lot,
        String family,
        String fault,
        String fix,
        @Nullable YearMonth decided,
        boolean saved,
        @Nullable YearMonth gone,
        @Nullable Money margin) {
    /** More than these are listed for the month alone, and in one order only. */
    public static final int MOST = 10_000;

    /** By family and fault, then by label: of the month and the one before, or of the month where these are too many. */
    static List<TraceSet> of(Outcomes o, YearMonth month) {
        List<TraceSet> sets = new ArrayList<>();
        if (!list(o, month.minusMonths(1), month, MOST, sets)) {
            sets.clear();
            list(o, month, month, Integer.MAX_VALUE, sets);
        }
        sets.sort(Comparator.comparing(TraceSet::family, Text.CODE_POINTS)
                .thenComparing(TraceSet::fault, Text.CODE_POINTS)
                .thenComparing(TraceSet::unit, Text.CODE_POINTS));
        return List.copyOf(sets);
    }

    /** Lists the sets of two months; false as soon as there are more than that many. */
    private static boolean list(Outcomes o, YearMonth first, YearMonth last, int most, List<TraceSet> sets) {
        History h = o.history();
        YearMonth[] months = {first, last};
        Days[] days = {Days.of(months[0]), Days.of(months[1])};
        for (int set = 0; set < h.sets(); set++) {
            if (!h.arrived(set)) {
                continue;
            }
            YearMonth decided = null;
            YearMonth gone = null;
            for (int m = 0; m < 2; m++) {
                decided = o.decided(set) && days[m].hold(o.decidedDay(set)) ? months[m] : decided;
                gone = o.gone(set) && days[m].hold(h.exitDay(o.exit(set))) ? months[m] : gone;
            }
            if (decided != null || gone != null) {
                if (sets.size() == most) {
                    return false;
                }
                int d = o.deciding(set);
                sets.add(new TraceSet(
                        h.label(set),
                        h.suppliers().text(h.lotSupplier(h.setLot(set))),
                        h.lotNames().text(h.setLot(set)),
                        h.families().text(h.setFamily(set)),
                        d < 0 ? "" : h.faults().text(h.attemptFault(d)),
                        d < 0 ? "" : h.fixes().text(h.attemptFix(d)),
                        decided,
                        o.saved(set),
                        gone,
                        gone == null ? null : new Money(o.margin(set), h.currency())));
            }
        }
        return true;
    }
}
