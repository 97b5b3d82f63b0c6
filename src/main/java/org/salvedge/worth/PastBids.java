package org.salvedge.worth;

import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Bid;
import org.salvedge.shop.Money;
import org.salvedge.stats.Quantiles;

/**
 * How past limits stood to hammer prices: of lots of this supplier where enough are on record, else of all.
 *
 * @param supplier the one whose lots were looked at; null = all
 * @param kept bids with a limit and a hammer price
 * @param won of these
 * @param limitOverHammer in the middle; not a number without any
 * @param overWorth hammer price over what {@code worth} had said of the lot's mean: 1 in 10 below, middle, 1 in 10 above; empty where
 *     too few bids kept it
 */
public record PastBids(@Nullable String supplier, int kept, int won, double limitOverHammer, List<Double> overWorth) {
    private static final int FEWEST = 5;

    public PastBids {
        overWorth = List.copyOf(overWorth);
    }

    /** @param bids that were on record on the day of the answer */
    public static PastBids of(List<Bid> bids, @Nullable String supplier) {
        List<Bid> all = bids.stream().filter(PastBids::tells).toList();
        List<Bid> own = all.stream()
                .filter(b -> supplier != null && supplier.equals(b.supplier()))
                .toList();
        boolean enough = own.size() >= FEWEST;
        return of(enough ? own : all, enough);
    }

    private static PastBids of(List<Bid> bids, boolean own) {
        double[] limits =
                bids.stream().mapToDouble(b -> ratio(b.limit(), b.hammer())).toArray();
        double[] worth = bids.stream()
                .mapToDouble(b -> ratio(b.hammer(), b.mean()))
                .filter(Double::isFinite)
                .toArray();
        int won = (int) bids.stream().filter(b -> Boolean.TRUE.equals(b.won())).count();
        double[] q = worth.length < FEWEST ? new double[0] : Quantiles.of(worth, 0.1, 0.5, 0.9);
        return new PastBids(
                own ? bids.get(0).supplier() : null,
                bids.size(),
                won,
                limits.length == 0 ? Double.NaN : Quantiles.of(limits, 0.5),
                java.util.Arrays.stream(q).boxed().toList());
    }

    private static boolean tells(Bid bid) {
        return bid.limit() != null && bid.hammer() != null && !bid.hammer().isZero();
    }

    private static double ratio(@Nullable Money above, @Nullable Money below) {
        return above == null || below == null || below.minor() <= 0
                ? Double.NaN
                : above.toDoubleForStatistics() / below.toDoubleForStatistics();
    }
}
