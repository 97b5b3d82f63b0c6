package org.salvedge.yield;

import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import org.salvedge.ledger.Ledger;
import org.salvedge.ledger.Progress;
import org.salvedge.shop.AsOf;
import org.salvedge.shop.Fact;
import org.salvedge.shop.History;
import org.salvedge.shop.Settings;

/** Facts by way of a real ledger and a real history package. */
public final class Packages {
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2030-01-01T00:00:00Z"), ZoneOffset.UTC);
    private static final Settings SETTINGS = Settings.defaults(MessyShop.EUR, ZoneOffset.UTC);

    private Packages() {}

    /** Puts facts on record and exports them to a package. */
    static void write(List<Fact> facts, Path folder, Path to) {
        try (Ledger ledger = Ledger.create(folder.resolve("recorded.db"), SETTINGS, CLOCK)) {
            ledger.record(facts);
            ledger.exportPackage(to, Progress.NONE);
        }
    }

    /** Imports a package into a shop of its own. */
    static History read(Path folder, Path from) {
        try (Ledger ledger = Ledger.create(folder.resolve("imported.db"), SETTINGS, CLOCK)) {
            ledger.importPackage(from, Progress.NONE);
            return ledger.history(AsOf.NOW, Ledger.Detail.FULL);
        }
    }

    /** Puts facts on record and reads them back. */
    public static History history(List<Fact> facts, Path folder) {
        try (Ledger ledger = Ledger.create(folder.resolve("recorded.db"), SETTINGS, CLOCK)) {
            ledger.record(facts);
            return ledger.history(AsOf.NOW, Ledger.Detail.FULL);
        }
    }
}
