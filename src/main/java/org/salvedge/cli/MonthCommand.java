package org.salvedge.cli;

import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.ArrayList;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.Digits;
import org.salvedge.report.MonthNotes;
import org.salvedge.report.MonthPage;
import org.salvedge.report.MonthWorkbook;
import org.salvedge.report.Plural;
import org.salvedge.report.ReleaseExceptions;
import org.salvedge.report.SincePrinting;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.Bid;
import org.salvedge.shop.History;
import org.salvedge.shop.Settings;
import org.salvedge.stats.Kitagawa;
import org.salvedge.yield.Cause;
import org.salvedge.yield.Causes;
import org.salvedge.yield.ChangeSplit;
import org.salvedge.yield.MonthChange;
import org.salvedge.yield.MonthFigures;
import org.salvedge.yield.MonthReview;
import org.salvedge.yield.Outcomes;
import org.salvedge.yield.YieldRow;
import org.salvedge.yield.YieldTable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** First of the month: the review as a workbook. */
@picocli.CommandLine.Command(
        description = "Write the month's review as a workbook: one page for the wall, and what stands behind it.",
        footer = {
            "",
            "Example: salvedge month 2026-02. It counts what happened up to the month's last day, whenever it was recorded. Without",
            "--xlsx it is reports/month-2026-02.xlsx (with --as-of in its name) in the shop's folder. --html month.html writes a web page; give both for both.",
            "Printed again, it says what was recorded since its last printing, and which figures of the first page moved by it;",
            "a printing is noted in the ledger (--format json and --as-of tell of the last one, but note none)."
        })
final class MonthCommand extends Command {
    /** Shares of the time that have gone once the record is read, and once everything is counted. */
    private static final double READ = 0.4;

    private static final double COUNTED = 0.8;

    @Parameters(paramLabel = "YYYY-MM", description = "The month.")
    String month = "";

    @Option(names = "--xlsx", paramLabel = "FILE", description = "Where to write the workbook.")
    @Nullable
    Path xlsx;

    @Option(
            names = "--html",
            paramLabel = "FILE",
            description = "Write the review as one web page instead; it needs no script and prints alike.")
    @Nullable
    Path html;

    @Option(names = "--as-of", paramLabel = "DATE", description = "Only what had been recorded by that day's end.")
    @Nullable
    LocalDate asOf;

    @Option(names = "--format", paramLabel = "table|json", description = "table (default) or json (no workbook).")
    Format format = Format.TABLE;

    @Mixin
    Overrides overrides = new Overrides();

    @Override
    int run(Session session) {
        YearMonth asked = asked();
        if (format == Format.CSV) {
            throw new Usage("--format: month prints table or json");
        }
        if (format == Format.JSON && (html != null || xlsx != null)) {
            throw new Usage("--format json writes no workbook and no page; leave out --xlsx and --html");
        }
        overrides.apply(session);
        session.shop().requireThere();
        // Both, before anything is counted: a slip in one must not leave the other written.
        Path page = html == null ? null : Reports.target(session, "--html", html, ".html");
        Path book = xlsx == null
                ? session.shop().reports().resolve("month-" + asked + (asOf == null ? "" : "-as-of-" + asOf) + ".xlsx")
                : Reports.target(session, "--xlsx", xlsx, ".xlsx");
        CompletableFuture<Void> tables = YieldTable.prepare();
        boolean asBook = format != Format.JSON && (html == null || xlsx != null);
        CompletableFuture<Void> books = asBook ? MonthWorkbook.prepare() : CompletableFuture.allOf();
        try (ProgressLine progress = new ProgressLine(session.surroundings())) {
            return run(session, asked, page, asBook ? book : null, CompletableFuture.allOf(tables, books), progress);
        }
    }

