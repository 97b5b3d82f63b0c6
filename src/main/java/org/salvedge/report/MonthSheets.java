package org.salvedge.report;

import java.util.ArrayList;
import java.util.List;
import org.salvedge.yield.MonthReview;

/** The tables of the review in their order, for the workbook and for the page alike. */
final class MonthSheets {
    static final String CHART = "Yield chart";
    static final String MONEY = "Money";
    static final String TIME = "Time per fix";
    static final String OUTCOMES = "Outcomes";

    private static final int LOTS_IN_CHART = 10;

    private MonthSheets() {}

    /**
     * @param about a line that says what it is
     * @param frozen columns that stay in sight
     * @param charted a chart draws on it
     * @param lists whether it lists single sets, attempts or lots
     */
    record Sheet(String name, String about, Table table, int frozen, boolean charted, boolean lists) {}

    static List<Sheet> of(MonthReview review, MonthNotes notes) {
        List<Sheet> sheets = new ArrayList<>();
        SincePrinting since = notes.since();
        if (since != null && !since.recorded().isEmpty()) {
            sheets.add(figures(
                    "Recorded since",
                    "Entries since the month was last printed, of what had happened by its end.",
                    since.entriesTable(),
                    1));
        }
        if (since != null && !since.moved().isEmpty()) {
            sheets.add(figures("Moved since", "Against the figures that were printed then.", since.movedTable(), 1));
        }
        sheets.addAll(of(review));
        if (!notes.releases().lines().isEmpty()) {
            sheets.add(lists(
                    ReleaseExceptions.SHEET,
                    "Sales of " + review.month() + " of which a release check was left unmet or is not on record.",
                    notes.releases().table(),
                    2));
        }
        return List.copyOf(sheets);
    }

