package org.salvedge.cli;

import java.io.IOException;
import java.nio.charset.CharacterCodingException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.ZoneId;
import java.util.Currency;
import org.jspecify.annotations.Nullable;
import org.salvedge.ledger.Ledger;
import org.salvedge.ledger.LedgerFailure;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;
import org.salvedge.shop.SettingsText;

/** A shop's folder: settings, ledger, manifests as received, reports. Nothing is made here unless a command says so. */
final class ShopFolder {
    private static final String SETTINGS = "shop.toml";
    private static final String LEDGER = "shop.db";

    private final Path folder;
    private final Clock clock;
    private @Nullable Settings settings;

    ShopFolder(Path folder, Clock clock) {
        this.folder = folder;
        this.clock = clock;
    }

    Path folder() {
        return folder;
    }

    Path settingsFile() {
        return folder.resolve(SETTINGS);
    }

    Path ledgerFile() {
        return folder.resolve(LEDGER);
    }

    Path lots() {
        return folder.resolve("lots");
    }

    Path reports() {
        return folder.resolve("reports");
    }

    boolean exists() {
        return Files.exists(ledgerFile());
    }

    /** The settings in force: those of {@code shop.toml}, or the defaults where there is none. */
    Settings settings() {
        if (settings == null) {
            settings = readSettings();
        }
        return settings;
    }

    /** For one run: settings that options override. */
    void override(Settings changed) {
        settings = changed;
    }

    private Settings readSettings() {
        Path file = settingsFile();
        ZoneId machine = clock.getZone();
        if (!Files.exists(file)) {
            return Settings.defaults(Currency.getInstance("EUR"), machine);
        }
        try {
            return SettingsText.parse(Files.readString(file), SETTINGS, machine);
        } catch (CharacterCodingException e) {
            throw new Refused(SETTINGS + ": not UTF-8 text. Save it as UTF-8");
        } catch (IOException e) {
            throw new LedgerFailure(file + " cannot be read. Check its permissions", e);
        }
    }

    /** Opens the ledger to read and write. */
    Ledger open() {
        return Ledger.open(existing(), settings(), clock);
    }

    /** Opens the ledger to read; works in a folder that cannot be written. */
    Ledger read() {
        return Ledger.openForReading(existing(), settings());
    }

    private Path existing() {
        requireThere();
        return ledgerFile();
    }

    /** @throws Refused if there is no shop */
    void requireThere() {
        if (!exists()) {
            throw new Refused("no shop here: salvedge init (looked in " + folder
                    + "; --shop DIR or SALVEDGE_SHOP names another)");
        }
    }
}
