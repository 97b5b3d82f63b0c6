package org.salvedge.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import java.util.concurrent.CompletableFuture;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.YieldReport;
import org.salvedge.report.YieldWorkbook;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.History;
import org.salvedge.yield.Key;
import org.salvedge.yield.Outcomes;
import org.salvedge.yield.YieldTable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Any time: what the bench makes of the sets. */
@picocli.CommandLine.Command(
        description = "Show yield, time per fix and margin by model family and fix, or by other keys.",
        footer = {
            "",
            "Keys: family, maker, model, inches, supplier, lot, claimed, grade, month, fault, fix, technician. With a key of the",
            "bench among them (fault, fix, technician) a row counts turns at the bench, else sets.",
            "",
            "Example: salvedge yield --by supplier"
        })
final class YieldCommand extends Command {
    /** Share of the time that goes into reading the record. */
    private static final double READ = 0.7;

    @Option(
            names = "--by",
            paramLabel = "KEY,...",
            description = "Keys of the rows (default: family,fix).",
            defaultValue = "family,fix")
    String by = "family,fix";

    @Option(
            names = "--as-of",
            paramLabel = "DATE",
            description = "Only what had happened and had been recorded by that day's end.")
    @Nullable
    LocalDate asOf;

    @Option(names = "--format", paramLabel = "table|csv|json", description = "table (default), csv or json.")
    Format format = Format.TABLE;

    @Option(
            names = "--xlsx",
            paramLabel = "FILE",
            description = "Write the table as a workbook, with charts and definitions.")
    @Nullable
    Path xlsx;

    @Mixin
    Overrides overrides = new Overrides();

    @Override
    int run(Session session) {
        List<Key> keys = Key.parse(by);
        overrides.apply(session);
        session.shop().requireThere();
        CompletableFuture<Void> tables = YieldTable.prepare();
        History history;
        YieldTable yields;
        Outcomes outcomes;
        try (ProgressLine progress = new ProgressLine(session.surroundings())) {
            try (Ledger ledger = session.shop().read()) {
                history = ledger.history(
                        asOf == null ? AsOf.NOW : AsOf.endOf(asOf), Ledger.Detail.COUNTS, progress.part(0, READ));
            }
            progress.step("counting", READ);
            outcomes = Outcomes.of(history, session.shop().settings().labourRate());
            tables.join();
            yields = YieldTable.of(outcomes, keys);
        }
        if (xlsx != null) {
            Path file = Reports.target(session, "--xlsx", xlsx, ".xlsx");
            YieldTable whole = YieldTable.of(outcomes, List.of());
            Reports.write(file, () -> YieldWorkbook.write(yields, whole, Reports.paper(session), file));
            session.say("Written to " + file);
            return Status.DONE;
        }
        session.print(YieldReport.table(yields), format);
        if (yields.rows().isEmpty() && format == Format.TABLE) {
            session.remark("No set is on record" + (asOf == null ? "" : " by " + asOf)
                    + ". `salvedge receive` books a lot, `salvedge import` moves in with a history.");
        }
        return Status.DONE;
    }
}
