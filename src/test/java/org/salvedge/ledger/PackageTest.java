package org.salvedge.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.salvedge.shop.Facts.EUR;
import static org.salvedge.shop.Facts.eur;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.Clock;
import java.time.Instant;
import java.time.ZoneOffset;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.shop.Lot;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;
import org.salvedge.shop.TvSet;

/** The history package, in and out. */
class PackageTest {
    private static final Settings SETTINGS = Settings.defaults(EUR, ZoneOffset.UTC);
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-06-01T12:00:00Z"), ZoneOffset.UTC);

    private static final Map<String, String> SMALL = Map.of(
            "lots", """
            lot,supplier,bought_on,currency,price,freight
            L1,Kavo Salvage,2026-03-01,EUR,100.00,0.01
            """,
            "units", """
            unit,lot,line,maker,model,family,inches,claimed,claimed_text,arrived,landed_cost
            L1-001,L1,1,Lumka,LK55-1,LK55,55,horizontal_lines,"lines, on
            screen",true,
            L1-002,L1,2,Lumka,LK55-1,LK55,55,dead,,true,40.00
            L1-003,L1,3,Lumka,LK55-1,LK55,,dead,,true,
            L1-004,L1,4,Lumka,LK55-1,LK55,55,dead,,false,
            """,
            "attempts", """
            attempt,unit,started_at,fault,fix,diagnosis_minutes,fix_minutes,passed
            1,L1-001,2026-03-02T09:00:00,row_drive,contact_mask,7,24.50,TRUE
            """,
            "exits", """
            unit,on,exit,gross
            L1-001,2026-03-05,sold,120
            """,
            "comebacks", """
            unit,on,restocked
            L1-001,2026-03-09,true
            """);

    @TempDir
    Path folder;

    private Ledger ledger;

    @BeforeEach
    void anEmptyShop() {
        ledger = Ledger.create(folder.resolve("shop.db"), SETTINGS, CLOCK);
    }

    @AfterEach
    void close() {
        ledger.close();
    }

    static Path write(Path into, Map<String, String> files) throws IOException {
        Files.createDirectories(into);
        StringBuilder resources = new StringBuilder();
        for (Map.Entry<String, String> file : files.entrySet()) {
            Files.writeString(into.resolve(file.getKey() + ".csv"), file.getValue());
            resources
                    .append(resources.isEmpty() ? "" : ",")
                    .append("{\"name\":\"" + file.getKey() + "\",\"path\":\"" + file.getKey() + ".csv\"}");
        }
        Files.writeString(into.resolve("datapackage.json"), "{\"resources\":[" + resources + "]}");
        return into;
    }

    @Test
    void whatWasLeftEmptyComesBackFilled() throws IOException {
        Imported imported = ledger.importPackage(write(folder.resolve("in"), SMALL), Progress.NONE);

        assertThat(imported.rows()).isEqualTo(8);
        assertThat(ledger.all(TvSet.class))
                .extracting(TvSet::landedCost)
                .containsExactly(eur("30.01"), eur("40.00"), eur("30.00"), null);
        assertThat(ledger.all(Lot.class).get(0).basis()).isEqualTo(org.salvedge.shop.Basis.EQUAL);
        assertThat(ledger.all(Lot.class).get(0).receivedOn()).isEqualTo("2026-03-01");
    }

    @Test
    void exportImportExportIsTheSameToTheByte() throws IOException {
        ledger.importPackage(write(folder.resolve("in"), SMALL), Progress.NONE);
        ledger.exportPackage(folder.resolve("out"), Progress.NONE);
        try (Ledger second = Ledger.create(folder.resolve("second.db"), SETTINGS, CLOCK)) {
            second.importPackage(folder.resolve("out"), Progress.NONE);
            second.exportPackage(folder.resolve("again"), Progress.NONE);
        }
        for (String file : List.of("lots", "units", "attempts", "exits", "comebacks")) {
            assertThat(folder.resolve("again/" + file + ".csv"))
                    .hasSameBinaryContentAs(folder.resolve("out/" + file + ".csv"));
        }
        assertThat(Files.readString(folder.resolve("out/attempts.csv")))
                .contains("\r\n1,L1-001,2026-03-02T09:00:00,,row_drive,contact_mask,7,24.5,,true,");
    }

    @Test
    void everyBadRowIsToldAndNothingIsKept() throws IOException {
        Map<String, String> bad = new java.util.HashMap<>(SMALL);
        bad.put("exits", """
                unit,on,exit,gross
                L1-001,2026-03-01,sold,120
                L1-009,2026-03-05,sold,120
                L1-002,2026-13-05,sold,120.005
                L1-003,2026-07-05,given,-1
                """);

        assertThatThrownBy(() -> ledger.importPackage(write(folder.resolve("in"), bad), Progress.NONE))
                .isInstanceOfSatisfying(
                        Refused.class,
                        e -> assertThat(e.problems())
                                .extracting(p -> p.row() + " " + p.column() + " " + p.found() + " " + p.problem())
                                .containsExactlyInAnyOrder(
                                        "3 unit L1-009 is not a set of this package",
                                        "4 on 2026-13-05 is not a date",
                                        "4 gross 120.005 has too many decimals",
                                        "5 on 2026-07-05 is in the future",
                                        "5 exit given is not known here",
                                        "5 gross -1 is negative",
                                        "2 started_at 2026-03-02T09:00:00 is after the set has gone"));
        assertThat(ledger.all(Lot.class)).isEmpty();
        assertThat(ledger.latest()).isEmpty();
    }

    @Test
    void aKeyThatTheShopHoldsIsRefusedByName() throws IOException {
        Path in = write(folder.resolve("in"), SMALL);
        ledger.importPackage(in, Progress.NONE);

        assertThatThrownBy(() -> ledger.importPackage(in, Progress.NONE))
                .isInstanceOfSatisfying(
                        Refused.class,
                        e -> assertThat(e.problems().get(0).toString())
                                .startsWith(
                                        "lots.csv, row 2, column \"lot\": \"L1\" is on record in this shop already"));
    }
}
