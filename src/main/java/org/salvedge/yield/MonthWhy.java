package org.salvedge.yield;

import java.time.YearMonth;
import java.util.List;
import java.util.concurrent.CompletableFuture;

/**
 * What stands behind the figures of a month: what changed, why, what to do.
 *
 * @param causes likeliest first
 * @param fixes by fault, over all families
 * @param fixesByFamily the same by family
 * @param preferences by fault, then by family
 * @param ledger where every amount of the ledger went
 * @param work what is here, by state and age
 * @param deeds worth doing, best first
 * @param sets behind the month's figures and those of the month before
 * @param attempts behind the fixes' figures
 * @param sales behind the curves of comebacks
 */
public record MonthWhy(
        List<Cause> causes,
        Signals signals,
        ChangeSplit yieldByFault,
        ChangeSplit yieldBySupplier,
        ChangeSplit marginByFault,
        ChangeSplit marginBySupplier,
        List<FixLine> fixes,
        List<FixLine> fixesByFamily,
        List<Preference> preferences,
        List<Learning> learning,
        List<SupplierLine> suppliers,
        List<KeptCurve> kept,
        List<ReconcileLine> ledger,
        List<WorkLine> work,
        List<Deed> deeds,
        List<TraceSet> sets,
        List<TraceAttempt> attempts,
        List<TraceSale> sales) {

    static MonthWhy of(Outcomes o, YearMonth month, YieldTable byMonth, List<LotLine> lots) {
        // Each walks the whole record, and they do not need one another.
        CompletableFuture<List<Cause>> causes = CompletableFuture.supplyAsync(() -> Causes.of(o, month));
        CompletableFuture<List<Learning>> learning = CompletableFuture.supplyAsync(() -> Learning.of(o));
        CompletableFuture<List<KeptCurve>> kept = CompletableFuture.supplyAsync(() -> KeptCurve.of(o, month));
        CompletableFuture<List<SupplierLine>> suppliers =
                CompletableFuture.supplyAsync(() -> SupplierBook.of(o, month));
        CompletableFuture<List<ReconcileLine>> ledger = CompletableFuture.supplyAsync(() -> ReconcileLine.of(o, month));
        SetValues values = SetValues.of(o, month);
        List<FixLine> fixes = FixBook.of(o, month, values, false);
        List<FixLine> byFamily = FixBook.of(o, month, values, true);
        List<Preference> preferences = java.util.stream.Stream.concat(
                        Preference.of(fixes).stream(), Preference.of(byFamily).stream())
                .toList();
        Signals signals = Signals.of(o, month, byMonth, lots);
        ChangeSplit yieldByFault = ChangeSplit.yieldByFault(o, month);
        ChangeSplit yieldBySupplier = ChangeSplit.yieldBySupplier(o, month);
        ChangeSplit marginByFault = ChangeSplit.marginByFault(o, month);
        ChangeSplit marginBySupplier = ChangeSplit.marginBySupplier(o, month);
        List<WorkLine> work = WorkLine.of(o, month, values);
        List<TraceSet> sets = TraceSet.of(o, month);
        List<TraceAttempt> attempts = TraceAttempt.of(o, month);
        List<TraceSale> sales = TraceSale.of(o, month);
        return new MonthWhy(
                causes.join(),
                signals,
                yieldByFault,
                yieldBySupplier,
                marginByFault,
                marginBySupplier,
                fixes,
                byFamily,
                preferences,
                learning.join(),
                suppliers.join(),
                kept.join(),
                ledger.join(),
                work,
                Deeds.of(o, month, values, causes.join(), fixes, preferences, suppliers.join(), kept.join()),
                sets,
                attempts,
                sales);
    }
}