    static List<Sheet> of(MonthReview review) {
        String month = review.month().toString();
        Trace trace = new Trace(review);
        MonthTables tables = new MonthTables(review, trace);
        TraceTables lists = new TraceTables(trace);
        WhyTables why = new WhyTables(review, trace);
        OutcomeTables outcomes = new OutcomeTables(review, trace);
        String again = "The same sets in another order; not listed again where there are over 5 000.";
        String changed =
                "Sets decided in " + month + " against those of the month before. Mix: other sets; rate: other yields.";
        String margins = "Sets that left in " + month
                + " against those of the month before. Mix: other sets; rate: other margins.";
        String year = "First attempts at a fault in the twelve months up to " + month
                + "'s end; failures are charged where they arose.";
        String years = "Lots bought in the 24 months up to " + month + "'s end.";
        return List.of(
                figures(
                        "Causes",
                        month + " against the twelve months before; each cause tested on its own.",
                        why.causes(),
                        2),
                figures("Changed", changed, why.changedByFault(), 2),
                figures("Changed by supplier", changed, why.changedBySupplier(), 1),
                figures("Margin changed", margins, why.marginByFault(), 2),
                figures("Margin by supplier", margins, why.marginBySupplier(), 1),
                charted(CHART, "Laney's p' chart; its limits come from the months before " + month + ".", why.months()),
                figures(
                        "Lot chart",
                        "Laney's p' chart of the lots decided by four fifths, latest last.",
                        why.lots(),
                        1),
                figures(
                        "Minutes chart",
                        "Individuals chart of the mean log minutes of fixes, each against its fix's own; 100 % = as usual.",
                        why.minutes(),
                        1),
                figures(
                        "Prefer",
                        "Fixes with eight first attempts at least, the best against the next best.",
                        why.prefer(),
                        3),
                figures(
                        "Learning",
                        "Minutes of fixes that worked, over the whole record, where there are thirty at least.",
                        why.learning(),
                        1),
                charted(
                        TIME,
                        "Attempts on sets decided in " + month + "; failures are charged too.",
                        tables.timePerFix()),
                charted(
                        "By month",
                        "Thirteen months. Sets stand under the month they were decided in, margins under that of the exit.",
                        tables.byMonth()),
                figures(
                        "Yield",
                        "Attempts on sets decided in " + month + ", by family and fix.",
                        YieldSheets.ofMonth(
                                "Yield by family and fix",
                                review.byFamilyAndFix(),
                                row -> trace.ofMonth(
                                        row.keys().get(0), row.keys().get(1), row.decided())),
                        2),
                figures("Fixes", year, why.fixes(), 2),
                figures("Fixes by family", year, why.fixesByFamily(), 3),
                figures("Suppliers", years, outcomes.suppliers(), 1),
                figures(
                        "Kept",
                        "Sales of the 24 months up to " + month + "'s end, by the latest fix before the sale.",
                        outcomes.kept(),
                        2),
                lists(FrontLinks.COMEBACKS, "Sold sets that came back in " + month + ".", tables.comebacks(), 2),
                charted(MONEY, "Sets that left in " + month + ", over their whole time in the shop.", tables.money()),
                figures(
                        "Ledger",
                        "The whole ledger up to " + month + "'s end: nothing is left over.",
                        outcomes.ledger(),
                        1),
                figures("Work", "Sets still here when " + month + " ended.", outcomes.work(), 2),
                figures(
                        "Margin",
                        "Sets decided in " + month + " and margins of sets that left in it, by family.",
                        YieldSheets.ofMonth(
                                "Margin by family",
                                review.byFamily(),
                                row -> trace.ofFamily(row.keys().get(0))),
                        1),
                figures(
                        "Faults",
                        "Sets decided in " + month + " by the fault of their deciding attempt.",
                        tables.faults(),
                        1),
                figures(
                        "Rolled",
                        "Over the whole record; three groups of sets, so the product is an index.",
                        tables.rolled(),
                        1),
                charted(OUTCOMES, "The lots finished last, by day of purchase.", outcomes.outcomes(LOTS_IN_CHART)),
                lists(
                        "Bids",
                        "Lots with a bid, and lots finished, as they stood when " + month + " ended.",
                        outcomes.bids(),
                        1),
                lists(
                        Trace.LOTS,
                        "Every lot, as it stood when " + month + " ended. Its sets: salvedge show LOT.",
                        lists.lots(),
                        1),
                lists(
                        Trace.LOTS_BY_SUPPLIER,
                        "The same lots in another order; not listed again where there are over 5 000.",
                        lists.lotsBySupplier(),
                        1),
                lists(
                        Trace.OPEN,
                        "Sets still here when " + month
                                + " ended, by state, those longest here first; of over 10 000 the 10 000 longest here.",
                        lists.open(),
                        1),
                lists(
                        Trace.SETS,
                        "Sets decided or gone in " + month + " or the month before; in " + month
                                + " alone where these are over 10 000.",
                        lists.sets(),
                        1),
                lists(Trace.BY_SUPPLIER, again, lists.setsBySupplier(), 1),
                lists(Trace.DECIDED, again, lists.decided(), 1),
                lists(Trace.GONE, again, lists.gone(), 1),
                lists(
                        Trace.ATTEMPTS,
                        "Attempts with a fix that passed or failed; of the month alone where the year has over 20 000.",
                        lists.attempts(),
                        2),
                lists(
                        Trace.OF_MONTH,
                        "Those of the same attempts that were made on sets decided in " + month + ".",
                        lists.ofMonth(),
                        1),
                lists(
                        Trace.SALES,
                        "Sales of the 24 months up to " + month + "'s end; not listed where they are over 10 000.",
                        lists.sales(),
                        1));
    }

    private static Sheet figures(String name, String about, Table table, int frozen) {
        return new Sheet(name, about, table, frozen, false, false);
    }

    private static Sheet charted(String name, String about, Table table) {
        return new Sheet(name, about, table, 1, true, false);
    }

    private static Sheet lists(String name, String about, Table table, int frozen) {
        return new Sheet(name, about, table, frozen, false, true);
    }
}
