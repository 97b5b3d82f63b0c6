package org.salvedge.cli;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.salvedge.manifest.Manifest;
import org.salvedge.report.BidWorkbook;
import org.salvedge.report.ChoiceReport;
import org.salvedge.report.LookReport;
import org.salvedge.report.Plural;
import org.salvedge.report.WorthJson;
import org.salvedge.report.WorthText;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;
import org.salvedge.worth.Appraisal;
import org.salvedge.worth.Candidate;
import org.salvedge.worth.Choice;
import org.salvedge.worth.Looking;
import org.salvedge.worth.PastBids;
import org.salvedge.worth.Question;
import org.salvedge.worth.ShopModel;
import org.salvedge.worth.turn.StopTable;
import picocli.CommandLine.Mixin;
import picocli.CommandLine.Option;
import picocli.CommandLine.Parameters;

/** Before the bid: what a lot is worth, or which of several to go for. */
@picocli.CommandLine.Command(
        description = "Say what a seller's lot should bring, and the most to bid for it. Changes nothing.",
        footer = {
            "",
            "Example: salvedge worth lots/harbour-0312.xlsx --supplier Northquay --premium-pct 12 --freight 300",
            "The answer rests on the shop's own record up to the day before --on, or up to --as-of.",
            "",
            "Several lots: salvedge worth a.xlsx b.csv --supplier Northquay --supplier Eastmoor --cash 4000 --hours 120 says which",
            "to go for. --supplier and --price: one for all, or one for each in the order of the files."
        })
final class WorthCommand extends Command {
    @Parameters(arity = "1..*", paramLabel = "FILE", description = "The seller's list; or several of them.")
    List<Path> files = new ArrayList<>();

    @Option(names = "--supplier", paramLabel = "NAME", description = "Who sells it (default: a supplier never seen).")
    List<String> suppliers = new ArrayList<>();

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
    List<Amount> prices = new ArrayList<>();

    @Mixin
    TermsOptions terms = new TermsOptions();

    @Option(names = "--cash", paramLabel = "AMOUNT", description = "Choose lots whose outlays are at most this.")
    @Nullable
    Amount cash;

    @Option(names = "--hours", paramLabel = "H", description = "Choose lots whose bench hours are at most this.")
    @Nullable
    BigDecimal hours;

    @Option(
            names = "--inspect",
            paramLabel = "K",
            description = "Say what looking at K sets before the bid is worth, and which to look at first.")
    @Nullable
    Integer inspect;

