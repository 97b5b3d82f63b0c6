package org.salvedge.ledger;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.salvedge.shop.Facts.EUR;

import java.io.IOException;
import java.nio.charset.StandardCharsets;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.ZoneOffset;
import java.util.List;
import org.junit.jupiter.api.AfterEach;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.shop.Lot;
import org.salvedge.shop.Problem;
import org.salvedge.shop.Refused;
import org.salvedge.shop.Settings;

/** A package with anything wrong in it is not taken at all; each fault is told with file, row, column, text and remedy. */
class ImportRefusalsTest {
    @TempDir
    Path folder;

    private Ledger ledger;

    @BeforeEach
    void anEmptyShop() {
        ledger = Ledger.create(
                folder.resolve("shop.db"),
                Settings.defaults(EUR, ZoneOffset.UTC),
                new TestClock("2026-06-01T12:00:00Z"));
    }

    @AfterEach
    void nothingIsHalfTaken() {
        assertThat(ledger.latest()).isEmpty();
        ledger.close();
    }

    private Refused refused(Path in) {
        try {
            ledger.importPackage(in, Progress.NONE);
        } catch (Refused e) {
            return e;
        }
        throw new AssertionError("it was taken");
    }

    private List<String> problems(Packages p) throws IOException {
        return refused(p.write(folder.resolve("in"))).problems().stream()
                .map(Problem::toString)
                .toList();
    }

    private void onlyProblem(String message, Packages p) throws IOException {
        assertThat(problems(p)).containsExactly(message);
    }

    private static Packages good() {
        return new Packages();
    }

    @Test
    void theUnspoiltPackageIsGood() throws IOException {
        Path in = good().write(folder.resolve("in"));
        try (Ledger other = Ledger.create(
                folder.resolve("other.db"),
                Settings.defaults(EUR, ZoneOffset.UTC),
                new TestClock("2026-06-01T12:00:00Z"))) {
            assertThat(other.importPackage(in, Progress.NONE).rows()).isEqualTo(8);
            assertThat(other.audit(Progress.NONE)).isEmpty();
        }
    }

