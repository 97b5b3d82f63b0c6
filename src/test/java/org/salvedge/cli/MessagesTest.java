package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.Map;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** What is said beside the answer: what followed, what stays as it was, what to do next. */
class MessagesTest {
    private Path folder;
    private TestShop shop;

    @BeforeEach
    void shop(@TempDir Path temporary) {
        folder = temporary;
        shop = TestShop.withLot(temporary);
    }

    private Path list() throws IOException {
        return Files.writeString(
                folder.resolve("list.csv"), "Model,Size,Condition,Price\nKX-55A,55,lines on screen,120.00\n");
    }

    private String said() {
        return (shop.out() + shop.err()).replaceAll("\\s+", " ");
    }

    @Test
    void anUndoneEntryNeedsNoReason() {
        shop.run("place", "L0042-001", "shelf 3");
        assertThat(shop.run("undo")).isEqualTo(Status.DONE);
        shop.run("show", "L0042-001");
        assertThat(shop.out()).contains("why: a slip");
    }

    @Test
    void sharesThatFollowAnAmendmentAreTold() {
        assertThat(shop.run("amend", "2", "--landed-cost", "12.50", "--why", "slip"))
                .isEqualTo(Status.DONE);
        assertThat(said()).contains("entries 6 to 8 followed", "3 in all");
        shop.run("amend", "1", "--note", "blue pallet", "--why", "slip");
        assertThat(said()).doesNotContain("followed");
    }

    @Test
    void aBidOnRecordAsLostStaysSoAndThatIsSaid() throws IOException {
        String file = list().toString();
        shop.run("bid", file, "--limit", "50");
        shop.run("bid", file, "--won", "no");
        shop.run("receive", file, "--lot", "L 7", "--supplier", "Northquay", "--price", "40");
        assertThat(said()).contains("bid 1 on this list is on record as not won, and stays so", "--lot 'L 7'");
        shop.run("receive", file, "--lot", "L 7", "--supplier", "Northquay", "--price", "40");
        assertThat(said()).contains("`salvedge show 'L 7'`");
    }

    @Test
    void labourOnTheLotItselfIsNamed() {
        shop.run("show", "L0042");
        assertThat(shop.out()).doesNotContain("on the lot as a whole");
        shop.run("amend", "1", "--minutes", "60", "--why", "unloading");
        shop.run("show", "L0042");
        assertThat(said()).contains("60 min of labour on the lot as a whole, which no set carries");
    }

    @Test
    void aResaleOnTheDayOfTheComebackStandsBelowIt() {
        shop.run("sell", "L0042-001", "--gross", "90", "--unmet", "as it is", "--on", "2026-03-05");
        shop.run("comeback", "L0042-001", "--restocked", "--on", "2026-03-08");
        shop.run("sell", "L0042-001", "--gross", "70", "--unmet", "as it is", "--on", "2026-03-08");
        shop.run("show", "L0042-001");
        assertThat(said()).containsSubsequence("for 90.00", "came back", "for 70.00");
    }

    @Test
    void anImpossibleTurnSaysWhatToDo() {
        shop.run("sell", "L0042-001", "--gross", "90", "--unmet", "as it is", "--on", "2026-03-05");
        shop.run("attempt", "L0042-001", "--fault", "backlight", "--fix", "none");
        assertThat(said()).contains("is after the set has gone. If it is back, record its comeback first");
        shop.run("attempt", "L0042-002", "--fault", "backlight", "--fix", "none", "--at", "2026-02-01T09:00");
        assertThat(said()).contains("2026-03-02. Mend the day, or amend the day on which its lot was received");
    }

    @Test
    void theSamePackageAgainIsOneSentence() {
        shop.run("export", "package");
        assertThat(shop.run("import", "package")).isEqualTo(Status.REFUSED);
        assertThat(said())
                .contains("this package is here already: its lot is on record")
                .doesNotContain("units.csv");
    }

