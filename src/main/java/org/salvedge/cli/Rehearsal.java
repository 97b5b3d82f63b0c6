package org.salvedge.cli;

import java.io.BufferedReader;
import java.io.IOException;
import java.io.PrintWriter;
import java.io.Reader;
import java.io.StringWriter;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.LocalDate;
import java.time.ZoneId;
import java.time.ZoneOffset;
import java.util.ArrayList;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.stream.Stream;
import org.salvedge.ledger.Ledger;
import org.salvedge.report.Screen;
import org.salvedge.shop.Attempt;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Money;
import org.salvedge.shop.Quantity;
import org.salvedge.shop.Settings;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/**
 * Run once by the launcher after a build, into a folder: writes the help texts that the launcher prints itself, keeps the
 * database's native library unpacked, and goes through the everyday commands in a throw-away shop, so that their classes can
 * be archived.
 */
public final class Rehearsal {
    private static final Currency EUR = Currency.getInstance("EUR");
    private static final String NATIVE = "libsqlitejdbc";
    private static final int TURNS = 12;

    private static final String LIST = """
            Model,Size,Condition,Price
            KX-55A,55,lines on screen,120.00
            KX-55B,55,not tested,90.00
            """;
    private static final List<String> EVERYDAY = List.of(
            "preview list.csv",
            "worth list.csv --draws 200",
            "hindsight --draws 200",
            "bid list.csv --limit 200",
            "receive list.csv --lot L2 --supplier Northquay --price 100",
            "attempt L1-001 --fault row_drive --fix contact_mask --fix-minutes 30 --passed yes --safety-tested",
            "attempt L1-001 --fualt row_drive",
            "queue",
            "place L1-002 bay",
            "wait L1-002 strips",
            "offer L1-001 120",
            "sell L1-001 --gross 120 --owner-data-reset --disclosed",
            "comeback L1-001",
            "strip L1-002 --gross 20",
            "amend 1 --freight 20 --why slip",
            "show L1-001",
            "show L1",
            "yield",
            "yield --format json",
            "month 1970-01",
            "undo --why slip",
            "audit",
            "completion labels L1",
            "export out",
            "show nobody");

    private final Path folder;

    private Rehearsal(Path folder) {
        this.folder = folder;
    }

    /** @param args the folder */
    public static void main(String[] args) throws IOException, ClassNotFoundException {
        new SystemTerminal(null, new BufferedReader(Reader.nullReader()), Map.of(), 0).screen();
        Class.forName(Main.class.getName());
        Rehearsal rehearsal = new Rehearsal(Path.of(args[0]).toAbsolutePath());
        rehearsal.help();
        rehearsal.shop();
        rehearsal.keepNative();
        System.exit(0);
    }

    private void help() throws IOException {
        Path help = Files.createDirectories(folder.resolve("help"));
        Files.writeString(help.resolve("salvedge"), Overview.text());
        Files.writeString(help.resolve("version"), Version.text());
        for (String name : Commands.names()) {
            Command command = Commands.create(name);
            if (command != null) {
                Files.writeString(help.resolve(name), CommandLines.help(command, name));
            }
        }
    }

    private void shop() throws IOException {
        Path shop = Files.createDirectories(folder.resolve("shop"));
        Files.writeString(shop.resolve("list.csv"), LIST);
        run(shop, List.of("init"));
        book(shop.resolve("shop.db"));
        for (String line : EVERYDAY) {
            int status = run(shop, List.of(line.split(" ")));
            System.out.println(status + " " + line);
        }
        keptFit(shop);
        delete(shop);
    }

    /** Written and read back, which other shops of this size do without. */
    private static void keptFit(Path folder) {
        Session session = new Session(surroundings(folder, new PrintWriter(new StringWriter())), folder);
        try (Ledger ledger = session.shop().read()) {
            for (int i = 0; i < 2; i++) {
                KeptFit.of(LocalDate.EPOCH, ledger, session, session.shop().settings(), 1);
            }
        }
    }

    private static void book(Path file) {
        Settings settings = Settings.defaults(EUR, ZoneOffset.UTC);
        LocalDate day = LocalDate.EPOCH;
        LotId lot = new LotId("L1");
        Money price = new Money(10_000, EUR);
        List<Fact> facts = new ArrayList<>(List.of(
                new Lot(lot, "Northquay", day, EUR, null, price, null, null, null, null, day, null, null),
                TvSet.builder(new UnitId("L1-001"), lot).build(),
                TvSet.builder(new UnitId("L1-002"), lot).build()));
        // As many turns as the table of stop minutes asks for.
        for (int i = 1; i <= TURNS; i++) {
            UnitId unit = new UnitId("L1-1" + (i + TURNS));
            facts.add(TvSet.builder(unit, lot).model("KX-55A").build());
            facts.add(new Attempt(
                    i,
                    unit,
                    day.atStartOfDay(),
                    null,
                    new Fault("row_drive"),
                    new Fix("contact_mask"),
                    Quantity.parse("5"),
                    Quantity.parse("" + 20 + i),
                    null,
                    i % 3 > 0,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null));
        }
        try (Ledger ledger = Ledger.open(file, settings, Clock.fixed(Instant.EPOCH, ZoneOffset.UTC))) {
            ledger.record(facts);
        }
    }

    private static int run(Path shop, List<String> command) {
        StringWriter said = new StringWriter();
        PrintWriter writer = new PrintWriter(said);
        int status = new Program(surroundings(shop, writer)).run(command.toArray(String[]::new));
        System.out.println(said);
        return status;
    }

    private static Surroundings surroundings(Path shop, PrintWriter writer) {
        return new Surroundings(
                Clock.system(ZoneId.systemDefault()),
                writer,
                writer,
                shop,
                Map.of(),
                new SilentTerminal(false, Screen.plain()));
    }

    private static void delete(Path shop) throws IOException {
        if (!Files.exists(shop)) {
            return;
        }
        try (Stream<Path> all = Files.walk(shop)) {
            for (Path path : all.sorted(java.util.Comparator.reverseOrder()).toList()) {
                Files.delete(path);
            }
        }
    }

    /** The library that is loaded now would be deleted at the end; its name holds a number of its own. */
    private void keepNative() throws IOException {
        Path natives = folder.resolve("native");
        if (!Files.isDirectory(natives)) {
            return;
        }
        try (Stream<Path> all = Files.list(natives)) {
            Path loaded = all.filter(p -> p.getFileName().toString().matches(".*" + NATIVE + "\\.[a-z]+"))
                    .findFirst()
                    .orElse(null);
            if (loaded != null) {
                String name = loaded.getFileName().toString();
                Files.copy(loaded, natives.resolve(name.substring(name.indexOf(NATIVE))));
            }
        }
    }
}
