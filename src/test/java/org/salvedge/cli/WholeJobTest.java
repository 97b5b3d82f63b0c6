package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.Stream;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

/** From the first day to the first of the month, by the commands that anybody would use. */
class WholeJobTest {
    private Path folder;
    private TestShop shop;

    @BeforeEach
    void open(@TempDir Path temporary) {
        folder = temporary;
        shop = TestShop.withLot(temporary.resolve("shop"));
    }

    private JsonNode json() throws IOException {
        return new ObjectMapper().readTree(shop.out());
    }

    @Test
    void initMakesAShopWhoseSettingsReadAsTheirDefaults(@TempDir Path elsewhere) throws IOException {
        TestShop fresh = new TestShop(elsewhere.resolve("new"));
        assertThat(fresh.run("init", "--currency", "JPY")).as(fresh.err()).isZero();
        assertThat(Files.readString(fresh.folder().resolve("shop.toml")))
                .contains("currency = \"JPY\"", "# zone = \"Europe/Berlin\"");
        assertThat(fresh.folder().resolve("lots")).isEmptyDirectory();
        assertThat(fresh.folder().resolve("reports")).isEmptyDirectory();
        assertThat(fresh.run("init")).isEqualTo(Status.REFUSED);
        assertThat(fresh.err()).contains("there is a shop here already");
    }

    /** What stands in the way shows up only when the file of the ledger is there already, or before it can be made. */
    @ParameterizedTest
    @ValueSource(strings = {"shop.db-wal", "shop.db"})
    void aShopIsMadeWholeOrNotAtAll(String inTheWay, @TempDir Path elsewhere) throws IOException {
        Path hindrance = elsewhere.resolve(inTheWay);
        if (inTheWay.endsWith("-wal")) {
            Files.createDirectory(hindrance);
        } else {
            Files.createSymbolicLink(hindrance, elsewhere.resolve("not there/shop.db"));
        }
        TestShop fresh = new TestShop(elsewhere);

        assertThat(fresh.run("init", "--currency", "JPY")).as(fresh.err()).isEqualTo(Status.UNREADABLE);
        assertThat(elsewhere.toFile().list()).containsExactly(inTheWay);

        Files.delete(hindrance);
        assertThat(fresh.run("init", "--currency", "CHF")).as(fresh.err()).isZero();
        assertThat(fresh.out()).contains("books in CHF");
    }

