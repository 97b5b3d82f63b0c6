package org.salvedge.yield;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Bid;
import org.salvedge.shop.Money;
import org.salvedge.shop.Text;

/**
 * What was thought of a lot when it was bid for, and what became of it. Only lots that were won are seen, and one wins where one
 * over-rates.
 *
 * @param limit null where no bid is kept; so are the others of the bid
 * @param p10 to {@code p90} of its recovery, as said then
 * @param finished nothing of it is here any more
 */
public record BidLine(
        String lot,
        String supplier,
        LocalDate bought,
        @Nullable Money limit,
        @Nullable Money p10,
        @Nullable Money p50,
        @Nullable Money p90,
        @Nullable Money hammer,
        Money landed,
        Money recovered,
        boolean finished) {

    /** Lots with a bid, and all that are finished, in order of purchase. */
    static List<BidLine> of(List<LotLine> lots, List<Bid> bids) {
        Map<String, Bid> byLot = new HashMap<>();
        for (Bid bid : bids) {
            if (bid.lot() != null) {
                byLot.put(bid.lot().value(), bid);
            }
        }
        List<BidLine> lines = new ArrayList<>();
        for (LotLine lot : lots) {
            Bid bid = byLot.get(lot.lot());
            boolean finished = lot.here() == 0 && lot.arrived() > 0;
            if (bid != null || finished) {
                lines.add(new BidLine(
                        lot.lot(),
                        lot.supplier(),
                        lot.bought(),
                        bid == null ? null : bid.limit(),
                        bid == null ? null : bid.p10(),
                        bid == null ? null : bid.p50(),
                        bid == null ? null : bid.p90(),
                        bid == null ? null : bid.hammer(),
                        lot.landed(),
                        lot.recovered(),
                        finished));
            }
        }
        lines.sort(Comparator.comparing(BidLine::bought).thenComparing(BidLine::lot, Text.CODE_POINTS));
        return List.copyOf(lines);
    }
}