    @ParameterizedTest(name = "{0}: {1} -> {2}")
    @CsvSource(delimiter = '|', textBlock = """
            lots | ,100.00 | ,1e2 | lots.csv, row 2, column "price": "1e2" is not an amount in EUR, which has 2 decimals. Write digits with a decimal point, as in 12.5.
            lots | ,100.00 | ,100.001 | lots.csv, row 2, column "price": "100.001" has too many decimals. Write an amount in EUR, which has 2 decimals.
            lots | ,100.00 | ,-1 | lots.csv, row 2, column "price": "-1" is negative. Write 0 or more.
            lots | ,100.00 | , | lots.csv, row 2, column "price": is empty. Give it a value.
            lots | ,100.00 | ,99999999999999 | lots.csv, row 2, column "price": "99999999999999" is too large. Check the number.
            lots | 2026-03-01 | 01.03.2026 | lots.csv, row 2, column "bought_on": "01.03.2026" is not a date. Write year, month and day, as in 2026-03-14.
            lots | 2026-03-01 | 2026-02-30 | lots.csv, row 2, column "bought_on": "2026-02-30" is not a date. Write year, month and day, as in 2026-03-14.
            lots | 2026-03-01 | 1926-03-01 | lots.csv, row 2, column "bought_on": "1926-03-01" is not a date that can be kept. Write one from 1970-01-01 to 2149-06-06.
            lots | EUR | EURO | lots.csv, row 2, column "currency": "EURO" is not a currency. Write its three letters by ISO 4217, as in EUR.
            lots | EUR | XAU | lots.csv, row 2, column "currency": "XAU" is not a currency. Write its three letters by ISO 4217, as in EUR.
            lots | EUR | USD | lots.csv, row 2, column "rate": USD is not the book's currency EUR and there is no rate. Give the rate: how many EUR one USD is.
            units | LK55,55,horizontal | LK55,0,horizontal | units.csv, row 2, column "inches": "0" inches must be above 0 and at most 150, not 0. Mend the value.
            units | horizontal_lines | lines | units.csv, row 2, column "claimed": "lines" is not a known code. Write one of horizontal_lines, vertical_lines, half_screen, no_picture, dead, dim_patchy, boot_loop, no_sound, cracked, untested, customer_return, working, other, or add your own under [codes] in shop.toml.
            units | L1-003,L1 | L1-003,L7 | units.csv, row 4, column "lot": "L7" is not a lot of this package. Add it to the lots, or mend the name.
            units | L1-003,L1,3 | L1-003,L1,0 | units.csv, row 4, column "line": "0" line must be at least 1, not 0. Mend the value.
            units | L1-003,L1,3 | L1-003,L1,3.5 | units.csv, row 4, column "line": "3.5" has too many decimals. Write a whole number.
            units | ,dead,,true,40.00 | ,dead,,yes,40.00 | units.csv, row 3, column "arrived": "yes" is neither true nor false. Write true or false, or leave it empty.
            units | L1-003 | L1-002 | units.csv, row 4, column "unit": "L1-002" stands there already. Remove one of the two rows.
            attempts | row_drive | dropped | attempts.csv, row 2, column "fault": "dropped" is not a known code. Write one of row_drive, column_drive, timing_board, backlight, power_board, main_board, firmware, panel_broken, ports_audio, none_found, unknown, or add your own under [codes] in shop.toml.
            attempts | T09:00:00 | T25:00:00 | attempts.csv, row 2, column "started_at": "2026-03-02T25:00:00" is not a date and time. Write them as in 2026-03-14T09:05:00.
            attempts | 2026-03-02T | 2026-06-02T | attempts.csv, row 2, column "started_at": "2026-06-02T09:00:00" is in the future. Today is 2026-06-01; check the date.
            attempts | 2026-03-02T | 2026-02-02T | attempts.csv, row 2, column "started_at": "2026-02-02T09:00:00" is before the day the set was received. Mend the day, or what comes before it.
            attempts | 2026-03-02T | 2026-03-06T | attempts.csv, row 2, column "started_at": "2026-03-06T09:00:00" is after the set has gone. Mend the day, or what comes before it.
            attempts | 1,L1-001 | 1,L1-004 | attempts.csv, row 2, column "started_at": "2026-03-02T09:00:00" is about a set that never arrived; only a seller's credit (returned) can be booked for it. Mend the day, or what comes before it.
            attempts | row_drive,contact_mask | unknown,none | attempts.csv, row 2: a pass needs a fix or a finding; with no fix, name the fault (none_found if it just works). Mend the row.
            exits | sold | gave | exits.csv, row 2, column "exit": "gave" is not known here. Write one of sold, stripped, recycled, returned, lost.
            exits | sold | stripped | comebacks.csv, row 2, column "on": "2026-03-09" is of a set that was not sold at that time. Mend the day, or what comes before it.
            units | L1-003,L1 | L1-\u2067003,L1 | units.csv, row 4, column "unit": "L1-\u2067003" holds a character that is not seen or that turns others around. Type the label again by hand.
            comebacks | L1-001 | L1-009 | comebacks.csv, row 2, column "unit": "L1-009" is not a set of this package. Add it to the sets, or mend the label.
            """)
    void aBadCellIsNamed(String file, String from, String to, String message) throws IOException {
        onlyProblem(message, good().change(file, from, to == null ? "" : to));
    }

    @Test
    void aRowIsNumberedAsASpreadsheetShowsIt() throws IOException {
        // Row 2 holds a line break in quotes and is still one row; a blank line is a row too.
        Packages p = good().with(
                        "units",
                        "unit,lot,maker,model,family,claimed,claimed_text,arrived\r\n"
                                + "A,L1,m,m,f,dead,\"one\r\ntwo\r\nthree\",true\r\n\r\nB,L1,m,m,f,dead,,maybe\r\n")
                .change("attempts", "1,L1-001", "1,A")
                .change("exits", "L1-001", "A")
                .change("comebacks", "L1-001", "A");

        onlyProblem(
                "units.csv, row 4, column \"arrived\": \"maybe\" is neither true nor false."
                        + " Write true or false, or leave it empty.",
                p);
    }

    @Test
    void aSecondExitOnOneDayNeedsASeqOfItsOwn() throws IOException {
        assertThat(problems(good().with("exits", """
                unit,on,exit,gross,gone
                L1-001,2026-03-05,sold,120,
                L1-001,2026-03-05,stripped,5,false
                """)))
                .containsExactly(
                        "exits.csv, row 3, column \"on\": \"2026-03-05\" is there already for that set, in row 2."
                                + " Give each exit of a set on one day its own seq.");
    }