    @Test
    void oneZoneUnderTwoNamesIsNoDifference() throws IOException {
        TestShop other = new TestShop(Files.createDirectories(folder.resolve("other")));
        other.run("init", "--zone", "UTC");
        other.run("export", "package");
        TestShop mine = new TestShop(Files.createDirectories(folder.resolve("mine")));
        mine.run("init", "--zone", "Etc/UTC");
        assertThat(mine.run("import", "../other/package")).as(mine.err()).isEqualTo(Status.DONE);
        assertThat(mine.err()).doesNotContain("zone");
    }

    @Test
    void aReportGoesOnlyWhereThereIsAFolderAndUnderItsOwnEnding() {
        assertThat(shop.run("yield", "--xlsx", "nowhere/y.xlsx")).isEqualTo(Status.UNREADABLE);
        assertThat(said()).contains("there is no folder");
        assertThat(folder.resolve("nowhere")).doesNotExist();
        for (String command : new String[] {"yield", "hindsight"}) {
            assertThat(shop.run(command, "--xlsx", "y.pdf")).isEqualTo(Status.USAGE);
            assertThat(said()).contains("--xlsx: \"y.pdf\" must end in .xlsx");
        }
        assertThat(shop.run("month", "2026-03", "--html", "y.html", "--xlsx", "y.pdf"))
                .isEqualTo(Status.USAGE);
        assertThat(shop.out()).isEmpty();
        assertThat(folder.resolve("y.html")).doesNotExist();
        assertThat(shop.run("yield", "--xlsx", "reports/y.xlsx")).isEqualTo(Status.DONE);
    }

    @Test
    void anEmptyShopsYieldSaysWhatComesFirst() throws IOException {
        TestShop empty = new TestShop(Files.createDirectories(folder.resolve("empty")));
        empty.run("init");
        assertThat(empty.run("yield")).isEqualTo(Status.DONE);
        assertThat(empty.err()).contains("No set is on record. `salvedge receive` books a lot");
        empty.run("yield", "--format", "json");
        assertThat(empty.err()).isEmpty();
    }

    @Test
    void aQuestionEndsInAQuestionMarkAlone() {
        assertThat(shop.run("compleat")).isEqualTo(Status.USAGE);
        assertThat(said()).doesNotContain("?.");
    }

    @Test
    void messagesKeepWithinANarrowTerminal() throws IOException {
        Path list = Files.writeString(
                folder.resolve("odd.csv"), "Model,Size,Condition,Price\nKX-55A,5S,lines on screen,120-\n,55,dead,1\n");
        shop.columns(60);
        for (String[] command : new String[][] {
            {"receive", list.toString(), "--lot", "L9", "--supplier", "Northquay", "--price", "1", "--strict"},
            {"undo", "77"},
            {"attempt", "L0042-001", "--fault", "row_drive", "--fix", "contact_mask", "--passed", "yes"},
            {"attempt", "L0042-001", "--fault", "none_such", "--fix", "contact_mask"},
            {"queue", "--hours", "2"},
            {"show", "L0042-001"}
        }) {
            shop.run(command);
            String said = shop.out() + shop.err();
            assertThat(said.lines()
                            .filter(line -> line.length() > 60 && line.strip().contains(" ")))
                    .as(String.join(" ", command))
                    .isEmpty();
        }
    }

    @Test
    void theShellsWidthCountsWhereTheTerminalWasNotAsked() {
        assertThat(SystemTerminal.columns(72, Map.of("COLUMNS", "60"))).isEqualTo(72);
        assertThat(SystemTerminal.columns(0, Map.of("COLUMNS", "60"))).isEqualTo(60);
        assertThat(SystemTerminal.columns(0, Map.of("COLUMNS", "wide"))).isEqualTo(100);
        assertThat(SystemTerminal.columns(0, Map.of())).isEqualTo(100);
    }
}
