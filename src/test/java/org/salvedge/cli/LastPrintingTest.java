package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What a month's review says of its own last printing. */
class LastPrintingTest {
    private TestShop shop;

    @BeforeEach
    void aShopWithOneSale(@TempDir Path folder) {
        shop = TestShop.withLot(folder);
        recorded(
                "attempt",
                "001",
                "--fault",
                "backlight",
                "--fix",
                "led_strips",
                "--passed",
                "yes",
                "--fix-minutes",
                "60");
        recorded("sell", "001", "--gross", "120", "--unmet", "to a dealer");
    }

    private void recorded(String... command) {
        assertThat(shop.run(command)).as(shop.err()).isZero();
    }

    /** What printing says, on one line. */
    private String printed(String... more) {
        String[] command = new String[more.length + 2];
        command[0] = "month";
        command[1] = "2026-03";
        System.arraycopy(more, 0, command, 2, more.length);
        assertThat(shop.run(command)).as(shop.err()).isZero();
        return shop.out().replace('\n', ' ');
    }

    @Test
    void theFirstPrintingSaysNothingOfAnEarlierOne() {
        assertThat(printed()).doesNotContain("last printed");
        assertThat(printed("--format", "json")).contains("\"since_printing\"");
    }

    @Test
    void printedAgainWithNothingNewItSaysSo() {
        printed();
        assertThat(printed())
                .contains(
                        "Since this month was last printed, on 2026-03-14 12:00, nothing was recorded that it counts;")
                .contains("the figures are as they were.");
    }

    @Test
    void newEntriesCorrectionsAndUndoingsAreCountedWithTheFiguresThatTheyMoved() {
        printed();
        recorded("attempt", "002", "--fault", "row_drive", "--fix", "contact_mask", "--passed", "yes");
        recorded("attempt", "003", "--fault", "row_drive", "--fix", "none");
        recorded("undo", "--why", "wrong set");
        recorded("amend", "6", "--gross", "100", "--why", "a slip");
        assertThat(printed())
                .contains("2 attempts recorded, 1 attempt taken back, 1 exit corrected (3 sets concerned)")
                .contains("sets decided 1 to 2, sets saved 1 to 2")
                .doesNotContain("1 sets");
        assertThat(printed()).contains("nothing was recorded that it counts");
    }

    @Test
    void whatHappenedAfterTheMonthIsNoneOfItsBusiness() {
        assertThat(shop.run("month", "2026-02")).isZero();
        recorded("attempt", "002", "--fault", "row_drive", "--fix", "contact_mask", "--passed", "yes");
        assertThat(shop.run("month", "2026-02")).isZero();
        assertThat(shop.out().replace('\n', ' ')).contains("nothing was recorded that it counts");
    }

    @Test
    void aMonthThatIsNotOverOrHasNotBegunSaysSo() {
        assertThat(printed()).contains("2026-03 is not over.");
        assertThat(shop.run("month", "2026-04")).isZero();
        assertThat(shop.out()).contains("2026-04 has not begun.");
        assertThat(shop.run("month", "2026-02")).isZero();
        assertThat(shop.out()).doesNotContain("not over").doesNotContain("not begun");
        assertThat(shop.run("month", "2019-02")).isZero();
        assertThat(shop.out()).contains("nothing had happened by the end of 2019-02.");
    }

    @Test
    void whatIsPrintedAsOfADaySaysSoInItsTitle(@TempDir Path pages) throws IOException {
        Path page = pages.resolve("month.html");
        printed("--html", page.toString(), "--as-of", "2026-03-13");
        assertThat(page).content().contains(", as recorded by 2026-03-13</h1>");
        printed("--html", page.toString());
        assertThat(Files.readString(page)).doesNotContain("as recorded by");
    }

    @Test
    void whatIsPrintedAsOfADayLeavesTheMonthsOwnWorkbookAlone() throws IOException {
        printed();
        Path own = shop.folder().resolve("reports/month-2026-03.xlsx");
        byte[] before = Files.readAllBytes(own);
        recorded("attempt", "002", "--fault", "row_drive", "--fix", "contact_mask", "--passed", "yes");
        printed("--as-of", "2026-03-13");
        assertThat(own).hasBinaryContent(before);
        assertThat(own.resolveSibling("month-2026-03-as-of-2026-03-13.xlsx")).exists();
    }

    @Test
    void jsonGoesToTheTerminalOnly() {
        assertThat(shop.run("month", "2026-03", "--format", "json", "--html", "x.html"))
                .isEqualTo(Status.USAGE);
        assertThat(shop.err()).contains("writes no workbook and no page");
    }

    @Test
    void anAmountThatMovedKeepsItsDigitsOnBothSides() {
        printed();
        recorded("amend", "6", "--gross", "100.50", "--why", "a slip");
        assertThat(printed()).containsPattern("margin -?[0-9 ]+\\.\\d\\d to -?[0-9 ]+\\.\\d\\d, ");
    }

    @Test
    void anotherRateOfLabourIsNamedAmongWhatMoved() {
        printed();
        assertThat(printed("--labour", "40"))
                .contains("nothing was recorded that it counts: margin ")
                .contains("rate of an hour");
    }

    @Test
    void jsonAndAsOfTellOfTheLastPrintingAndNoteNone() {
        printed();
        recorded("attempt", "002", "--fault", "row_drive", "--fix", "contact_mask", "--passed", "yes");
        for (int i = 0; i < 2; i++) {
            assertThat(printed("--format", "json").replace(" ", ""))
                    .contains(
                            "\"kind\":\"attempt\",\"recorded\":1,\"corrected\":0,\"taken_back\":0,\"sets\":[\"L0042-002\"]")
                    .contains("\"figure\":\"setsdecided\",\"then\":1,\"now\":2,\"by\":1");
            assertThat(printed("--as-of", "2026-03-14")).contains("1 attempt recorded");
            assertThat(printed("--as-of", "2026-03-13")).doesNotContain("last printed");
        }
        assertThat(printed()).contains("1 attempt recorded");
    }

    @Test
    void aPrintingIsNoEntryAndTheAuditChecksIt() {
        printed();
        recorded("audit");
        assertThat(shop.run("undo", "--why", "slip")).as(shop.err()).isZero();
        assertThat(shop.out()).contains("undoes entry 6");
    }
}
