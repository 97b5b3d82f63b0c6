package org.salvedge.report;

import java.util.Locale;
import java.util.Set;
import java.util.stream.Collectors;
import java.util.stream.Stream;

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
    CAME_ON("came on", Kind.DATE, "Day the lot arrived; its sets are received in that month."),
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
    DAYS("days\nhere", Kind.COUNT, "Days since its lot arrived."),
    MINUTES("minutes\nso far", Kind.MINUTES, "All minutes spent on it so far, where known."),
    COST("cost\nso far", Kind.MONEY, "Landed cost, parts, labour and refunds so far, less what it has brought."),
    CAME_BACK("came back", Kind.DATE, "Day of the comeback."),
    SOLD_ON("sold", Kind.DATE, "Day of the sale."),
    DAYS_OUT("days\nout", Kind.COUNT, "Days from sale to comeback."),
    DAYS_LOOKED_AT("days", Kind.COUNT, "Days from the sale to the first comeback, else to the month's end."),
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
    PER_SAVED_BEFORE("min\nper saved,\nmonth\nbefore", Kind.MINUTES, "The same for the month before."),
    PER_SAVED_SO_FAR("min\nper saved,\nall so far", Kind.MINUTES, "The same over the whole record."),
    TRACE(
            "what is\nbehind it",
            Kind.TEXT,
            "Leads to the rows of a list that the figures of this row rest on: sets, attempts or lots. Empty where no list has them all."),
    TRACE_OVER("behind\nthe other", Kind.TEXT, "The same for the next best fix."),
    SETS_THEN(
            "sets,\nmonth\nbefore",
            Kind.COUNT,
            "Sets of the cell in the month before: decided ones for a yield, gone ones for a margin."),
    SETS_NOW("sets,\nthis\nmonth", Kind.COUNT, "The same in the month."),
    YIELD_THEN("yield,\nmonth\nbefore", Kind.RATIO, "Yield of the cell in the month before."),
    YIELD_NOW("yield,\nthis\nmonth", Kind.RATIO, "The same in the month."),
    MIX(
            "mix\neffect,\n% points",
            Kind.RATIO,
            "Change of the cell's share of all sets x mean of its two yields. A cell empty in one month is all mix. Mix and rate of all cells add up to the change."),
    RATE("rate\neffect,\n% points", Kind.RATIO, "Change of the cell's yield x mean of its two shares."),
    MARGIN_THEN(
            "margin\nper set,\nmonth\nbefore", Kind.MONEY_EACH, "Margin per set gone of the cell in the month before."),
    MARGIN_NOW("margin\nper set,\nthis\nmonth", Kind.MONEY_EACH, "The same in the month."),
    MIX_MONEY("mix\neffect,\nmargin", Kind.MONEY_EACH, "As the mix effect of the yield, on the margin per set gone."),
    RATE_MONEY(
            "rate\neffect,\nmargin", Kind.MONEY_EACH, "As the rate effect of the yield, on the margin per set gone."),
    CAUSE(
            "cause",
            Kind.KEY,
            "fix: it works more or less often; supplier: its sets differ from its earlier ones with the same claims; mix: other families and faults; price: the same sets sell for more or less. All against the twelve months before."),
    WHAT("which", Kind.KEY, "Fix or supplier."),
    DIRECTION("direction", Kind.TEXT, "up: for the better; down: for the worse."),
    EFFECT("effect", Kind.RATIO, "On the share of sets saved in the month; of a price: on the price."),
    CHANCE("chance,\nalone", Kind.RATIO, "Chance of a difference at least as large where nothing changed."),
    CHANCE_ALL("chance,\nall\ntogether", Kind.RATIO, "The same, raised for how many causes were looked at (Holm)."),
    STANDS_OUT("stands\nout", Kind.YES_NO, "More than chance: the raised chance is 5 % at most."),
    POINT("point", Kind.KEY, "Month or lot that a point of a control chart stands for."),
    BEHIND("sets or\nfixes", Kind.COUNT, "How many are behind the point."),
    VALUE(
            "value",
            Kind.RATIO,
            "Yield of the month or lot (p' chart), or minutes against the usual ones of the same fixes (individuals chart)."),
    CENTRE("centre", Kind.RATIO, "Centre of the chart, from the months before, or from all lots shown."),
    LIMIT_LOW(
            "lower\nlimit",
            Kind.RATIO,
            "Three standard deviations below the centre, with the spread between months or lots."),
    LIMIT_HIGH("upper\nlimit", Kind.RATIO, "Three standard deviations above it."),
    Z("distance", Kind.NUMBER, "From the centre in standard deviations of the chart."),
    RULES(
            "rules\nmet",
            Kind.TEXT,
            "Zone rules that fire at the point: beyond 3; two of three beyond 2; four of five beyond 1; eight on one side. Empty: nothing beyond chance."),
    TRIED(
            "attempts,\n12\nmonths",
            Kind.COUNT,
            "Attempts of the twelve months up to the month's end that passed or failed."),
    PASSED("passed", Kind.COUNT, "Those of them that passed."),
    SUCCESS(
            "success,\nshrunk",
            Kind.INTERVAL,
            "passed / attempts, drawn to the fix on that fault and that to the fault where attempts are few, with a 95 % interval that allows for what sets of one lot share."),
    BOTH_MINUTES("min,\nmedian", Kind.MINUTES, "Median minutes of diagnosis and fix together, failures included."),
    PER_PASS("min per\npass", Kind.MINUTES, "All these minutes / passed."),
    PARTS("parts\nper\nattempt", Kind.MONEY_EACH, "Mean cost of parts of an attempt."),
    FIRST(
            "first\nattempts",
            Kind.COUNT,
            "Attempts that were their set's first at that fault; fixes are compared on these only."),
    INCREMENT(
            "increment",
            Kind.MONEY_EACH,
            "Mean over the first attempts: what a saved set of the family brings beyond one given up, if it passed, less its own parts and labour. Failures count where they arose."),
    INCREMENT_LOW("increment,\nfrom", Kind.MONEY_EACH, "Lower end of its 95 % interval, lots taken as whole."),
    INCREMENT_HIGH("increment,\nto", Kind.MONEY_EACH, "Upper end of it."),
    PER_HOUR("increment\nper hour", Kind.MONEY_EACH, "The same before labour, / hours at the bench."),
    NOW_TRIED("attempts,\nthis\nmonth", Kind.COUNT, "Attempts of the month that passed or failed."),
    NOW_PASSED("passed,\nthis\nmonth", Kind.COUNT, "Those of them that passed."),
    OVER("before", Kind.TEXT, "The next best fix."),
    GAIN("gain", Kind.MONEY_EACH, "What preferring it adds to an attempt: difference of the increments."),
    GAIN_LOW("gain,\nfrom", Kind.MONEY_EACH, "Lower end of its 95 % interval."),
    GAIN_HIGH("gain,\nto", Kind.MONEY_EACH, "Upper end of it."),
    WRONG("chance\nwrong", Kind.RATIO, "At most: that one of the other fixes is better."),
    FIRST_OVER("first\nattempts,\nother", Kind.COUNT, "First attempts with the next best fix."),
    TIMED("passes\nwith\nminutes", Kind.COUNT, "What the learning curve rests on."),
    SO_FAR("attempts\nso far", Kind.COUNT, "Attempts over the whole record that passed or failed."),
    LEFT_AT_DOUBLING(
            "minutes left\nat each\ndoubling",
            Kind.INTERVAL,
            "Share of the minutes that is left at each doubling of attempts (unit learning curve); below 100 % = one learns."),
    FIRST_MINUTES("minutes\nof the\nfirst", Kind.MINUTES, "By the curve."),
    LATEST_MINUTES("minutes\nof the\nlatest", Kind.MINUTES, "By the curve."),
    LOTS("lots", Kind.COUNT, "Bought in the 24 months up to the month's end."),
    MISSING("missing", Kind.COUNT, "Sets on the manifests that did not arrive."),
    MISSING_SHARE("missing,\nshare", Kind.RATIO, "missing / listed."),
    CHECKED("claims\nchecked", Kind.COUNT, "Sets whose claim names a fault, or none, and whose fault was found."),
    TRUTH(
            "claims\ntrue",
            Kind.INTERVAL,
            "Share of these whose fault is one that the claim means, shrunk to all suppliers, with a 95 % interval."),
    LOOKED("sets not\nclaimed\ncracked", Kind.COUNT, "Those whose fault was found."),
    GLASS(
            "hidden\nbroken\nglass",
            Kind.INTERVAL,
            "Share of these with broken glass, shrunk to all suppliers, with a 95 % interval."),
    FINISHED("lots\nfinished", Kind.COUNT, "Lots of which nothing is here any more."),
    SPENT("landed\ncost of\nthese", Kind.MONEY, "Landed cost of the finished lots."),
    BROUGHT("recovered\nof these", Kind.MONEY, "Net recovery of the finished lots."),
    ADJUST(
            "fair\nchange of\nprices",
            Kind.INTERVAL,
            "Change of the prices paid at which the supplier's finished lots would have brought the same for each unit of money as all lots together, shrunk; -10 % = pay a tenth less."),
    DAYS_SOLD("days\nafter\nsale", Kind.COUNT, "Days since the sale."),
    SALES("sales", Kind.COUNT, "Sales of the 24 months up to the month's end, by the latest fix before the sale."),
    BACK("came\nback", Kind.COUNT, "How many of these have come back."),
    AT_RISK("number\nat risk", Kind.COUNT, "Sales at least so old, not come back before: what the share rests on."),
    KEPT(
            "not come\nback",
            Kind.INTERVAL,
            "Kaplan-Meier share of sales not come back by that day, with Greenwood's 95 % interval."),
    COST_A_SALE("comebacks'\ncost\na sale", Kind.MONEY_EACH, "Refunds, transport and handling so far / sales."),
    LOG_RANK(
            "chance\nalike",
            Kind.RATIO,
            "Chance of a difference from all other sales at least as large if they were alike (log-rank)."),
    AMOUNT_OF("amount", Kind.KEY, "A kind of amount in the ledger."),
    LEDGER("whole\nledger", Kind.MONEY, "Sum over the ledger's own rows, not by sets."),
    GONE_BEFORE("gone\nbefore", Kind.MONEY, "Of sets that left before the month."),
    GONE_NOW("gone in\nthe month", Kind.MONEY, "Of sets that left in the month: what the sheet \"Money\" shows."),
    STILL_HERE("still\nhere", Kind.MONEY, "Of sets that are here."),
    OUTSIDE(
            "of no\nset here",
            Kind.MONEY,
            "Of sets that never arrived, lots of which nothing arrived, and labour on lots as a whole."),
    ROUNDING(
            "rounding\nof labour",
            Kind.MONEY,
            "Labour is rounded once a set; this is the difference to the sum of all minutes."),
    UNEXPLAINED("left over", Kind.MONEY, "Whole ledger less all others; 0 where the books agree."),
    OPEN_STATE(
            "state",
            Kind.KEY,
            "passed: waits to be sold; tried: attempts were made, none passed; untouched: no attempt yet."),
    OPEN_AGE("age", Kind.KEY, "Since the lot arrived."),
    EXPECTED(
            "expected\nto bring",
            Kind.MONEY_EACH,
            "passed: what saved sets of the family brought; tried: what sets of that fault brought; untouched: net recovery of sets with that claim; means of the twelve months. An estimate, not a book value."),
    LIMIT("limit", Kind.MONEY, "The most the shop would pay, as kept with the bid."),
    P10("said:\n10 %", Kind.MONEY, "One chance in ten that it would recover less, as said when it was bid for."),
    P50("said:\nmiddle", Kind.MONEY, "As likely more as less."),
    P90("said:\n90 %", Kind.MONEY, "One chance in ten that it would recover more."),
    HAMMER("hammer\nprice", Kind.MONEY, "What it went for."),
    LOT_DONE("finished", Kind.YES_NO, "Nothing of the lot is here any more, so that its result is final."),
    DECIDED_IN("decided\nin", Kind.TEXT, "Month that a set was decided in, where it is this one or the one before."),
    WAS_SAVED("was\nsaved", Kind.YES_NO, "Whether it was saved."),
    GONE_IN("gone\nin", Kind.TEXT, "Month that a set left in, where it is this one or the one before."),
    SET_MARGIN("margin of\nthe set", Kind.MONEY, "Its final margin."),
    NUMBER("attempt", Kind.TEXT, "The attempt's number."),
    ON("day", Kind.DATE, "Day of the attempt."),
    WAS_FIRST("first", Kind.YES_NO, "Whether it was its set's first with a fix at that fault."),
    RESULT_OF("result", Kind.TEXT, "passed or failed."),
    ATTEMPT_MINUTES("minutes", Kind.MINUTES, "Diagnosis and fix, where known."),
    ATTEMPT_PARTS("parts", Kind.MONEY, "Cost of its parts."),
    ENTRY_KIND("what", Kind.KEY, "Kind of entry that was put on record since the month was last printed."),
    ENTRIES_NEW("recorded", Kind.COUNT, "Things that were not on record then and happened by the month's end."),
    ENTRIES_CORRECTED("corrected", Kind.COUNT, "Entries of then that were replaced."),
    ENTRIES_TAKEN_BACK("taken\nback", Kind.COUNT, "Entries that were taken back."),
    ENTRIES_SETS("sets\nconcerned", Kind.COUNT, "How many sets these entries are about."),
    ENTRIES_WHICH("which sets", Kind.TEXT, "Their labels, the first twelve."),
    MOVED("figure", Kind.KEY, "A figure of the first page that is not what it was when the month was last printed."),
    MOVED_FROM("last\nprinted", Kind.NUMBER, "What it was then."),
    MOVED_TO("now", Kind.NUMBER, "What it is now."),
    MOVED_BY("moved\nby", Kind.NUMBER, "Now less then."),
    CHECKS_UNMET("unmet", Kind.TEXT, "Release checks recorded as not done, or left unmet with a reason."),
    CHECKS_UNKNOWN("not on\nrecord", Kind.TEXT, "Release checks of which the record does not say that they were done."),
    CHECKS_WHY("reason", Kind.TEXT, "Why it was sold all the same, as given at the sale."),
    CHART_BASE("chart:\nfrom", Kind.MONEY_EACH, "Where the step begins in the chart."),
    CHART_ABOVE("chart:\nabove 0", Kind.MONEY_EACH, "The part of the step above 0."),
    CHART_BELOW("chart:\nbelow 0", Kind.MONEY_EACH, "The part of the step below 0."),
    ROLLED_SHARE("good,\nshare", Kind.RATIO, "good / of."),
    ROLLED_GOOD("good", Kind.COUNT, "Sets, or sales, that came through this step."),
    ROLLED_OF("of", Kind.COUNT, "Those that met this step."),
    ROLLED(
            "rolled throughput yield",
            Kind.KEY,
            "Glass not broken (among sets with a fault found) x saved (among those decided) x not come back in 90 days"
                    + " (among sales at least 90 days old). The three groups differ, so this is an index, not a chance.");

    private static final Set<String> OFF_PAPER = Stream.of(TRACE, TRACE_OVER, CHART_BASE, CHART_ABOVE, CHART_BELOW)
            .map(f -> f.column().key())
            .collect(Collectors.toUnmodifiableSet());

    private final String heading;
    private final Kind kind;
    private final String meaning;

    Figure(String heading, Kind kind, String meaning) {
        this.heading = heading;
        this.kind = kind;
        this.meaning = meaning;
    }

    /** Whether a column leads elsewhere or serves a chart, and says nothing on paper. */
    static boolean onlyOnScreen(String key) {
        return OFF_PAPER.contains(key);
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