    @Test
    void settingsThatWereThereAlreadyStay(@TempDir Path elsewhere) throws IOException {
        Files.writeString(elsewhere.resolve("shop.toml"), "currency = \"CHF\"\nlabour_rate = 40\n");
        TestShop fresh = new TestShop(elsewhere);
        assertThat(fresh.run("init")).isZero();
        assertThat(fresh.out()).contains("books in CHF", "Settings as they were");
        assertThat(elsewhere.resolve("shop.toml")).hasContent("currency = \"CHF\"\nlabour_rate = 40\n");
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "yield",
                "month 2026-02",
                "show L1",
                "audit",
                "export out",
                "import in",
                "lost L1-001",
                "undo --why slip",
                "regroup",
                "receive x.csv --lot L1 --supplier x --price 1"
            })
    void withoutAShopNothingIsMade(String command, @TempDir Path empty) {
        TestShop none = new TestShop(empty);
        assertThat(none.run(command.split(" "))).isEqualTo(Status.REFUSED);
        assertThat(none.err()).startsWith("salvedge: no shop here: salvedge init");
        assertThat(empty).isEmptyDirectory();
    }

    @Test
    void theShopIsNamedByOptionOrVariable(@TempDir Path elsewhere) {
        TestShop away = new TestShop(elsewhere);
        assertThat(away.run("--shop", shop.folder().toString(), "show", "001")).isZero();
        assertThat(away.run("show", "001", "--shop", shop.folder().toString())).isZero();
        assertThat(away.with("SALVEDGE_SHOP", shop.folder().toString()).run("show", "001"))
                .isZero();
        assertThat(away.run("--shop=" + elsewhere, "show", "001")).isEqualTo(Status.REFUSED);
    }

    @Test
    void aSettingOfTheCommandLineThatShopTomlWouldOverruleIsRefused(@TempDir Path elsewhere) throws IOException {
        Files.writeString(elsewhere.resolve("shop.toml"), "currency = \"CHF\"\n");
        TestShop fresh = new TestShop(elsewhere);
        assertThat(fresh.run("init", "--currency", "JPY")).isEqualTo(Status.REFUSED);
        assertThat(fresh.err()).contains("there is a shop.toml here already, and it counts");
        assertThat(elsewhere.resolve("shop.db")).doesNotExist();
    }

    @Test
    void aShopCanBeMadeForAHistoryThatMovesIn() throws IOException {
        Files.writeString(
                shop.folder().resolve("shop.toml"),
                "currency = \"EUR\"\nzone = \"Europe/Berlin\"\nlabour_rate = 31.5\nbasis = \"area\"\n");
        shop.run("export", folder.resolve("package").toString());
        TestShop other = new TestShop(folder.resolve("other"));
        assertThat(other.run("init", "--from", folder.resolve("package").toString()))
                .as(other.err())
                .isZero();
        assertThat(Files.readString(folder.resolve("other/shop.toml")))
                .contains("\nzone = \"Europe/Berlin\"", "labour_rate = 31.5\n", "basis = \"area\"");
        assertThat(other.run("import", folder.resolve("package").toString())).isZero();
        assertThat(other.err()).isEmpty();
    }

    @Test
    void theCautionsAreSaidWithTheFirstTurnAtTheBench() {
        shop.run("attempt", "001", "--fault", "backlight", "--fix", "none");
        assertThat(shop.err()).contains("hold a dangerous charge", "mercury");
        shop.run("attempt", "002", "--fault", "backlight", "--fix", "none");
        assertThat(shop.err()).isEmpty();
    }

    @Test
    void showReadsTheRecordAsItStood() {
        shop.run("attempt", "001", "--fault", "backlight", "--fix", "led_strips", "--fix-minutes", "30");
        shop.at("2026-03-16T11:00:00Z").run("amend", "5", "--fix-minutes", "50", "--why", "misread");
        shop.run("lost", "001");
        shop.run("show", "001", "--as-of", "2026-03-14");
        assertThat(shop.out())
                .contains("30 min, no retest yet\n")
                .doesNotContain("50 min", "no longer", "lost")
                .contains("2026-03-14: on the bench. 30 min;");
        shop.run("show", "001", "--as-of", "2026-03-16");
        assertThat(shop.out()).contains("[no longer: see entry 6]", "2026-03-16: lost. 50 min;");
        assertThat(shop.run("show", "001", "--as-of", "2026-03-01")).isEqualTo(Status.REFUSED);
        shop.run("show", "L0042", "--as-of", "2026-03-14");
        assertThat(shop.out()).contains("3 sets: 3 on the bench.");
    }

    @Test
    void whatIsExportedCanMoveIntoAnotherShopAndOutAgainTheSameToTheByte() throws IOException {
        shop.run(
                "attempt",
                "001",
                "--fault",
                "backlight",
                "--fix",
                "led_strips",
                "--fix-minutes",
                "41.5",
                "--passed",
                "yes",
                "--grade",
                "A",
                "--note",
                "tidy, \"new\" strips");
        shop.run("sell", "001", "--gross", "120.50", "--fees", "9", "--unmet", "dealer");
        shop.run("offer", "002", "99");
        assertThat(shop.run("export", folder.resolve("first").toString())).isZero();
        TestShop other = new TestShop(folder.resolve("other"));
        other.run("init", "--zone", "Europe/Berlin");
        assertThat(other.run("import", folder.resolve("first").toString()))
                .as(other.err())
                .isZero();
        assertThat(other.out()).isEqualTo("Imported 1 lot, 3 sets, 1 attempt, 1 exit, 1 offer\n");
        assertThat(other.err()).isEmpty();
        assertThat(other.run("export", folder.resolve("second").toString())).isZero();
        try (Stream<Path> files = Files.list(folder.resolve("first"))) {
            for (Path file : files.toList()) {
                assertThat(folder.resolve("second").resolve(file.getFileName())).hasSameBinaryContentAs(file);
            }
        }
        assertThat(other.run("audit")).isZero();
    }

    @Test
    void settingsThatThePackageWasKeptWithAreTold() {
        shop.run("export", folder.resolve("first").toString());
        TestShop other = new TestShop(folder.resolve("other"));
        other.run("init", "--zone", "Europe/Paris");
        other.run("import", folder.resolve("first").toString());
        assertThat(other.err()).contains("kept with zone Europe/Berlin; this shop's is Europe/Paris");
    }

    @Test
    void badRowsAreNamedAndNothingIsTaken() throws IOException {
        shop.run("export", folder.resolve("first").toString());
        Path units = folder.resolve("first/units.csv");
        Files.writeString(
                units,
                Files.readString(units)
                        .replaceFirst("horizontal_lines", "stripes")
                        .replaceFirst(",55,", ",wide,"));
        TestShop other = new TestShop(folder.resolve("other"));
        other.run("init");
        assertThat(other.run("import", folder.resolve("first").toString())).isEqualTo(Status.REFUSED);
        assertThat(other.err().replaceAll("\n +", " "))
                .contains("units.csv, row 2, column \"claimed\": \"stripes\" is not a known code")
                .contains("units.csv, row 2, column \"inches\": \"wide\"");
        other.run("yield", "--format", "json");
        assertThat(other.out()).isEqualTo("{\"rows\":[]}\n");
    }

    @Test
    void yieldAnswersTheContractsJsonByTheKeysAskedFor() throws IOException {
        shop.run(
                "attempt",
                "001",
                "--fault",
                "backlight",
                "--fix",
                "led_strips",
                "--fix-minutes",
                "40",
                "--passed",
                "yes");
        shop.run(
                "attempt",
                "002",
                "--fault",
                "backlight",
                "--fix",
                "led_strips",
                "--fix-minutes",
                "20",
                "--passed",
                "no");
        shop.run("strip", "002", "--gross", "30");
        assertThat(shop.run("yield", "--by", "fault,fix", "--format", "json")).isZero();
        JsonNode row = json().get("rows").get(0);
        assertThat(row.fieldNames())
                .toIterable()
                .startsWith("fault", "fix", "sets", "attempts", "decided", "saved", "gone", "yield", "yield_low")
                .contains("yield_shrunk_high", "first_pass_yield", "minutes_p90", "margin_per_hour", "in_progress");
        assertThat(row.get("yield").asDouble()).isEqualTo(0.5);
        assertThat(row.get("minutes_median").asDouble()).isEqualTo(30);
        // 30.00 less 20 minutes at 24.00 an hour less a third of 90.00.
        assertThat(row.get("margin_total").decimalValue()).isEqualByComparingTo("-8.00");
        shop.run("yield", "--by", "fault,fix", "--labour", "0", "--format", "json");
        assertThat(json().get("rows").get(0).get("margin_total").decimalValue()).isEqualByComparingTo("0.00");
    }

    @Test
    void asOfReadsWhatHadHappenedAndBeenRecordedByThen() throws IOException {
        shop.run("attempt", "001", "--fault", "backlight", "--fix", "led_strips", "--passed", "yes");
        shop.at("2026-03-16T11:00:00Z")
                .run(
                        "attempt",
                        "002",
                        "--fault",
                        "backlight",
                        "--fix",
                        "led_strips",
                        "--passed",
                        "no",
                        "--at",
                        "2026-03-13T10:00");
        shop.run("yield", "--by", "fix", "--as-of", "2026-03-14", "--format", "json");
        assertThat(json().get("rows").get(0).get("attempts").asInt()).isEqualTo(1);
        shop.run("yield", "--by", "fix", "--as-of", "2026-03-16", "--format", "json");
        assertThat(json().get("rows").get(0).get("attempts").asInt()).isEqualTo(2);
    }

    @ParameterizedTest
    @ValueSource(strings = {"family,colour", "family,family", ""})
    void aKeyThatIsNoneIsRefused(String by) {
        assertThat(shop.run("yield", "--by", by)).isEqualTo(Status.REFUSED);
        assertThat(shop.err()).startsWith("salvedge: --by: ");
    }

    @Test
    void theMonthAndTheYieldAreWrittenAsWorkbooks() {
        assertThat(shop.run("month", "2026-03")).as(shop.err()).isZero();
        assertThat(shop.folder().resolve("reports/month-2026-03.xlsx")).isNotEmptyFile();
        assertThat(shop.run("yield", "--xlsx", "cut.xlsx")).isZero();
        assertThat(shop.folder().resolve("cut.xlsx")).isNotEmptyFile();
        assertThat(shop.run("month", "March")).isEqualTo(Status.USAGE);
    }

    @Test
    void theMonthIsAlsoAWebPageAndData() throws IOException {
        assertThat(shop.run("month", "2026-03", "--html", "month.html"))
                .as(shop.err())
                .isZero();
        assertThat(shop.folder().resolve("month.html")).content().startsWith("<!doctype html>");
        assertThat(shop.folder().resolve("reports/month-2026-03.xlsx")).doesNotExist();
        assertThat(shop.run("month", "2026-03", "--html", "both.html", "--xlsx", "both.xlsx"))
                .isZero();
        assertThat(shop.folder().resolve("both.html")).isNotEmptyFile();
        assertThat(shop.folder().resolve("both.xlsx")).isNotEmptyFile();
        assertThat(shop.run("month", "2026-03", "--format", "json")).isZero();
        assertThat(json().get("causes").isArray()).isTrue();
        assertThat(json().get("suppliers").isArray()).isTrue();
        assertThat(json().get("signal").isBoolean()).isTrue();
    }

    @Test
    void showTellsWhereASetStandsAndWhatItMade() throws IOException {
        shop.run(
                "attempt",
                "001",
                "--fault",
                "backlight",
                "--fix",
                "led_strips",
                "--fix-minutes",
                "30",
                "--parts-cost",
                "10");
        shop.run("show", "001");
        assertThat(shop.out())
                .contains("Now: on the bench. 30 min; so far net recovery -22.00, landed cost 30.00 EUR\n");
        shop.run("sell", "001", "--gross", "120", "--unmet", "x");
        shop.run("show", "001");
        assertThat(shop.out()).contains("Now: sold. 30 min; net recovery 98.00, landed cost 30.00, margin 68.00 EUR\n");
        shop.run("show", "L0042");
        assertThat(shop.out())
                .contains("3 sets: 2 on the bench, 1 sold.")
                .endsWith("Net recovery so far 98.00, landed cost 90.00, together 8.00 EUR.\n");
        shop.run("show", "L0042", "--format", "json");
        assertThat(json().get("units").get(0).get("margin").decimalValue()).isEqualByComparingTo("68");
        assertThat(json().get("entries").get(0).get("columns").get("supplier").asText())
                .isEqualTo("Northquay");
    }

    @Test
    void regroupPutsSetsUnderTheFamiliesOfTheSettings() throws IOException {
        Files.writeString(
                shop.folder().resolve("shop.toml"),
                "currency = \"EUR\"\nzone = \"Europe/Berlin\"\n[families]\n\"KX\" = \"Kestrel\"\n\"kx55\" = \"Kestrel 55\"\n");
        shop.run("regroup", "--dry-run");
        assertThat(shop.out()).isEqualTo("Kestrel KX-55 -> Kestrel 55: 3 sets\n3 sets would change family\n");
        shop.run("regroup");
        assertThat(shop.out()).isEqualTo("Kestrel KX-55 -> Kestrel 55: 3 sets\n3 sets changed family\n");
        shop.run("regroup");
        assertThat(shop.out()).isEqualTo("0 sets changed family\n");
        assertThat(shop.run("audit")).isZero();
    }

    @Test
    void controlCharactersNeverReachTheTerminal() {
        shop.run("lost", "\u001b[31mL0042\u0007");
        assertThat(shop.err()).contains("\uFFFD[31mL0042\uFFFD").doesNotContain("\u001b", "\u0007");
    }

    @Test
    void aDefectIsSaidToBeOneAndTracedOnRequest() {
        shop.withoutClock();
        assertThat(shop.run("lost", "001")).isEqualTo(Status.DEFECT);
        assertThat(shop.err()).contains("this is a defect of the program").doesNotContain("\tat ");
        assertThat(shop.run("lost", "001", "--debug")).isEqualTo(Status.DEFECT);
        assertThat(shop.err()).contains("\tat org.salvedge");
    }
}
