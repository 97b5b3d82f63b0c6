package org.salvedge.report;

import java.util.List;
import org.salvedge.shop.Money;
import org.salvedge.yield.BidLine;
import org.salvedge.yield.KeptCurve;
import org.salvedge.yield.MonthReview;
import org.salvedge.yield.MonthWhy;
import org.salvedge.yield.ReconcileLine;
import org.salvedge.yield.SupplierLine;
import org.salvedge.yield.WorkLine;

/** The tables that say how suppliers do, what comes back, and where the money went. */
final class OutcomeTables {
    private final MonthReview review;
    private final MonthWhy why;
    private final Trace trace;

    OutcomeTables(MonthReview review, Trace trace) {
        this.review = review;
        this.trace = trace;
        why = review.why();
    }

    Table suppliers() {
        Table.Builder table = WhyTables.of(
                        Figure.SUPPLIER,
                        Figure.LOTS,
                        Figure.LISTED,
                        Figure.MISSING,
                        Figure.MISSING_SHARE,
                        Figure.CHECKED,
                        Figure.TRUTH,
                        Figure.LOOKED,
                        Figure.GLASS,
                        Figure.FINISHED,
                        Figure.SPENT,
                        Figure.BROUGHT,
                        Figure.ADJUST,
                        Figure.TRACE)
                .title("Suppliers");
        for (SupplierLine s : why.suppliers()) {
            table.row(
                    s.supplier(),
                    s.lots(),
                    s.listed(),
                    s.missing(),
                    s.listed() == 0 ? null : s.missing() / (double) s.listed(),
                    s.checked(),
                    WhyTables.estimate(s.truth()),
                    s.looked(),
                    WhyTables.estimate(s.glass()),
                    s.finished(),
                    s.spent(),
                    s.recovered(),
                    WhyTables.estimate(s.adjust()),
                    trace.lotsOf(s.supplier()));
        }
        return table.build();
    }

    Table kept() {
        Table.Builder table = WhyTables.of(
                        Figure.FIX,
                        Figure.DAYS_SOLD,
                        Figure.AT_RISK,
                        Figure.KEPT,
                        Figure.SALES,
                        Figure.BACK,
                        Figure.COST_A_SALE,
                        Figure.LOG_RANK,
                        Figure.TRACE)
                .title("How long sold sets stay sold, by fix");
        for (KeptCurve curve : why.kept()) {
            for (KeptCurve.Point p : curve.points()) {
                table.row(
                        curve.fix().isEmpty() ? "(all sales)" : curve.fix(),
                        p.days(),
                        p.atRisk(),
                        WhyTables.estimate(p.kept()),
                        curve.sales(),
                        curve.comebacks(),
                        curve.costPerSale(),
                        curve.chance(),
                        trace.soldAfter(curve.fix()));
            }
        }
        return table.build();
    }

    Table ledger() {
        Table.Builder table = WhyTables.of(
                        Figure.AMOUNT_OF,
                        Figure.LEDGER,
                        Figure.GONE_BEFORE,
                        Figure.GONE_NOW,
                        Figure.STILL_HERE,
                        Figure.OUTSIDE,
                        Figure.ROUNDING,
                        Figure.UNEXPLAINED)
                .title("Where every amount of the ledger went");
        for (ReconcileLine l : why.ledger()) {
            table.row(l.what(), l.ledger(), l.before(), l.month(), l.here(), l.outside(), l.rounding(), l.left());
        }
        return table.build();
    }

    Table work() {
        Table.Builder table = WhyTables.of(
                        Figure.OPEN_STATE, Figure.OPEN_AGE, Figure.SETS, Figure.COST, Figure.EXPECTED, Figure.TRACE)
                .title("Work in progress, at cost and at what it is expected to bring");
        int sets = 0;
        Money cost = Money.zero(review.currency());
        double expected = 0;
        int age = 0;
        for (WorkLine l : why.work()) { // each state with all ages
            int from = age == 0 ? 0 : WorkLine.AGES.get(age - 1) + 1;
            int to = age == WorkLine.AGES.size() ? Integer.MAX_VALUE : WorkLine.AGES.get(age);
            age = (age + 1) % (WorkLine.AGES.size() + 1);
            table.row(l.state(), l.age(), l.sets(), l.cost(), l.expected(), trace.here(l.state(), from, to));
            sets += l.sets();
            cost = cost.plus(l.cost());
            expected += l.expected();
        }
        return table.row("all", "", sets, cost, expected, null).build();
    }

    Table bids() {
        Table.Builder table = WhyTables.of(
                        Figure.LOT,
                        Figure.SUPPLIER,
                        Figure.BOUGHT,
                        Figure.LIMIT,
                        Figure.P10,
                        Figure.P50,
                        Figure.P90,
                        Figure.HAMMER,
                        Figure.LANDED,
                        Figure.RECOVERED,
                        Figure.RESULT,
                        Figure.LOT_DONE,
                        Figure.TRACE)
                .title("Bids and outcomes");
        for (BidLine b : review.bids()) {
            table.row(
                    b.lot(),
                    b.supplier(),
                    b.bought(),
                    b.limit(),
                    b.p10(),
                    b.p50(),
                    b.p90(),
                    b.hammer(),
                    b.landed(),
                    b.recovered(),
                    b.recovered().minus(b.landed()),
                    b.finished(),
                    trace.ofLot(b.lot()));
        }
        return table.note("Only lots that were won are seen here, and one wins where one over-rates.")
                .build();
    }

    /** The lots finished last. */
    Table outcomes(int most) {
        List<BidLine> done = review.bids().stream().filter(BidLine::finished).toList();
        Table.Builder table = WhyTables.of(
                        Figure.LOT, Figure.SUPPLIER, Figure.BOUGHT, Figure.LANDED, Figure.P50, Figure.RECOVERED)
                .title("Cost and outcome of the lots finished last");
        for (BidLine b : done.subList(Math.max(0, done.size() - most), done.size())) {
            table.row(b.lot(), b.supplier(), b.bought(), b.landed(), b.p50(), b.recovered());
        }
        return table.build();
    }
}
