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
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.shop.Basis;
import org.salvedge.shop.Lot;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** The history package, in and out. */
class PackageTest {
    private static final Settings SETTINGS = Settings.defaults(EUR, ZoneOffset.UTC);
    private static final Clock CLOCK = Clock.fixed(Instant.parse("2026-06-01T12:00:00Z"), ZoneOffset.UTC);

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

    @Test
    void whatWasLeftEmptyComesBackFilled() throws IOException {
        Imported imported = ledger.importPackage(new Packages().write(folder.resolve("in")), Progress.NONE);

        assertThat(imported.rows()).isEqualTo(8);
        assertThat(ledger.all(TvSet.class))
                .extracting(TvSet::landedCost)
                .containsExactly(eur("30.01"), eur("40.00"), eur("30.00"), null);
        assertThat(ledger.all(Lot.class).get(0).basis()).isEqualTo(Basis.EQUAL);
        assertThat(ledger.all(Lot.class).get(0).receivedOn()).isEqualTo("2026-03-01");
    }

    @Test
    void exportImportExportIsTheSameToTheByte() throws IOException {
        ledger.importPackage(new Packages().write(folder.resolve("in")), Progress.NONE);
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
    void textThatASpreadsheetWouldTakeForAFormulaIsWrittenAsTextAndComesBackAsItWas() throws IOException {
        ledger.importPackage(new Packages().write(folder.resolve("in")), Progress.NONE);
        TvSet set = ledger.all(TvSet.class).get(0);
        List<String> texts = List.of(
                "=1+1",
                "'=1+1",
                "''@x",
                " =1",
                "-",
                "+49 1",
                "'quoted'",
                "plain",
                "'",
                "a;=HYPERLINK(\"x\")",
                "a;'=1",
                "a\n@b");
        for (int i = 0; i < texts.size(); i++) {
            UnitId label = new UnitId("L1-9" + i);
            ledger.record(List.of(set.labelled(label).toBuilder()
                    .claimedText(texts.get(i))
                    .arrived(false)
                    .landedCost(null)
                    .build()));
        }
        ledger.exportPackage(folder.resolve("out"), Progress.NONE);
        assertThat(Files.readString(folder.resolve("out/units.csv")))
                .contains(",'=1+1", "a;'=HYPERLINK(", "a;''=1", "a\n'@b")
                .doesNotContainPattern("(?m),\\s*[=@]");
        try (Ledger second = Ledger.create(folder.resolve("second.db"), SETTINGS, CLOCK)) {
            second.importPackage(folder.resolve("out"), Progress.NONE);
            assertThat(second.all(TvSet.class)).isEqualTo(ledger.all(TvSet.class));
            second.exportPackage(folder.resolve("again"), Progress.NONE);
        }
        assertThat(folder.resolve("again/units.csv")).hasSameBinaryContentAs(folder.resolve("out/units.csv"));
    }

    @Test
    void everyBadRowIsTold() throws IOException {
        Path bad = new Packages().with("exits", """
                unit,on,exit,gross
                L1-001,2026-03-01,sold,120
                L1-009,2026-03-05,sold,120
                L1-002,2026-13-05,sold,120.005
                L1-003,2026-07-05,given,-1
                """).write(folder.resolve("in"));

        assertThatThrownBy(() -> ledger.importPackage(bad, Progress.NONE))
                .isInstanceOfSatisfying(
                        Refused.class,
                        e -> assertThat(e.problems())
                                .extracting(p -> p.row() + " " + p.column() + " " + p.found() + " " + p.problem())
                                .containsExactly(
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
    void aMarkOfByteOrderAndFilesUnderOtherNamesAreFine() throws IOException {
        Path in = new Packages()
                .change("lots", "lot,supplier", "\uFEFFlot,supplier")
                .write(folder.resolve("in"));
        Files.createDirectories(in.resolve("data"));
        Files.move(in.resolve("units.csv"), in.resolve("data/sets.csv"));
        Path descriptor = in.resolve("datapackage.json");
        Files.writeString(descriptor, Files.readString(descriptor).replace("\"units.csv\"", "\"data/sets.csv\""));

        assertThat(ledger.importPackage(in, Progress.NONE).sets()).isEqualTo(4);
    }

    @Test
    void settingsOfThePackageCanBeReadBeforehand() throws IOException {
        Path in = new Packages()
                .settings("{\"currency\":\"EUR\",\"zone\":\"Asia/Tokyo\",\"labour_rate\":31.5,\"basis\":\"area\"}")
                .write(folder.resolve("in"));

        assertThat(Ledger.packageSettings(in))
                .isEqualTo(new PackageSettings(
                        EUR, java.time.ZoneId.of("Asia/Tokyo"), new java.math.BigDecimal("31.5"), Basis.AREA));
    }

    @Test
    void anExportReplacesAnEarlierOneAndNothingElse() throws IOException {
        ledger.importPackage(new Packages().write(folder.resolve("in")), Progress.NONE);
        Path out = folder.resolve("out");
        ledger.exportPackage(out, Progress.NONE);
        assertThat(ledger.exportPackage(out, Progress.NONE)).isEqualTo(8);
        Files.writeString(out.resolve("notes.txt"), "mine");

        assertThatThrownBy(() -> ledger.exportPackage(out, Progress.NONE))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("holds \"notes.txt\"");
        Path other = Files.createDirectories(folder.resolve("other"));
        Files.writeString(other.resolve("lots.csv"), "mine");
        assertThatThrownBy(() -> ledger.exportPackage(other, Progress.NONE))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("holds files, but no export");
        assertThat(folder)
                .isDirectoryNotContaining(p -> p.getFileName().toString().startsWith("."));
    }

    @Test
    void supersededEntriesDoNotTravel() throws IOException {
        ledger.importPackage(new Packages().write(folder.resolve("in")), Progress.NONE);
        ledger.undo(8, "it never came back");
        ledger.exportPackage(folder.resolve("out"), Progress.NONE);

        assertThat(Files.readString(folder.resolve("out/comebacks.csv")))
                .isEqualTo("unit,on,fault,refund,cost,restocked\r\n");
    }

    @Test
    void aKeyThatTheShopHoldsIsRefusedByName() throws IOException {
        Path in = new Packages().write(folder.resolve("in"));
        ledger.importPackage(in, Progress.NONE);

        String another = "L2,Kavo Salvage,2026-03-01,EUR,100.00,0.01\n";
        Packages more = new Packages();
        Path mixed = more.change("lots", "L1,Kavo", another + "L1,Kavo").write(folder.resolve("more"));
        assertThatThrownBy(() -> ledger.importPackage(mixed, Progress.NONE))
                .isInstanceOfSatisfying(
                        Refused.class,
                        e -> assertThat(e.problems().get(0).toString())
                                .startsWith(
                                        "lots.csv, row 3, column \"lot\": \"L1\" is on record in this shop already"));
    }
}
