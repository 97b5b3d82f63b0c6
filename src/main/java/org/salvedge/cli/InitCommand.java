package org.salvedge.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.ArrayDeque;
import java.util.Currency;
import java.util.Deque;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Ledger;
import org.salvedge.ledger.PackageSettings;
import org.salvedge.report.WholeFile;
import org.salvedge.shop.Basis;
import org.salvedge.shop.Money;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;
import org.salvedge.shop.SettingsTemplate;
import org.salvedge.shop.SettingsText;
import picocli.CommandLine.Option;

/** First day: makes a shop. */
@picocli.CommandLine.Command(
        description = "Make a shop here: shop.toml with comments, lots/, reports/ and an empty ledger.",
        footer = {"", Cautions.TEXT, "", "Example: salvedge init --currency EUR --zone Europe/Berlin"})
final class InitCommand extends Command {
    private static final Currency EUR = Currency.getInstance("EUR");
    private static final PackageSettings NOTHING_KEPT = new PackageSettings(null, null, null, null);

    @Option(
            names = "--currency",
            paramLabel = "CODE",
            description = "Currency of the books by ISO 4217 (default: EUR).")
    @Nullable
    String currency;

    @Option(
            names = "--zone",
            paramLabel = "ZONE",
            description = "Time zone of the shop's days, as in Europe/Berlin (default: the machine's).")
    @Nullable
    String zone;

    @Option(
            names = "--from",
            paramLabel = "DIR",
            description = "Take currency, zone, labour rate and basis from a history package that is to be imported.")
    @Nullable
    Path from;

    @Override
    int run(Session session) {
        ShopFolder shop = session.shop();
        if (shop.exists()) {
            throw new Refused("there is a shop here already: " + shop.ledgerFile());
        }
        boolean writeSettings = !Files.exists(shop.settingsFile());
        String text = settings(session);
        Settings settings = writeSettings
                ? SettingsText.parse(
                        text, "shop.toml", session.surroundings().clock().getZone())
                : shop.settings();
        if (!writeSettings && (from != null || zone != null || currency != null)) {
            throw new Refused("there is a shop.toml here already, and it counts: " + shop.settingsFile()
                    + ". Change it there, or leave --currency, --zone and --from out");
        }
        Made made = new Made();
        try {
            for (Path folder : new Path[] {shop.folder(), shop.lots(), shop.reports()}) {
                made.folder(folder);
            }
            if (writeSettings) {
                made.file(shop.settingsFile(), text);
            }
            Ledger.create(shop.ledgerFile(), settings, session.surroundings().clock())
                    .close();
            made.keep();
        } finally {
            made.takeBack();
        }
        session.say("A shop in " + shop.folder() + ", books in " + settings.currency() + ".");
        session.say(
                writeSettings
                        ? "Settings, each with what it does: " + shop.settingsFile()
                        : "Settings as they were in " + shop.settingsFile());
        session.say("Next: salvedge preview MANIFEST, or salvedge import DIR to move in with a history.");
        return Status.DONE;
    }

    /** What was made on the way to a shop, to be taken back where it ends before there is one. */
    private static final class Made {
        private final Deque<Path> paths = new ArrayDeque<>();

        void folder(Path folder) {
            Deque<Path> missing = new ArrayDeque<>();
            for (Path p = folder.toAbsolutePath(); p != null && !Files.exists(p); p = p.getParent()) {
                missing.push(p);
            }
            try {
                Files.createDirectories(folder);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            } finally {
                missing.forEach(paths::push);
            }
        }

        void file(Path file, String text) {
            try {
                WholeFile.write(file, out -> out.write(text.getBytes(StandardCharsets.UTF_8)));
                paths.push(file);
            } catch (IOException e) {
                throw new UncheckedIOException(e);
            }
        }

        void keep() {
            paths.clear();
        }

        void takeBack() {
            for (Path path : paths) {
                try {
                    Files.deleteIfExists(path);
                } catch (IOException e) {
                    // Somebody put something there meanwhile: it stays, and the failure that led here is told.
                }
            }
        }
    }

    private String settings(Session session) {
        PackageSettings kept = from == null ? NOTHING_KEPT : Ledger.packageSettings(session.file(from));
        Currency book = currency != null ? currency(currency) : kept.currency() != null ? kept.currency() : EUR;
        ZoneId machine = session.surroundings().clock().getZone();
        ZoneId days = zone != null ? zone(zone) : kept.zone() != null ? kept.zone() : machine;
        return SettingsTemplate.of(
                book,
                days,
                zone != null || kept.zone() != null,
                kept.labourRate() == null ? Settings.LABOUR_RATE : kept.labourRate(),
                kept.basis() == null || kept.basis() == Basis.GIVEN ? Basis.EQUAL : kept.basis());
    }

    private static Currency currency(String code) {
        try {
            Currency book = Currency.getInstance(code);
            Money.zero(book);
            return book;
        } catch (IllegalArgumentException e) {
            throw new Usage("--currency: \"" + code + "\" is not a currency of ISO 4217; write it as in EUR");
        }
    }

    private static ZoneId zone(String name) {
        try {
            return ZoneId.of(name);
        } catch (DateTimeException e) {
            throw new Usage("--zone: \"" + name + "\" is not a time zone; write it as in Europe/Berlin");
        }
    }
}
