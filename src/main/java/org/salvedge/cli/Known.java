package org.salvedge.cli;

import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.function.Supplier;
import org.salvedge.ledger.Entry;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.Bid;
import org.salvedge.shop.Settings;
import org.salvedge.worth.ShopModel;
import org.salvedge.worth.turn.StopModel;

/**
 * What the shop knew at a day's end.
 *
 * @param model of lots to come
 * @param stops for the table of stop minutes
 * @param bids that were on record
 */
record Known(ShopModel model, Supplier<StopModel> stops, List<Bid> bids) {
    static Known upTo(LocalDate day, Session session, Settings settings) {
        try (Ledger ledger = session.shop().read()) {
            KeptFit.Answers fit = KeptFit.of(day, ledger, session, settings);
            return new Known(fit.model(), fit.stops(), bids(day, ledger, settings));
        }
    }

    /** A bid that was completed later counts from then on. */
    private static List<Bid> bids(LocalDate day, Ledger ledger, Settings settings) {
        List<Bid> bids = new ArrayList<>();
        for (Bid bid : ledger.all(Bid.class)) {
            LocalDate recorded = ledger.bid(bid.number())
                    .map(Entry::recordedAt)
                    .map(at -> LocalDate.ofInstant(at, settings.zone()))
                    .orElse(bid.on());
            if (!bid.on().isAfter(day) && !recorded.isAfter(day)) {
                bids.add(bid);
            }
        }
        return bids;
    }
}
