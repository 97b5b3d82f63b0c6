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
import org.junit.jupiter.params.provider.CsvSource;

class ReceiveTest {
    private static final String LIST = """
            Model,Maker,Size,Condition,Qty,Price
            KX-55A,Kestrel,55,horizontal lines,1,120.00
            KX-55A,Kestrel,55,not tested,3,110.00
            OR-43,Orlan,43,no power,1,80.00
            """;

    private TestShop shop;
    private Path list;

    @BeforeEach
    void open(@TempDir Path folder) throws IOException {
        shop = new TestShop(Files.createDirectories(folder.resolve("shop")));
        shop.run("init", "--zone", "Europe/Berlin");
        list = Files.writeString(folder.resolve("harbour 0312.csv"), LIST);
    }

    private int receive(String... more) {
        String[] args = {"receive", list.toString(), "--lot", "L0042", "--supplier", "Northquay", "--price", "100"};
        return shop.run(Stream.concat(Stream.of(args), Stream.of(more)).toArray(String[]::new));
    }

    private JsonNode receiveJson(String... more) throws IOException {
        receive(Stream.concat(Stream.of(more), Stream.of("--format", "json")).toArray(String[]::new));
        return new ObjectMapper().readTree(shop.out());
    }

    @Test
    void aLotIsBookedWithALabelAndAShareForEachSet() {
        int status = receive("--on", "2026-03-12", "--premium-pct", "12.5", "--freight", "30");
        assertThat(shop.err()).isEmpty();
        assertThat(shop.out()).isEqualTo("""
                        Lot L0042 from Northquay: 5 sets, 5 arrived
                        Labels L0042-001 to L0042-005; landed cost 142.50 EUR, 28.50 a set
                        The list is kept as lots/harbour-0312.csv
                        Labels and bench sheet: reports/labels-L0042.xlsx, reports/bench-L0042.xlsx
                        """);
        assertThat(status).isZero();
        assertThat(shop.folder().resolve("lots/harbour-0312.csv")).hasContent(LIST);
        shop.run("show", "L0042-001");
        assertThat(shop.out())
                .contains("Kestrel KX-55A, 55 in", "claimed horizontal_lines", "asking 120.00", "landed cost 28.50");
    }

    @Test
    void aLotIsTakenBackWithItsSetsUnlessSomethingStandsOnIt() {
        receive("--on", "2026-03-12");
        assertThat(shop.run("attempt", "L0042-002", "--fault", "row_drive", "--fix", "none"))
                .isZero();
        assertThat(shop.run("undo", "1")).isEqualTo(Status.REFUSED);
        assertThat(shop.err()).contains("later entries rest on it: entry 7 (attempt 1");
        shop.run("undo");
        assertThat(shop.run("place", "L0042-003", "bay 4")).as(shop.err()).isZero();
        assertThat(shop.run("undo", "1")).isEqualTo(Status.REFUSED);
        assertThat(shop.err()).contains("entry 4, recorded with it, was changed by entry 9 since");
        shop.run("undo", "9");
        assertThat(shop.run("undo", "1", "--why", "wrong list")).as(shop.err()).isZero();
        assertThat(shop.out()).contains("undoes entry 6").contains("undoes entry 1, lot L0042");
        assertThat(shop.run("audit")).as(shop.out()).isZero();
        assertThat(receive("--on", "2026-03-12")).as(shop.err()).isZero();
        assertThat(shop.run("undo")).as(shop.err()).isZero();
        assertThat(shop.run("show", "L0042")).isEqualTo(Status.REFUSED);
        assertThat(shop.run("audit")).as(shop.out()).isZero();
    }

    @Test
    void theAnswerIsTheContractsJson() throws IOException {
        JsonNode json = receiveJson("--missing", "3x2", "--extra", "KX-55A", "ZZ-1");
        assertThat(json.get("lot").asText()).isEqualTo("L0042");
        assertThat(json.get("sets").asInt()).isEqualTo(7);
        assertThat(json.get("missing").asInt()).isEqualTo(2);
        assertThat(json.get("landed_cost").asText()).isEqualTo("100.0");
        assertThat(json.get("units")).hasSize(7);
        assertThat(json.get("units").get(6).asText()).isEqualTo("L0042-007");
        assertThat(json.get("problems")).isEmpty();
        assertThat(json.get("files").get(0).asText()).isEqualTo("lots/harbour-0312.csv");
    }

