package org.salvedge.bench;

import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.stats.KaplanMeier;
import org.salvedge.stats.Quantiles;

/**
 * What to ask for a set, and when to lower it. Days from the first offer to the sale by Kaplan and Meier (see {@link
 * KaplanMeier}), sets still on offer censored; the asking price so that, with the shop's own usual way from the first offer to
 * the price paid, the expected price is reached.
 *
 * @param ask now
 * @param expected price the model expects now
 * @param low fifth part of the prices lie below
 * @param high fifth part of the prices lie above
 * @param days median from offer to sale; null = not known
 * @param lowerAfter days after which three in four such sets had sold, else what is assumed
 * @param lowerTo asking price then: a set that stood so long is taken for one of the lower fifth
 * @param offers sets on offer that the days rest on
 * @param concession price paid as a share of the first offer
 * @param assumed days and concession are assumed: too few such sets were sold
 */
public record SellingAdvice(
        double ask,
        double expected,
        double low,
        double high,
        @Nullable Double days,
        int lowerAfter,
        double lowerTo,
        int offers,
        double concession,
        boolean assumed) {
    private static final int FEW = 8;
    private static final int ASSUMED_DAYS = 30;
    private static final int LONGEST = 120;
    private static final double ASSUMED_CONCESSION = 0.95;
    private static final double DAYS_A_MONTH = 365.25 / 12;
    /** Standard deviations from the median to the lower or upper fifth of a normal law. */
    private static final double FIFTH = 0.8416;

    /**
     * A set that was put on offer.
     *
     * @param first day of the first offer of its stay
     * @param price of that offer
     * @param sold day of the sale; null = not sold
     * @param until last day it is known to have been on offer
     * @param paid what it sold for
     */
    public record Offered(
            LocalDate first, double price, @Nullable LocalDate sold, LocalDate until, double paid) {}

    /** Expected price so many months ahead. */
    public interface PriceAhead {
        double median(double months);
    }

    /**
     * @param like sets on offer like this one, in order of preference: the first group with at least {@value #FEW} sales counts
     * @param spread standard deviation of the log of prices
     */
    public static SellingAdvice of(PriceAhead price, double spread, List<List<Offered>> like) {
        List<Offered> group = List.of();
        for (List<Offered> each : like) {
            if (each.stream().filter(o -> o.sold() != null).count() >= FEW) {
                group = each;
                break;
            }
        }
        boolean assumed = group.isEmpty();
        Double median = null;
        int lowerAfter = ASSUMED_DAYS;
        double concession = ASSUMED_CONCESSION;
        if (!assumed) {
            KaplanMeier curve = curve(group);
            median = Double.isInfinite(curve.median()) ? null : Double.valueOf(curve.median());
            lowerAfter = lowerAfter(curve);
            concession = concession(group);
        }
        double expected = price.median(0);
        double later = price.median(lowerAfter / DAYS_A_MONTH);
        return new SellingAdvice(
                expected / concession,
                expected,
                expected * Math.exp(-FIFTH * spread),
                expected * Math.exp(FIFTH * spread),
                median,
                lowerAfter,
                later * Math.exp(-FIFTH * spread) / concession,
                group.size(),
                concession,
                assumed);
    }

    private static KaplanMeier curve(List<Offered> group) {
        double[] days = new double[group.size()];
        boolean[] sold = new boolean[days.length];
        for (int i = 0; i < days.length; i++) {
            Offered o = group.get(i);
            LocalDate end = o.sold() == null ? o.until() : o.sold();
            days[i] = Math.max(0, end.toEpochDay() - o.first().toEpochDay());
            sold[i] = o.sold() != null;
        }
        return KaplanMeier.of(days, sold);
    }

    private static int lowerAfter(KaplanMeier curve) {
        return (int) curve.steps().stream()
                .filter(s -> s.survival() <= 0.25)
                .mapToDouble(KaplanMeier.Step::time)
                .findFirst()
                .orElse(LONGEST);
    }

    /** Median of paid over first offered; assumed where all were given away. */
    private static double concession(List<Offered> group) {
        double[] share = group.stream()
                .filter(o -> o.sold() != null && o.price() > 0 && o.paid() > 0)
                .mapToDouble(o -> o.paid() / o.price())
                .toArray();
        return share.length == 0 ? ASSUMED_CONCESSION : Math.max(0.5, Math.min(1, Quantiles.of(share, 0.5)));
    }
}
