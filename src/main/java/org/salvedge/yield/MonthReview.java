package org.salvedge.yield;

import java.math.BigDecimal;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.Currency;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.salvedge.shop.Bid;
import org.salvedge.shop.History;

/**
 * What the monthly review prints, counted from a history that ends with the month.
 *
 * @param now the month itself
 * @param before the month before it
 * @param yearAgo the same month a year before
 * @param series the thirteen months that end with this one, oldest first
 * @param cells decided sets by family and fault
 * @param cellsBefore the same of the month before
 * @param byFamilyAndFix attempts of the sets decided in the month
 * @param byFix the same
 * @param byFixBefore of the month before
 * @param byFixSoFar all attempts so far
 * @param byFamily sets decided in the month
 * @param open sets here at the month's end
 * @param why what changed, and why
 * @param bids what was thought of lots, and what became of them
 */
public record MonthReview(
        YearMonth month,
        Currency currency,
        MonthFigures now,
        MonthFigures before,
        MonthFigures yearAgo,
        List<MonthFigures> series,
        List<DecidedCell> cells,
        List<DecidedCell> cellsBefore,
        YieldTable byFamilyAndFix,
        YieldTable byFix,
        YieldTable byFixBefore,
        YieldTable byFixSoFar,
        YieldTable byFamily,
        Bridge bridge,
        Bridge bridgeBefore,
        RolledYield rolled,
        List<LotLine> lots,
        List<OpenSet> open,
        List<ComebackLine> comebacks,
        MonthWhy why,
        List<BidLine> bids) {
    private static final int MONTHS_SHOWN = 13;

    /**
     * @param history what had happened by the month's last day
     * @param labourRate per hour, in units of the book currency
     */
    public static MonthReview of(History history, BigDecimal labourRate, YearMonth month) {
        return of(history, labourRate, month, List.of());
    }

    /** @param bids of the lots, by the month's last day */
    public static MonthReview of(History history, BigDecimal labourRate, YearMonth month, List<Bid> bids) {
        Outcomes outcomes = Outcomes.of(history, labourRate);
        LocalDate lastDay = month.atEndOfMonth();
        YearMonth monthBefore = month.minusMonths(1);
        // The tables over the whole record take longest and do not need one another.
        CompletableFuture<YieldTable> byFixSoFar =
                CompletableFuture.supplyAsync(() -> YieldTable.of(outcomes, List.of(Key.FIX)));
        CompletableFuture<RolledYield> rolled = CompletableFuture.supplyAsync(() -> RolledYield.of(outcomes, lastDay));
        CompletableFuture<List<LotLine>> lots = CompletableFuture.supplyAsync(() -> LotLine.of(outcomes));
        CompletableFuture<List<OpenSet>> open = CompletableFuture.supplyAsync(() -> OpenSet.of(outcomes, lastDay));
        YieldTable byMonth = YieldTable.of(outcomes, List.of(Key.MONTH));
        CompletableFuture<MonthWhy> why = lots.thenApplyAsync(lines -> MonthWhy.of(outcomes, month, byMonth, lines));
        List<MonthFigures> series = MonthFigures.of(outcomes, byMonth, month, MONTHS_SHOWN);
        return new MonthReview(
                month,
                history.currency(),
                series.get(MONTHS_SHOWN - 1),
                series.get(MONTHS_SHOWN - 2),
                series.get(0),
                series,
                DecidedCell.of(outcomes, month),
                DecidedCell.of(outcomes, monthBefore),
                YieldTable.ofMonth(outcomes, List.of(Key.FAMILY, Key.FIX), month),
                YieldTable.ofMonth(outcomes, List.of(Key.FIX), month),
                YieldTable.ofMonth(outcomes, List.of(Key.FIX), monthBefore),
                byFixSoFar.join(),
                YieldTable.ofMonth(outcomes, List.of(Key.FAMILY), month),
                Bridge.of(outcomes, month),
                Bridge.of(outcomes, monthBefore),
                rolled.join(),
                lots.join(),
                open.join(),
                ComebackLine.of(outcomes, month),
                why.join(),
                BidLine.of(lots.join(), bids));
    }
}