    /**
     * @param page where the web page goes; null = none
     * @param book where the workbook goes; null = none
     */
    private int run(
            Session session,
            YearMonth asked,
            @Nullable Path page,
            @Nullable Path book,
            CompletableFuture<Void> prepared,
            ProgressLine progress) {
        Settings settings = session.shop().settings();
        History history;
        LastPrinting past;
        ReleaseExceptions releases;
        MonthReview review;
        try (Ledger ledger = session.shop().read()) {
            past = LastPrinting.of(ledger, asked, asOf);
            history =
                    ledger.history(new AsOf(asked.atEndOfMonth(), asOf), Ledger.Detail.REVIEW, progress.part(0, READ));
            LocalDate last = asOf != null && asOf.isBefore(asked.atEndOfMonth()) ? asOf : asked.atEndOfMonth();
            releases = ReleaseExceptions.of(ledger.printings().sold(asked.atDay(1), last, asOf));
            List<Bid> bids = ledger.all(Bid.class).stream()
                    .filter(bid -> !bid.on().isAfter(last))
                    .toList();
            progress.step("counting", READ);
            // While the ledger is open, for the labels of the sets that it lists.
            review = format == Format.JSON && past.never()
                    ? null
                    : MonthReview.of(history, settings.labourRate(), asked, bids);
        }
        prepared.join();
        if (review == null || format == Format.JSON) {
            Outcomes outcomes = Outcomes.of(history, settings.labourRate());
            Map<String, Object> json = json(MonthChange.of(outcomes, asked), Causes.of(outcomes, asked));
            json.put("suppliers", suppliers(ChangeSplit.yieldBySupplier(outcomes, asked)));
            SincePrinting since = review == null ? null : past.since(session, review);
            json.put("since_printing", since == null ? null : LastPrinting.json(since));
            json.put("release_checks", checks(releases));
            progress.clear();
            session.json(json);
            return Status.DONE;
        }
        SincePrinting since = past.since(session, review);
        MonthNotes notes = new MonthNotes(since, releases, asOf);
        progress.clear();
        say(session, review);
        if (asked.atEndOfMonth().isAfter(session.today())) {
            session.say(asked + (asked.atDay(1).isAfter(session.today()) ? " has not begun." : " is not over."));
        }
        if (history.sets() == 0) {
            session.say("Of what is on record nothing had happened by the end of " + asked + ".");
        }
        if (since != null) {
            Wording.say(session, since.sentence());
        }
        if (page != null) {
            progress.step("writing the page", COUNTED);
            Reports.write(page, () -> MonthPage.write(review, notes, Reports.paper(session), page));
            progress.clear();
            session.say("Written to " + page);
        }
        if (book != null) {
            progress.step("writing the workbook", COUNTED);
            Reports.write(book, () -> MonthWorkbook.write(review, notes, Reports.paper(session), book));
            progress.clear();
            session.say("Written to " + book);
        }
        if (asOf == null) {
            past.note(session, review);
        }
        return Status.DONE;
    }

    private static Map<String, Object> checks(ReleaseExceptions releases) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("sales", releases.sales());
        json.put("unmet", releases.unmet());
        json.put("not_on_record", releases.unknown());
        return json;
    }

    private YearMonth asked() {
        try {
            return YearMonth.parse(month);
        } catch (DateTimeException e) {
            throw new Usage("\"" + month + "\" is not a month; write it as in 2026-02");
        }
    }

    private static void say(Session session, MonthReview review) {
        session.say(review.month() + ": " + line(review.now()) + " ("
                + review.before().month() + ": " + line(review.before()) + ")");
    }

    private static String line(MonthFigures m) {
        var row = m.counted();
        return Plural.of(row.decided(), "set") + " decided, " + Digits.grouped(row.saved()) + " saved"
                + (row.decided() == 0
                        ? ""
                        : String.format(java.util.Locale.ROOT, ", yield %.2f", (double) row.saved() / row.decided()));
    }

    private static Map<String, Object> json(MonthChange change, List<Cause> causes) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("month", change.month().toString());
        json.put("now", figures(change.now()));
        json.put("before", figures(change.before()));
        Kitagawa split = change.split();
        json.put("change", split == null ? null : split.change());
        json.put("mix_effect", split == null ? null : split.mix());
        json.put("rate_effect", split == null ? null : split.rate());
        List<Map<String, Object>> contributors = new ArrayList<>();
        for (MonthChange.Contributor c : change.contributors()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("family", c.family());
            one.put("fault", c.fault());
            one.put("mix", c.mix());
            one.put("rate", c.rate());
            contributors.add(one);
        }
        json.put("contributors", contributors);
        MonthChange.Chart chart = change.chart();
        Map<String, Object> limits = new LinkedHashMap<>();
        if (chart != null) {
            limits.put("centre", chart.centre());
            limits.put("low", chart.low());
            limits.put("high", chart.high());
            limits.put("sigma_z", chart.sigmaZ());
            limits.put("months", chart.months());
        }
        json.put("chart", chart == null ? null : limits);
        json.put("signal", chart != null && chart.signal());
        json.put("causes", causes.stream().map(MonthCommand::cause).toList());
        return json;
    }

    /** Mix and rate by supplier; none where one of the two months decided nothing. */
    private static List<Map<String, Object>> suppliers(ChangeSplit split) {
        List<Map<String, Object>> suppliers = new ArrayList<>();
        for (ChangeSplit.Cell cell : Double.isNaN(split.mix()) ? List.<ChangeSplit.Cell>of() : split.cells()) {
            Map<String, Object> one = new LinkedHashMap<>();
            one.put("supplier", cell.keys().get(0));
            one.put("mix", cell.mix());
            one.put("rate", cell.rate());
            suppliers.add(one);
        }
        return suppliers;
    }

    private static Map<String, Object> cause(Cause cause) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("cause", cause.kind().code());
        json.put("what", cause.what());
        json.put("direction", cause.up() ? "up" : "down");
        json.put("effect", cause.effect());
        json.put("p", cause.p());
        json.put("p_adjusted", cause.adjusted());
        json.put("stands_out", cause.standsOut());
        json.put("tried", cause.tried());
        return json;
    }

    private static Map<String, Object> figures(YieldRow row) {
        Map<String, Object> json = new LinkedHashMap<>();
        json.put("decided", row.decided());
        json.put("saved", row.saved());
        json.put("yield", row.raw());
        json.put("yield_low", row.rawLow());
        json.put("yield_high", row.rawHigh());
        json.put("margin_per_set", row.marginPerSet());
        return json;
    }
}