    @Test
    void aMakerInCapitalsIsTheMakerThatTheShopKnows(@TempDir Path more) throws IOException {
        receive();
        Path second = Files.writeString(
                more.resolve("second.csv"), LIST.replace("Orlan", "ORLAN").replace("OR-43", "OR-50"));
        shop.run("receive", second.toString(), "--lot", "L0043", "--supplier", "Northquay", "--price", "10");
        shop.run("show", "L0043-005");
        assertThat(shop.out()).contains("Orlan OR-50").doesNotContain("ORLAN");
    }

    @Test
    void missingSetsCarryNoCostAndTheOthersShareAllOfIt() {
        receive("--missing", "3x2", "--missing", "2");
        assertThat(shop.out()).contains("5 sets, 2 arrived, 3 missing", "50.00 a set");
        shop.run("show", "L0042-004");
        assertThat(shop.out().lines().findFirst())
                .hasValueSatisfying(
                        line -> assertThat(line).contains(", line 3, ").endsWith("did not arrive"));
        assertThat(shop.out()).contains("Now: did not arrive.", "landed cost 0.00");
    }

    @Test
    void aLotOfWhichNothingArrivedIsALossOutsideAllSets() {
        assertThat(receive("--missing", "2,3x3,4")).isZero();
        assertThat(shop.out()).contains("0 arrived, 5 missing", "the lot's loss: no set arrived");
    }

    @Test
    void theCostCanBeSharedByScreenArea() {
        receive("--basis", "area", "--missing", "3x3");
        // Squares of the diagonals, 55 and 43 inches: 3025 and 1849 of 4874.
        assertThat(shop.out()).contains("37.94 to 62.06 a set");
    }

    @Test
    void anExtraSetTakesWhatTheShopKnowsOfItsModel() {
        receive();
        shop.run("amend", "2", "--family", "Kestrel KX-55", "--why", "seen");
        shop.run("amend", "3", "--family", "Kestrel KX-55", "--why", "seen");
        shop.run("amend", "4", "--family", "Kestrel KX-55", "--why", "seen");
        receiveSecond("--extra", "kx55a");
        shop.run("show", "L0043-002");
        assertThat(shop.out()).contains("Kestrel kx55a, 55 in, family Kestrel KX-55", "not on the manifest");
    }

    private void receiveSecond(String... more) {
        try {
            Path other = Files.writeString(list.resolveSibling("other.csv"), "Model,Size,Condition\nOR-43,43,dead\n");
            String[] args = {"receive", other.toString(), "--lot", "L0043", "--supplier", "Northquay", "--price", "10"};
            assertThat(shop.run(Stream.concat(Stream.of(args), Stream.of(more)).toArray(String[]::new)))
                    .as(shop.err())
                    .isZero();
        } catch (IOException e) {
            throw new java.io.UncheckedIOException(e);
        }
    }

    @Test
    void theSameFileIsNotReceivedTwiceNotEvenUnderAnotherName() throws IOException {
        receive();
        Path copy = Files.copy(list, list.resolveSibling("copy.csv"));
        int status = shop.run("receive", copy.toString(), "--lot", "L9", "--supplier", "x", "--price", "1");
        assertThat(status).isEqualTo(Status.REFUSED);
        assertThat(shop.err()).contains("received before, as lot L0042");
        assertThat(files()).containsExactly("harbour-0312.csv");
    }

    @Test
    void aLotIsNotBookedTwice() throws IOException {
        receive();
        Files.writeString(list, LIST + "OR-43,Orlan,43,dead,1,80.00\n");
        assertThat(receive()).isEqualTo(Status.REFUSED);
        assertThat(shop.err()).contains("lot L0042 is booked already");
        assertThat(files()).containsExactly("harbour-0312.csv");
    }

    @Test
    void linesWithProblemsThatASetCanLiveWithAreBookedAndListed() throws IOException {
        Files.writeString(list, "Model,Size,Condition,Price\nKX-55A,55,dead,ask\nOR-43,43,dead,80\n");
        assertThat(receive()).isEqualTo(Status.PROBLEMS);
        assertThat(shop.out()).contains("2 sets, 2 arrived");
        assertThat(shop.err()).contains("row 2, column \"Price\": \"ask\" is not a price");
    }

    @Test
    void strictRefusesThem() throws IOException {
        Files.writeString(list, "Model,Size,Condition,Price\nKX-55A,55,dead,ask\n");
        assertThat(receive("--strict")).isEqualTo(Status.REFUSED);
        assertThat(shop.err()).contains("row 2, column \"Price\": \"ask\" is not a price", "nothing was booked");
        assertThat(files()).isEmpty();
        assertThat(shop.run("show", "L0042")).isEqualTo(Status.REFUSED);
    }

