package org.salvedge.report;

import java.util.Locale;

/** Everything that heads a column of a workbook, with its definition; the sheet "Definitions" is made of these. */
enum Figure {
    FAMILY("family", Kind.KEY, "Model family: sets that share chassis and panel behaviour."),
    MAKER("maker", Kind.KEY, "Maker as read on the set; \"unknown\" where it could not be read."),
    MODEL("model", Kind.KEY, "Model number as on the rear label; \"unknown\" where it could not be read."),
    INCHES("inches", Kind.KEY, "Screen diagonal in whole inches, half up."),
    SUPPLIER("supplier", Kind.KEY, "Who sold the lot."),
    LOT("lot", Kind.KEY, "The shop's name for one purchase."),
    CLAIMED("claimed", Kind.KEY, "Symptom class that the seller claimed."),
    GRADE(
            "grade",
            Kind.KEY,
            "A: nothing seen close up; B: nothing seen at the design viewing distance; C: seen, and told to the buyer."
                    + " The exit's grade, else that of the latest pass."),
    MONTH(
            "month",
            Kind.KEY,
            "Month of the latest pass for a saved set, of the exit for another decided set; margins stand under the"
                    + " month of the exit."),
    FAULT(
            "fault",
            Kind.KEY,
            "Class of the fault found. Where sets are counted: that of the deciding attempt, which is a set's latest with a"
                    + " fix, else its latest. Empty: no attempt was made."),
    FIX("fix", Kind.KEY, "What was tried; \"none\" = diagnosed only. Empty: sets that left without an attempt."),
    TECHNICIAN("technician", Kind.KEY, "Who made the attempt; empty where it was not written down."),
    UNIT("set", Kind.KEY, "The shop's label on one television set."),
    SETS("sets", Kind.COUNT, "Sets that arrived. With fault, fix or technician among the keys: distinct sets tried."),
    ATTEMPTS("attempts", Kind.COUNT, "Turns at the bench, those that only diagnosed included."),
    DECIDED(
            "decided",
            Kind.COUNT,
            "Sets that passed, or left as sold, stripped or recycled; returned and lost ones are in no yield. With"
                    + " fault, fix or technician: attempts that passed or failed; one without a retest failed when anything followed."),
    SAVED(
            "saved",
            Kind.COUNT,
            "Sets that passed and are here, or were sold with a pass as their latest result. With fault, fix or technician:"
                    + " attempts that passed."),
    IN_PROGRESS(
            "in\nprogress",
            Kind.COUNT,
            "Sets neither decided nor returned nor lost; with fault, fix or technician: attempts without a"
                    + " result yet. Not in the yield."),
    GONE("gone", Kind.COUNT, "Sets that left, in whatever way: their margins are final."),
    YIELD("yield", Kind.INTERVAL, "saved / decided, and Wilson's 95 % interval as if each set stood alone."),
    YIELD_SHRUNK(
            "yield,\nshrunk",
            Kind.INTERVAL,
            "Yield that borrows strength where there are few sets (family x fault x fix from fault x fix, that"
                    + " from fault), with a 95 % interval that allows for what sets of one lot share. The one to decide by."),
    FIRST_PASS_YIELD(
            "first-pass\nyield",
            Kind.RATIO,
            "Sets whose first attempt with a fix passed / sets whose first attempt with a fix passed or"
                    + " failed. Sets never fixed are not in it, so it may exceed the yield."),
    MINUTES_MEDIAN(
            "min\nper fix,\nmedian",
            Kind.MINUTES,
            "Median of the minutes of attempts with a fix, failures included, where known."),
    MINUTES_P90(
            "min\nper fix,\n90 % in",
            Kind.MINUTES, "90th percentile of the same minutes (type 7): nine fixes in ten take no longer."),
    MINUTES_PER_SAVED(
            "min\nper saved\nset",
            Kind.MINUTES,
            "All minutes of the decided sets, failures, packing and stripping included, / saved. With"
                    + " fault, fix or technician: minutes of passes and failures / passes."),
    MARGIN_TOTAL(
            "margin",
            Kind.MONEY_TOTAL,
            "Over sets gone: takings less fees, shipping, tax, parts, refunds, labour and landed cost. With fault, fix or"
                    + " technician a set's margin stands with its deciding attempt; that does not say which fix pays."),
    MARGIN_PER_SET("margin\nper set", Kind.MONEY_EACH, "margin / gone."),
    MARGIN_PER_HOUR(
            "margin\nper hour",
            Kind.MONEY_EACH,
            "margin / hours of labour on the sets gone. Labour is already paid in the margin."),
    RECEIVED("received", Kind.COUNT, "Sets that arrived in the month."),
    COMEBACKS(
            "comebacks",
            Kind.COUNT,
            "Sets that came back in the month. A comeback keeps a set saved unless it is put back in stock and later not"
                    + " saved."),
    COMEBACK_COST("cost of\ncomebacks", Kind.MONEY_TOTAL, "Refunds, transport and handling of the month's comebacks."),
    BOUGHT("bought", Kind.DATE, "Day of purchase."),
    LISTED("listed", Kind.COUNT, "Sets booked with the lot, arrived or not."),
    ARRIVED("arrived", Kind.COUNT, "Sets of the lot that arrived."),
    HERE("still\nhere", Kind.COUNT, "Sets of the lot that have not left."),
    LANDED("landed\ncost", Kind.MONEY, "(price + premium + freight + other cost) x rate of exchange."),
    RECOVERED(
            "recovered\nso far",
            Kind.MONEY,
            "Takings so far less fees, shipping, tax, parts, refunds and labour, the lot's own labour included."),
    RESULT(
            "result\nso far",
            Kind.MONEY,
            "recovered so far - landed cost. Final only when nothing of the lot is here any more."),
    STATE("state", Kind.TEXT, "passed: waits to be sold; on bench: neither passed nor gone."),
    DAYS("days\nhere", Kind.COUNT, "Days since its lot arrived."),
    MINUTES("minutes\nso far", Kind.MINUTES, "All minutes spent on it so far, where known."),
    COST("cost\nso far", Kind.MONEY, "Landed cost, parts, labour and refunds so far, less what it has brought."),
    CAME_BACK("came back", Kind.DATE, "Day of the comeback."),
    SOLD_ON("sold", Kind.DATE, "Day of the sale."),
    DAYS_OUT("days\nout", Kind.COUNT, "Days from sale to comeback."),
    LATEST_FIX("latest fix\nbefore", Kind.TEXT, "The latest fix before the sale."),
    FAULT_BACK("fault when\nback", Kind.TEXT, "Fault found when it came back; empty where it is not known."),
    REFUND("refund\nand cost", Kind.MONEY, "Refund, transport and handling."),
    RESTOCKED(
            "back in\nstock",
            Kind.YES_NO,
            "Whether it is on the bench again; else the buyer kept it, or it was written off."),
    ROW("row", Kind.KEY, "The keys of a row of the sheet \"Yield\"."),
    SHARE("share", Kind.RATIO, "Of the sets decided in the month."),
    SHARE_BEFORE("share, month\nbefore", Kind.RATIO, "Of the sets decided in the month before."),
    STEP(
            "step",
            Kind.TEXT,
            "A step from takings to margin, over the whole time in the shop of the sets that left in the month."),
    AMOUNT(
            "this month",
            Kind.MONEY,
            "Amount of the step; costs are negative, and the steps add up to the margin exactly."),
    AMOUNT_BEFORE("month before", Kind.MONEY, "The same for the sets that left in the month before."),
    AGE("days here", Kind.TEXT, "Sets still here by the days since their lot arrived."),
    PER_SAVED_BEFORE("min\nper saved,\nmonth\nbefore", Kind.MINUTES, "The same for the month before."),
    PER_SAVED_SO_FAR("min\nper saved,\nall so far", Kind.MINUTES, "The same over the whole record."),
    ROLLED(
            "rolled throughput yield",
            Kind.RATIO,
            "Glass not broken (among sets with a fault found) x saved (among those decided) x not come back in 90 days"
                    + " (among sales at least 90 days old). The three groups differ, so this is an index, not a chance.");

    private final String heading;
    private final Kind kind;
    private final String meaning;

    Figure(String heading, Kind kind, String meaning) {
        this.heading = heading;
        this.kind = kind;
        this.meaning = meaning;
    }

    String meaning() {
        return meaning;
    }

    /** Heading on one line. */
    String words() {
        return heading.replace('\n', ' ');
    }

    Column column() {
        return Column.of(name().toLowerCase(Locale.ROOT), heading, kind);
    }
}
