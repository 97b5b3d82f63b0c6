package org.salvedge.cli;

import java.io.IOException;
import java.io.InputStream;
import java.io.PrintWriter;
import java.io.StringWriter;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.Objects;
import java.util.stream.Stream;
import org.salvedge.demo.DemoShop;
import org.salvedge.ledger.Ledger;
import org.salvedge.ledger.Progress;
import org.salvedge.shop.Refused;
import picocli.CommandLine.Parameters;

/** A newcomer: builds an invented shop and runs the whole job on it, by the commands that anybody would use. */
@picocli.CommandLine.Command(
        description = "Build an invented shop in an empty folder, run the whole job on it, and say what to open.",
        footer = {"", "Example: salvedge demo /tmp/shop. Makers, models, suppliers and people of the demo do not exist."
        })
final class DemoCommand extends Command {
    private static final long SEED = 1;

    /** The sellers' lists that the demo receives, and on what terms; the last list stays for preview and worth. */
    private static final List<Purchase> PURCHASES = List.of(
            new Purchase("northquay-0108.xlsx", "L0101", "Northquay", "2026-01-08", "1480", List.of()),
            new Purchase("greywharf-0115.csv", "L0102", "Greywharf", "2026-01-15", "1120", List.of("--missing", "12")),
            new Purchase("eastmoor-0122.xls", "L0103", "Eastmoor", "2026-01-22", "1590", List.of()),
            new Purchase("lindmark-0203.xlsx", "L0104", "Lindmark", "2026-02-03", "1370", List.of("--basis", "area")),
            new Purchase("northquay-0210.csv", "L0105", "Northquay", "2026-02-10", "1210", List.of("--extra", "MQ65S")),
            new Purchase("tidewell-0217.xlsx", "L0106", "Tidewell", "2026-02-17", "980", List.of()));

    private static final String NEXT = "harbour-0312.xlsx";

    private record Purchase(String file, String lot, String supplier, String on, String price, List<String> more) {}

    @Parameters(paramLabel = "DIR", description = "An empty folder, or one that is not there yet.")
    Path folder = Path.of("");

    @Override
    int run(Session session) {
        Path place = session.file(folder);
        requireEmpty(place);
        Session quiet = new Session(session.surroundings(), place);
        try {
            build(session, quiet, place);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        tell(session, place);
        return Status.DONE;
    }

    private static void requireEmpty(Path place) {
        try {
            if (Files.exists(place)) {
                try (Stream<Path> inside = Files.isDirectory(place) ? Files.list(place) : Stream.of(place)) {
                    if (inside.findAny().isPresent()) {
                        throw new Refused(place + " is not empty. Give a folder that is empty or not there yet");
                    }
                }
            }
            Files.createDirectories(place);
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
    }

    private static void build(Session session, Session quiet, Path place) throws IOException {
        step(session, place, List.of("init", "--currency", "EUR", "--zone", "UTC"));
        session.remark("writing two years of an invented shop as a history package ...");
        Path history = place.resolve("history");
        writeHistory(quiet, history);
        step(session, place, List.of("import", history.toString()));
        Path inbox = Files.createDirectories(place.resolve("inbox"));
        for (Purchase p : PURCHASES) {
            List<String> receive = new ArrayList<>(List.of(
                    "receive",
                    copy(p.file, inbox).toString(),
                    "--lot",
                    p.lot,
                    "--supplier",
                    p.supplier,
                    "--on",
                    p.on,
                    "--price",
                    p.price,
                    "--premium-pct",
                    "12",
                    "--freight",
                    "240"));
            receive.addAll(p.more);
            step(session, place, receive);
        }
        copy(NEXT, inbox);
        step(session, place, List.of("yield", "--by", "family,fix", "--xlsx", "reports/yield.xlsx"));
        step(session, place, List.of("month", "2026-02"));
        step(session, place, worth());
        step(session, place, List.of("audit"));
    }

    /** By way of a ledger of its own, so that the package is what any shop would export. */
    private static void writeHistory(Session quiet, Path history) throws IOException {
        Path work = Files.createTempDirectory("salvedge-demo");
        Path file = work.resolve("shop.db");
        try (Ledger ledger = Ledger.create(
                file, quiet.shop().settings(), quiet.surroundings().clock())) {
            ledger.record(DemoShop.history(SEED));
            ledger.exportPackage(history, Progress.NONE);
        } finally {
            try (Stream<Path> all = Files.walk(work)) {
                for (Path p : all.sorted(java.util.Comparator.reverseOrder()).toList()) {
                    Files.delete(p);
                }
            }
        }
    }

    private static List<String> worth() {
        return List.of(
                "worth",
                "inbox/" + NEXT,
                "--supplier",
                "Tidewell",
                "--on",
                "2026-03-12",
                "--premium-pct",
                "12",
                "--freight",
                "240");
    }

    private static Path copy(String name, Path inbox) throws IOException {
        Path to = inbox.resolve(name);
        try (InputStream in = Objects.requireNonNull(DemoCommand.class.getResourceAsStream("/lots/" + name))) {
            Files.copy(in, to);
        }
        return to;
    }

    /** Runs a command as a user would, and shows it; what it prints is kept back. */
    private static void step(Session session, Path place, List<String> command) {
        if (Commands.create(command.get(0)) == null) {
            return;
        }
        session.remark("$ salvedge " + String.join(" ", command).replace(place + "/", ""));
        StringWriter said = new StringWriter();
        PrintWriter writer = new PrintWriter(said);
        Surroundings s = session.surroundings();
        Surroundings inside = new Surroundings(s.clock(), writer, writer, place, java.util.Map.of(), s.terminal());
        int status = new Program(inside).run(command.toArray(String[]::new));
        if (status != Status.DONE && status != Status.PROBLEMS) {
            throw new IllegalStateException("the demo's own step failed with status " + status + ": " + said);
        }
    }

    private static void tell(Session session, Path place) {
        session.say("An invented shop stands in " + place
                + ": 62 lots, about 4 400 sets, two years. What to look at next:");
        session.say("  cd " + Wording.typed(place.toString()));
        String called = session.surroundings().environment().get("SALVEDGE_CALLED");
        if (called != null && !called.isBlank()) {
            session.say("  alias salvedge=" + Wording.typed(called));
        }
        session.say("  salvedge " + String.join(" ", worth()));
        session.say("                              a lot that is on sale: what it should bring, and the most to bid");
        session.say("  salvedge hindsight          whether such answers held, lot by lot");
        session.say(
                "  salvedge yield              what the bench makes of each family, fix by fix; --by supplier: whose lots pay");
        session.say("  salvedge show L0040         a lot and what came of its sets");
        session.say(
                "  salvedge attempt L0101-001 --fault backlight --fix led_strips --fix-minutes 65 --passed yes --grade A");
        session.say("In a spreadsheet program:");
        session.say("  reports/                    the month's review and the yield workbook");
        session.say("  history/                    the same record as CSV, ready for any other tool");
    }
}