    @Option(
            names = "--found",
            paramLabel = "FILE",
            description = "What was found at some sets: CSV with sheet, line, model, fault, one row a set.")
    @Nullable
    Path found;

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
        overrides.apply(session);
        Settings settings = session.shop().settings();
        boolean several = files.size() > 1 || cash != null || hours != null;
        check(settings, several);
        session.shop().requireThere();
        List<Manifest> manifests = new ArrayList<>();
        for (Path file : files) {
            manifests.add(read(session, file));
        }
        Known known = Known.upTo(asOf == null ? day(session).minusDays(1) : asOf, session, settings);
        List<Appraisal> answers = new ArrayList<>();
        try (ProgressLine progress = new ProgressLine(session.surroundings())) {
            for (int i = 0; i < manifests.size(); i++) {
                progress.step("list " + (i + 1) + " of " + manifests.size(), (double) i / manifests.size());
                answers.add(answer(session, settings, known.model(), manifests.get(i), i));
            }
        }
        if (several) {
            choose(session, manifests, answers);
        } else {
            tell(session, settings, known, manifests.get(0), answers.get(0));
        }
        session.out().flush();
        int status = Status.DONE;
        for (Manifest manifest : manifests) {
            if (!manifest.problems().isEmpty()) {
                session.remark(problems(manifest)
                        + " in the list; what " + (manifest.problems().size() == 1 ? "it touches" : "they touch")
                        + " is not in the answer: salvedge preview "
                        + manifest.file());
                status = Status.PROBLEMS;
            }
        }
        return status;
    }

    private void check(Settings settings, boolean several) {
        if (format == Format.CSV) {
            throw new Usage("--format: worth prints table or json");
        }
        each("--supplier", suppliers.size());
        each("--price", prices.size());
        if (files.size() > Choice.MOST_LOTS) {
            throw new Usage("FILE: " + files.size() + " lists are more than the " + Choice.MOST_LOTS
                    + " that can be weighed against each other");
        }
        if (several && xlsx != null) {
            throw new Usage("--xlsx: a bid sheet is of one list, without --cash and --hours");
        }
        if (several && (inspect != null || found != null)) {
            throw new Usage("--inspect, --found: of one list, without --cash and --hours");
        }
        if (inspect != null && (inspect < 1 || inspect > Looking.MOST_SETS)) {
            throw new Usage("--inspect: " + inspect + " is not between 1 and " + Looking.MOST_SETS);
        }
        if (hours != null && hours.signum() < 0) {
            throw new Usage("--hours: \"" + hours.toPlainString() + "\" must not be negative");
        }
        drawing.draws(settings);
        terms.confidence(settings);
        terms.targetReturn(settings);
    }

    private void each(String option, int given) {
        if (given > 1 && given != files.size()) {
            throw new Usage(option + " is given " + given + " times for " + files.size()
                    + (files.size() == 1 ? " list" : " lists") + "; give it once, or once for each");
        }
    }

    private static <T> @Nullable T of(List<T> given, int list) {
        return given.isEmpty() ? null : given.get(given.size() == 1 ? 0 : list);
    }

    private Manifest read(Session session, Path file) {
        Manifest manifest = SellersList.read(session, file, password);
        if (manifest.sets().isEmpty()) {
            throw new Refused(
                    manifest.file() + " holds no set that could be read, so there is nothing to estimate.",
                    manifest.problems());
        }
        return manifest;
    }

    private LocalDate day(Session session) {
        return on == null ? session.today() : on;
    }

    private Appraisal answer(Session session, Settings settings, ShopModel model, Manifest manifest, int list) {
        String supplier = of(suppliers, list);
        List<Candidate> sets = manifest.sets().stream().map(Candidate::of).toList();
        FoundFile looked = found == null
                ? new FoundFile(sets, Map.of())
                : FoundFile.read(session.file(found), sets, settings.codes().faults());
        Question question = new Question(
                looked.sets(),
                supplier == null ? null : model.supplierAsKnown(supplier),
                day(session),
                drawing.draws(settings),
                drawing.seed(settings));
        return Appraisal.of(
                model,
                question,
                looked.faults(),
                terms.terms(settings),
                terms.confidence(settings),
                terms.targetReturn(settings),
                Amount.orNull(of(prices, list), settings.currency(), "--price"));
    }

    private void tell(Session session, Settings settings, Known known, Manifest manifest, Appraisal answer) {
        PastBids bids = PastBids.of(known.bids(), answer.question().supplier());
        StopTable stops = StopTable.of(known.stops().get(), answer.worth());
        Looking look = inspect == null ? null : Looking.at(known.model(), answer.question(), inspect);
        if (xlsx != null) {
            Path sheet = Reports.target(session, "--xlsx", xlsx, ".xlsx");
            Reports.write(
                    sheet,
                    () -> BidWorkbook.write(
                            answer, settings.labourRate(), from(manifest), Reports.paper(session), sheet));
        }
        if (format == Format.JSON) {
            Map<String, @Nullable Object> json = WorthJson.of(answer, bids, stops);
            if (look != null) {
                json.put("inspect", LookReport.json(answer, look));
            }
            session.json(json);
            return;
        }
        WorthText.of(answer, bids, stops, from(manifest), session.terminal().screen())
                .forEach(session.out()::println); // clean already, but for the colour of headings
        if (look != null) {
            LookReport.words(answer, look).forEach(words -> Wording.say(session, words));
        }
        if (found != null) {
            Wording.say(
                    session,
                    "The answer allows for what was found ("
                            + session.file(found).getFileName()
                            + "), also at the sets not looked at; without --found it is what it was before.");
        }
        if (xlsx != null) {
            session.say("Written to " + session.file(xlsx));
        }
    }

    private void choose(Session session, List<Manifest> manifests, List<Appraisal> answers) {
        Choice choice = Choice.of(
                manifests.stream().map(Manifest::file).toList(),
                answers,
                cash == null ? Double.POSITIVE_INFINITY : cash.number().doubleValue(),
                hours == null ? Double.POSITIVE_INFINITY : hours.doubleValue());
        if (format == Format.JSON) {
            session.json(ChoiceReport.json(choice));
        } else {
            session.print(ChoiceReport.table(choice), format);
        }
    }

    private static String from(Manifest manifest) {
        return "read from " + SellersList.place(manifest)
                + (manifest.problems().isEmpty() ? "" : ", " + problems(manifest) + ": see `preview`");
    }

    private static String problems(Manifest manifest) {
        return Plural.of(manifest.problems().size(), "problem");
    }
}
