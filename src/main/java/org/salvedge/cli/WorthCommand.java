package org.salvedge.cli;

import java.nio.file.Path;
import java.time.LocalDate;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Ledger;
import org.salvedge.manifest.Manifest;
import org.salvedge.manifest.ManifestReader;
import org.salvedge.report.BidWorkbook;
import org.salvedge.report.WorthJson;
import org.salvedge.report.WorthText;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.History;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;
import org.salvedge.worth.Appraisal;
import org.salvedge.worth.Candidate;
import org.salvedge.worth.Question;
import org.salvedge.worth.ShopModel;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Before the bid: what a lot is worth. */
@picocli.CommandLine.Command(
        description = "Say what a seller's lot should bring, and the most to bid for it. Changes nothing.",
        footer = {
            "",
            "Example: salvedge worth lots/harbour-0312.xlsx --supplier Northquay --premium-pct 12 --freight 300",
            "The answer rests on the shop's own record up to the day before --on, or up to --as-of."
        })
final class WorthCommand extends Command {
    @Parameters(paramLabel = "FILE", description = "The seller's list.")
    Path file = Path.of("");

    @Option(names = "--supplier", paramLabel = "NAME", description = "Who sells it (default: a supplier never seen).")
    @Nullable
    String supplier;

    @Option(names = "--on", paramLabel = "DATE", description = "Day of the purchase (default: today).")
    @Nullable
    LocalDate on;

    @Option(
            names = "--as-of",
            paramLabel = "DATE",
            description =
                    "Only what had happened and had been recorded by that day's end (default: the day before --on).")
    @Nullable
    LocalDate asOf;

    @Option(names = "--price", paramLabel = "AMOUNT", description = "Say what this price would mean.")
    @Nullable
    Amount price;

    @Mixin
    TermsOptions terms = new TermsOptions();

    @Mixin
    Overrides overrides = new Overrides();

    @Mixin
    DrawOptions drawing = new DrawOptions();

    @Option(names = "--password", paramLabel = "TEXT", description = "For a protected workbook.")
    @Nullable
    String password;

    @Option(
            names = "--xlsx",
            paramLabel = "FILE",
            description =
                    "Write a bid sheet: a workbook whose price, premium, freight, labour and target may be changed.")
    @Nullable
    Path xlsx;

    @Option(names = "--format", paramLabel = "table|json", description = "table (default) or json.")
    Format format = Format.TABLE;

    @Override
    int run(Session session) {
        if (format == Format.CSV) {
            throw new Usage("--format: worth prints table or json");
        }
        overrides.apply(session);
        Settings settings = session.shop().settings();
        LocalDate day = on == null ? session.today() : on;
        int draws = drawing.draws(settings);
        double confidence = terms.confidence(settings);
        double targetReturn = terms.targetReturn(settings);
        session.shop().requireThere();
        Manifest manifest = read(session, settings);
        ShopModel model = model(session, settings, day);
        Question question = new Question(
                manifest.sets().stream().map(Candidate::of).toList(),
                supplier == null ? null : supplier.strip(),
                day,
                draws,
                drawing.seed(settings));
        Appraisal answer = Appraisal.of(
                model,
                question,
                terms.terms(settings),
                confidence,
                targetReturn,
                Amount.orNull(price, settings.currency(), "--price"));
        if (xlsx != null) {
            Path sheet = session.file(xlsx);
            Reports.write(
                    sheet,
                    () -> BidWorkbook.write(
                            answer, settings.labourRate(), from(manifest), Reports.paper(session), sheet));
        }
        if (format == Format.JSON) {
            session.json(WorthJson.of(answer));
        } else {
            WorthText.of(answer, from(manifest), session.terminal().screen()).forEach(session::say);
            if (xlsx != null) {
                session.say("Written to " + session.file(xlsx));
            }
        }
        if (manifest.problems().isEmpty()) {
            return Status.DONE;
        }
        session.out().flush();
        session.remark(problems(manifest) + " in the list, and what they touch is not in the answer: salvedge preview "
                + manifest.file());
        return Status.PROBLEMS;
    }

    private Manifest read(Session session, Settings settings) {
        Manifest manifest = new ManifestReader(settings).read(session.file(file), password);
        if (manifest.sets().isEmpty()) {
            throw new Refused(
                    manifest.file() + " holds no set that could be read, so there is nothing to estimate.",
                    manifest.problems());
        }
        return manifest;
    }

    private ShopModel model(Session session, Settings settings, LocalDate day) {
        LocalDate until = asOf == null ? day.minusDays(1) : asOf;
        History history;
        try (Ledger ledger = session.shop().read()) {
            history = ledger.history(AsOf.endOf(until), Ledger.Detail.FULL);
        }
        return ShopModel.fit(history, until, settings);
    }

    private static String from(Manifest manifest) {
        String place = manifest.sheet().isEmpty() ? "" : "sheet \"" + manifest.sheet() + "\" of ";
        return "read from " + place + manifest.file()
                + (manifest.problems().isEmpty() ? "" : ", " + problems(manifest) + ": see `preview`");
    }

    private static String problems(Manifest manifest) {
        int n = manifest.problems().size();
        return n == 1 ? "1 problem" : n + " problems";
    }
}