    @Test
    void anotherCurrencyNeedsARateAndTheCostIsInTheBooks() {
        assertThat(receive("--currency", "JPY")).isEqualTo(Status.USAGE);
        assertThat(shop.err()).contains("how many EUR (the book's currency) is one JPY?");
        assertThat(receive("--currency", "JPY", "--rate", "0.0061", "--freight", "1000"))
                .as(shop.err())
                .isZero();
        assertThat(shop.out()).contains("landed cost 6.71 EUR");
    }

    @Test
    void aBidOnTheListIsWonByReceivingIt() {
        shop.run("bid", list.toString(), "--limit", "120", "--supplier", "Northquay", "--on", "2026-03-10");
        assertThat(shop.out())
                .startsWith("entry 1: bid 1 on 2026-03-10, from Northquay, 5 sets, limit 120.00, expected ")
                .contains(", manifest ");
        receive();
        shop.run("show", "L0042");
        assertThat(shop.out()).contains("bid 1 on 2026-03-10", "won, hammer 100.00, lot L0042");
    }

    @Test
    void aBidIsCompletedLaterByTheSameFile() {
        shop.run("bid", list.toString(), "--limit", "120");
        assertThat(shop.run("bid", list.toString(), "--won", "no", "--hammer", "150"))
                .isZero();
        assertThat(shop.out())
                .startsWith("entry 2: bid 1 ")
                .contains("limit 120.00, expected ", ", not won, hammer 150.00");
        assertThat(shop.run("bid", list.toString(), "--won", "no")).isEqualTo(Status.USAGE);
    }

    @ParameterizedTest(name = "{0}")
    @CsvSource(delimiter = ';', textBlock = """
        a line that is not there   ; 3 ; --missing 9: the manifest has no set on that line      ; --missing 9
        how many of several        ; 3 ; that line holds 3 sets. Say how many are missing: 3x1 to 3x3 ; --missing 3
        more than there are        ; 3 ; --missing 3x4: only 3 of that line are left            ; --missing 3x4
        no line                    ; 3 ; --missing: "two" is not a line                          ; --missing two
        both premiums              ; 2 ; --premium and --premium-pct: give one of them           ; --premium 3 --premium-pct 4
        a currency that is none    ; 2 ; --currency: "EURO" is not a currency of ISO 4217        ; --currency EURO
        a rate for the book's own  ; 2 ; --rate: EUR is the book's own currency                  ; --rate 1.2
        too many decimals          ; 2 ; --freight: "1.005" is too large or has more decimals    ; --freight 1.005
        received before bought     ; 3 ; before it was bought on                                 ; --on 2026-03-12 --received-on 2026-03-11
        bought in the future       ; 3 ; is in the future                                        ; --on 2027-03-12
        a basis of its own         ; 2 ; --basis: "weight" is none of equal, area, value, given  ; --basis weight
        """)
    void badTermsAreRefusedAndNothingIsBooked(String what, int status, String message, String more) throws IOException {
        assertThat(receive(more.strip().split(" "))).as(shop.err()).isEqualTo(status);
        assertThat(shop.err().replaceAll("\n +", " ")).startsWith("salvedge: ").contains(message);
        assertThat(files()).isEmpty();
        assertThat(shop.run("show", "L0042")).isEqualTo(Status.REFUSED);
    }

    @Test
    void aFileThatIsNotThereIsRefused() {
        assertThat(shop.run("receive", "nowhere.csv", "--lot", "L1", "--supplier", "x", "--price", "1"))
                .isEqualTo(Status.REFUSED);
        assertThat(shop.err()).contains("nowhere.csv");
    }

    @Test
    void previewAnswersTheContractsJsonAndNeedsNoShop(@TempDir Path elsewhere) throws IOException {
        TestShop none = new TestShop(elsewhere);
        assertThat(none.run("preview", list.toString(), "--format", "json")).isZero();
        JsonNode json = new ObjectMapper().readTree(none.out());
        assertThat(json.get("header_row").asInt()).isEqualTo(1);
        assertThat(json.get("columns").get("claimed").asText()).isEqualTo("Condition");
        assertThat(json.get("sets")).hasSize(5);
        assertThat(json.get("sets").get(1).get("line").asInt()).isEqualTo(3);
        assertThat(json.get("sets").get(0).get("asking").decimalValue()).isEqualByComparingTo("120");
        assertThat(elsewhere).isEmptyDirectory();
    }

    private Stream<String> files() throws IOException {
        try (Stream<Path> all = Files.list(shop.folder().resolve("lots"))) {
            return all.map(p -> p.getFileName().toString()).sorted().toList().stream();
        }
    }
}
