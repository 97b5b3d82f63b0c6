package org.salvedge.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.salvedge.shop.Facts.EUR;
import static org.salvedge.shop.Facts.attempt;
import static org.salvedge.shop.Facts.comeback;
import static org.salvedge.shop.Facts.day;
import static org.salvedge.shop.Facts.eur;
import static org.salvedge.shop.Facts.exit;
import static org.salvedge.shop.Facts.lot;
import static org.salvedge.shop.Facts.set;
import static org.salvedge.shop.Facts.unit;

import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.time.ZoneOffset;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.shop.Bid;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Fault;
import org.salvedge.shop.Fix;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Offer;
import org.salvedge.shop.Part;
import org.salvedge.shop.PartKind;
import org.salvedge.shop.Recipe;
import org.salvedge.shop.Residual;
import org.salvedge.shop.Settings;
import org.salvedge.shop.Side;

/** Checksums that stand in shops' files: a program that works them out otherwise finds every one of those rows damaged. */
class ChecksumsStayTest {
    @TempDir
    Path folder;

    @Test
    void aRowOfEachTableHasTheChecksumThatTheFirstReleaseWrote() throws Exception {
        Path file = folder.resolve("shop.db");
        Settings settings = Settings.defaults(EUR, ZoneOffset.UTC);
        try (Ledger ledger = Ledger.create(file, settings, new TestClock("2026-06-01T12:00:00Z"))) {
            ledger.record(List.of(
                    lot("L1", "2026-03-01", "90.00"),
                    set("A", "L1").serial("Käthe \ud83d\ude00 1").build(),
                    attempt(1, "A", "2026-03-02T09:00:00", Fault.BACKLIGHT, Fix.LED_STRIPS, true),
                    new Offer(unit("A"), day("2026-03-03"), eur("150.00"), "market"),
                    exit("A", "2026-03-05", ExitKind.SOLD, "120.00"),
                    comeback("A", "2026-03-09", true),
                    new Part(
                            "P1",
                            unit("A"),
                            PartKind.FILM,
                            "F-7",
                            day("2026-03-10"),
                            eur("4.00"),
                            null,
                            null,
                            day("2026-03-11")),
                    new Recipe("PN-1", Side.RIGHT, "3 4", null, Residual.FAINT, null, 2, 1, "=x"),
                    new Bid(
                            1,
                            day("2026-02-27"),
                            "Kavo Salvage",
                            "ab12",
                            1,
                            eur("95.00"),
                            eur("-3.00"),
                            null,
                            eur("2.50"),
                            null,
                            true,
                            eur("90.00"),
                            new LotId("L1"))));
        }

        Map<String, Integer> kept = new LinkedHashMap<>();
        try (Connection c = DriverManager.getConnection("jdbc:sqlite:" + file)) {
            for (Table<?> table : Tables.ALL) {
                kept.put(table.name(), (int) Database.number(c, "SELECT crc FROM " + table.name(), 0));
            }
        }
        assertThat(kept)
                .containsExactly(
                        Map.entry("lot", -1455893811),
                        Map.entry("unit", 1459659995),
                        Map.entry("attempt", 453297371),
                        Map.entry("exit", -1224019395),
                        Map.entry("comeback", -419725639),
                        Map.entry("part", 936228715),
                        Map.entry("recipe", 1199858550),
                        Map.entry("bid", 1025363048),
                        Map.entry("offer", -1765322973));
    }
}
