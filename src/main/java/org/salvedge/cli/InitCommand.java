package org.salvedge.cli;

import java.io.IOException;
import java.io.UncheckedIOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.DateTimeException;
import java.time.ZoneId;
import java.util.Currency;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Ledger;
import org.salvedge.shop.Money;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;
import org.salvedge.shop.SettingsTemplate;
import org.salvedge.shop.SettingsText;
import picocli.CommandLine.Option;

/** First day: makes a shop. */
@picocli.CommandLine.Command(
        description = "Make a shop here: shop.toml with comments, lots/, reports/ and an empty ledger.",
        footer = {
            "",
            "Before the first set is opened: mains and backlight supplies hold a dangerous charge after unplugging; panels are"
                    + " glass; electrostatic discharge kills drivers; cold-cathode tubes in old sets contain mercury; swollen or"
                    + " leaking parts are waste, and waste electrical equipment has its own law. Local codes and licensed"
                    + " practice come first."
        })
final class InitCommand extends Command {
    @Option(
            names = "--currency",
            paramLabel = "CODE",
            description = "Currency of the books by ISO 4217 (default: EUR).")
    String currency = "EUR";

    @Option(
            names = "--zone",
            paramLabel = "ZONE",
            description = "Time zone of the shop's days, as in Europe/Berlin (default: the machine's).")
    @Nullable
    String zone;

    @Override
    int run(Session session) {
        ShopFolder shop = session.shop();
        if (shop.exists()) {
            throw new Refused("there is a shop here already: " + shop.ledgerFile());
        }
        Currency book = currency();
        ZoneId days = zone(session);
        boolean writeSettings = !Files.exists(shop.settingsFile());
        String text = SettingsTemplate.of(book, days, zone != null);
        Settings settings = writeSettings
                ? SettingsText.parse(
                        text, "shop.toml", session.surroundings().clock().getZone())
                : shop.settings();
        try {
            for (Path folder : new Path[] {shop.folder(), shop.lots(), shop.reports()}) {
                Files.createDirectories(folder);
            }
            if (writeSettings) {
                Files.writeString(shop.settingsFile(), text);
            }
        } catch (IOException e) {
            throw new UncheckedIOException(e);
        }
        Ledger.create(shop.ledgerFile(), settings, session.surroundings().clock())
                .close();
        session.say("A shop in " + shop.folder() + ", books in " + settings.currency() + ".");
        session.say(
                writeSettings
                        ? "Settings, each with what it does: " + shop.settingsFile()
                        : "Settings as they were in " + shop.settingsFile());
        session.say("Next: salvedge preview MANIFEST, or salvedge import DIR to move in with a history.");
        return Status.DONE;
    }

    private Currency currency() {
        try {
            Currency book = Currency.getInstance(currency);
            Money.zero(book);
            return book;
        } catch (IllegalArgumentException e) {
            throw new Usage("--currency: \"" + currency + "\" is not a currency of ISO 4217; write it as in EUR");
        }
    }

    private ZoneId zone(Session session) {
        try {
            return zone == null ? session.surroundings().clock().getZone() : ZoneId.of(zone);
        } catch (DateTimeException e) {
            throw new Usage("--zone: \"" + zone + "\" is not a time zone; write it as in Europe/Berlin");
        }
    }
}