    @Test
    void unknownColumnsAreRefusedByName() throws IOException {
        onlyProblem(
                "comebacks.csv, row 1, column \"colour\": \"colour\" is not a column of comebacks."
                        + " Remove it, or name it as one of unit, on, fault, refund, cost, restocked.",
                good().with("comebacks", "unit,on,restocked,colour\nL1-001,2026-03-09,true,red\n"));
    }

    @Test
    void aMissingColumnIsNamedAndItsRowsAreNotBlamed() throws IOException {
        onlyProblem(
                "units.csv, row 1, column \"arrived\": is missing. Add the column \"arrived\".",
                good().with("units", "unit,lot,maker,model,family,claimed\nL1-001,L1,m,m,f,dead\n"));
    }

    @Test
    void aColumnThatStandsTwiceIsNamed() throws IOException {
        onlyProblem(
                "comebacks.csv, row 1, column \"on\": \"on\" stands twice in the header. Remove one of the two.",
                good().with("comebacks", "unit,on,restocked,on\n"));
    }

    @Test
    void anEmptyFileLacksItsColumns() throws IOException {
        assertThat(problems(good().with("comebacks", ""))).hasSize(3).allMatch(p -> p.contains("is missing"));
    }

    @Test
    void aRowWithTooManyFieldsIsNamed() throws IOException {
        onlyProblem(
                "exits.csv, row 2: has 5 fields where the header has 4."
                        + " Put fields that hold a comma, a quote or a line break in quotes.",
                good().with("exits", "unit,on,exit,gross\nL1-001,2026-03-05,sold,1,200\n")
                        .with("comebacks", "unit,on,restocked\n"));
    }

    @Test
    void aQuoteThatNeverEndsIsTold() throws IOException {
        assertThat(problems(good().with("exits", "unit,on,exit,gross\n\"L1-001,2026-03-05,sold,1\n")
                        .with("comebacks", "unit,on,restocked\n")))
                .containsExactly("exits.csv, row 2: is not CSV from here on: a quote is wrong."
                        + " Double each quote inside a quoted field, and close it.");
    }

    @Test
    void anotherEncodingIsTold() throws IOException {
        assertThat(problems(good().change("lots", "Kavo", "Kävo").in(StandardCharsets.ISO_8859_1)))
                .first()
                .isEqualTo(
                        "lots.csv, row 1: is not in UTF-8, in this row or soon after. Save the file as CSV in UTF-8.");
    }

    @Test
    void givenLandedCostsMustAddUp() throws IOException {
        assertThat(problems(good().with("units", """
                unit,lot,maker,model,family,claimed,arrived,landed_cost
                L1-001,L1,m,m,f,dead,true,60.00
                L1-002,L1,m,m,f,dead,true,41.00
                """)))
                .containsExactly(
                        "lots.csv, row 2, column \"lot\": \"L1\" the landed costs given for the sets of lot L1 add up"
                                + " to 101.00, the lot cost 100.01; mend one of them, or leave them empty to have the cost shared");
    }

    private static final String TWO_LOTS = """
            lot,supplier,bought_on,currency,price
            L1,Kavo Salvage,2026-03-01,EUR,100.00
            L2,Kavo Salvage,2026-03-01,EUR,50.00
            """;

    private static final String WRONG_OF_L2 =
            "lots.csv, row 3, column \"lot\": \"L2\" the landed costs given for the sets of lot"
                    + " L2 add up to 51.00, the lot cost 50.00; mend one of them, or leave them empty to have the cost shared";

    private Packages twoLots(String lots, String firstSet) {
        return good().with("lots", lots)
                .with(
                        "units",
                        "unit,lot,maker,model,family,claimed,arrived,landed_cost\n" + firstSet
                                + "L1-002,L1,m,m,f,dead,true,40.00\nL2-001,L2,m,m,f,dead,true,51.00\n")
                .with("attempts", "attempt,unit,started_at,fault,fix\n")
                .with("exits", "unit,on,exit,gross\n")
                .with("comebacks", "unit,on,restocked\n");
    }

