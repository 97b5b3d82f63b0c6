package org.salvedge.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import java.util.List;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.HindsightReport;
import org.salvedge.report.HindsightWorkbook;
import org.salvedge.report.Table;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.Bid;
import org.salvedge.shop.History;
import org.salvedge.shop.Part;
import org.salvedge.shop.Settings;
import org.salvedge.worth.HeldLot;
import org.salvedge.worth.Hindsight;
import org.salvedge.worth.HindsightVerdict;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;

/** Now and then: whether what {@code worth} says can be trusted. */
@picocli.CommandLine.Command(
        description = "Show for each finished lot what worth would have said on the day before, and what came of it.",
        footer = {
            "",
            "Example: salvedge hindsight --last 20. A lot is finished when none of its sets is here any more and its last sale",
            "is 90 days old. Each estimate is what `worth --as-of D-1 --on D` says for the sets that its seller listed."
        })
final class HindsightCommand extends Command {
    @Option(names = "--last", paramLabel = "N", description = "Only the latest N finished lots (default: all).")
    @Nullable
    Integer last;

    @Option(
            names = "--as-of",
            paramLabel = "DATE",
            description = "Only what had happened and had been recorded by that day's end.")
    @Nullable
    LocalDate asOf;

    @Option(names = "--xlsx", paramLabel = "FILE", description = "Write a workbook with charts of the calibration.")
    @Nullable
    Path xlsx;

    @Option(names = "--format", paramLabel = "table|csv|json", description = "table (default), csv or json.")
    Format format = Format.TABLE;

    @Mixin
    Overrides overrides = new Overrides();

    @Mixin
    DrawOptions drawing = new DrawOptions();

    @Override
    int run(Session session) {
        if (last != null && last < 1) {
            throw new Usage("--last: " + last + " is not at least 1");
        }
        overrides.apply(session);
        Settings settings = session.shop().settings();
        drawing.draws(settings);
        session.shop().requireThere();
        List<HeldLot> lots = lots(session, settings);
        HindsightVerdict verdict = HindsightVerdict.of(lots);
        if (xlsx != null) {
            Path file = Reports.target(session, "--xlsx", xlsx, ".xlsx");
            Reports.write(file, () -> HindsightWorkbook.write(lots, verdict, Reports.paper(session), file));
            verdict.words().forEach(session::say);
            session.say("Written to " + file);
            return Status.DONE;
        }
        if (format == Format.JSON) {
            session.json(HindsightReport.json(lots, verdict));
        } else {
            Table table = HindsightReport.table(lots, verdict);
            session.print(table, format);
        }
        return Status.DONE;
    }

    private List<HeldLot> lots(Session session, Settings settings) {
        try (Ledger ledger = session.shop().read();
                ProgressLine progress = new ProgressLine(session.surroundings())) {
            LocalDate today = asOf == null ? session.today() : asOf;
            History now = ledger.history(asOf == null ? AsOf.NOW : AsOf.endOf(asOf), Ledger.Detail.FULL);
            Hindsight hindsight = new Hindsight(now, today, settings, ledger.all(Bid.class));
            return hindsight.lots(
                    past(ledger),
                    last == null ? Integer.MAX_VALUE : last,
                    drawing.draws(settings),
                    drawing.seed(settings),
                    (done, of) -> progress.step("lot " + done + " of " + of, (double) done / of));
        }
    }

    private static Hindsight.PastRecord past(Ledger ledger) {
        return new Hindsight.PastRecord() {
            @Override
            public History upTo(LocalDate day) {
                return ledger.history(AsOf.endOf(day), Ledger.Detail.FULL);
            }

            @Override
            public List<Part> parts(LocalDate day) {
                return ledger.parts(AsOf.endOf(day));
            }
        };
    }
}
