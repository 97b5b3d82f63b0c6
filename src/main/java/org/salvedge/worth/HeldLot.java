package org.salvedge.worth;

import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Money;

/**
 * A past lot, and how the estimate of the day before its purchase held.
 *
 * @param listed sets on the seller's list, arrived or not
 * @param extras sets that came and were not listed: in the outcome, not in the estimate
 * @param done share of the arrived sets that have left
 * @param judged null where the lot is not finished
 */
public record HeldLot(
        String lot,
        String supplier,
        LocalDate bought,
        int listed,
        int extras,
        double done,
        @Nullable Judged judged) {

    /**
     * The estimate against what came.
     *
     * @param lotsBefore lots on record on the day before the purchase
     * @param outcome net recovery of the lot
     * @param pit where in the estimate the outcome fell, 0 to 1
     * @param crps continuous ranked probability score of the estimate, book currency; smaller is better
     * @param plainMean the plain average of past sets times the number of sets; not a number where there was no past set
     * @param plainCrps its score
     * @param limit the most the shop would have paid, where a bid is kept
     * @param hammer what it went for
     */
    public record Judged(
            int lotsBefore,
            Money outcome,
            double mean,
            double p05,
            double p10,
            double p25,
            double p50,
            double p75,
            double p90,
            double p95,
            double pit,
            double crps,
            double plainMean,
            double plainCrps,
            @Nullable Money limit,
            @Nullable Money hammer) {}
}