    @Test
    void aWrongLandedCostIsToldTogetherWithWhateverElseIsWrong() throws IOException {
        String good = "L1-001,L1,m,m,f,dead,true,60.00\n";
        assertThat(problems(twoLots(TWO_LOTS, good))).containsExactly(WRONG_OF_L2);
        assertThat(problems(twoLots(TWO_LOTS.replace("100.00", "1e2"), good)))
                .hasSize(2)
                .contains(WRONG_OF_L2)
                .anyMatch(p -> p.startsWith("lots.csv, row 2, column \"price\": \"1e2\""));
        assertThat(problems(twoLots(TWO_LOTS, good.replace("dead", "ded"))))
                .hasSize(2)
                .contains(WRONG_OF_L2)
                .anyMatch(p -> p.startsWith("units.csv, row 2, column \"claimed\": \"ded\""));
    }

    /** Else the sum would be called wrong for a row that another problem already names. */
    @Test
    void aLandedCostIsNotJudgedByRowsThatCouldNotBeRead() throws IOException {
        String good = "L1-001,L1,m,m,f,dead,true,60.00\n";
        String[] bad = {
            good.replace("60.00", "sixty"), good.replace("L1-001", "L1-002"), good.replace("true", "maybe"),
        };
        for (String row : bad) {
            assertThat(problems(twoLots(TWO_LOTS, row))).hasSize(2).contains(WRONG_OF_L2);
        }
        for (String row :
                new String[] {good.replace(",L1,", ",L9,"), good.replace(",m,", ",m,m,"), good.replace(",L1,", ",,")}) {
            assertThat(problems(twoLots(TWO_LOTS, row))).hasSize(1).noneMatch(p -> p.contains("add up"));
        }
        assertThat(problems(twoLots(TWO_LOTS + "L2,Kavo Salvage,2026-03-01,EUR,51.00\n", good)))
                .hasSize(1)
                .noneMatch(p -> p.contains("add up"));
    }

    @Test
    void aPackageInAnotherCurrencyIsRefused() throws IOException {
        assertThat(refused(good().settings("{\"currency\":\"JPY\"}").write(folder.resolve("in"))))
                .hasMessage(
                        "the package is in JPY, this shop's book in EUR; make a shop for it with init --currency JPY");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "../lots.csv",
                "/etc/passwd",
                "a/../lots.csv",
                "C:\\\\lots.csv",
                "https://lots.example/lots.csv",
                "a//b",
                ""
            })
    void pathsOutOfTheFolderAreRefused(String path) throws IOException {
        Path in = good().write(folder.resolve("in"));
        Path descriptor = in.resolve("datapackage.json");
        Files.writeString(descriptor, Files.readString(descriptor).replace("\"lots.csv\"", "\"" + path + "\""));

        assertThatThrownBy(() -> ledger.importPackage(in, Progress.NONE))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("path");
    }

    @Test
    void linksAreRefused() throws IOException {
        Path in = good().write(folder.resolve("in"));
        Path real = folder.resolve("elsewhere.csv");
        Files.move(in.resolve("lots.csv"), real);
        Files.createSymbolicLink(in.resolve("lots.csv"), real);

        assertThat(refused(in)).hasMessageContaining("is not a plain path inside the folder");
    }

    @Test
    void aFolderThatIsNoPackageIsRefused() throws IOException {
        assertThat(refused(folder)).hasMessageContaining("there is no datapackage.json");
        Path in = good().without("exits").write(folder.resolve("in"));
        assertThat(refused(in)).hasMessageContaining("it lacks the resources exits");
        Files.writeString(in.resolve("datapackage.json"), "{\"resources\":");
        assertThat(refused(in)).hasMessageContaining("it is not JSON");
        Path odd = good().with("wishes", "a\n").write(folder.resolve("odd"));
        assertThat(refused(odd)).hasMessageContaining("the resource \"wishes\" is not one of lots, units");
        Path gone = good().write(folder.resolve("gone"));
        Files.delete(gone.resolve("units.csv"));
        assertThat(refused(gone)).hasMessageContaining("the file \"units.csv\" is not there");
    }

    @Test
    void allProblemsAreCountedAndTheFirstOfEachFileListed() throws IOException {
        StringBuilder exits = new StringBuilder("unit,on,exit,gross\n");
        for (int i = 0; i < 1000; i++) {
            exits.append("X").append(i).append(",2026-03-05,sold,1\n");
        }
        Refused e = refused(good().with("exits", exits.toString()).write(folder.resolve("in")));

        assertThat(e).hasMessageContaining("1001 problems; the first 101 are listed");
        assertThat(e.problems()).hasSize(101);
        assertThat(ledger.all(Lot.class)).isEmpty();
    }
}
