package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.demo.DemoShop;

/** What a lot is worth, asked of two years of an invented shop. */
class WorthTest {
    @TempDir
    static Path temporary;

    private static Path folder = Path.of("");
    private static TestShop shop = new TestShop(Path.of(""));

    @BeforeAll
    static void open() throws IOException {
        shop = ImportedShop.of(DemoShop.history(1), temporary);
        folder = shop.folder();
        Files.writeString(folder.resolve("list.csv"), """
                Maker,Model,Size,Condition,Qty
                Kestrel,KX-55A,55,horizontal lines,6
                Orlan,43U-7,43,no picture,4
                Orlan,43U-7,43,untested,5
                Vesper,65Q-1,65,dead,3
                """);
    }

    private static JsonNode json(String... more) throws IOException {
        List<String> args = new ArrayList<>(List.of("worth", "list.csv", "--draws", "2000", "--format", "json"));
        args.addAll(List.of(more));
        assertThat(shop.run(args.toArray(String[]::new))).as(shop.err()).isZero();
        return new ObjectMapper().readTree(shop.out());
    }

    private static List<String> keys(JsonNode node) {
        List<String> keys = new ArrayList<>();
        node.fieldNames().forEachRemaining(keys::add);
        return keys;
    }

    @Test
    void everyKeyOfTheContractIsThere() throws IOException {
        JsonNode answer = json("--price", "300", "--premium-pct", "12", "--freight", "40");
        assertThat(keys(answer))
                .contains(
                        "sets",
                        "history",
                        "recovery",
                        "minutes",
                        "highest_bid",
                        "break_even_bid",
                        "at_price",
                        "lines",
                        "notes");
        assertThat(keys(answer.get("history"))).contains("lots", "sets");
        assertThat(keys(answer.get("recovery")))
                .contains("mean", "sd", "p05", "p10", "p25", "p50", "p75", "p90", "p95");
        assertThat(keys(answer.get("minutes"))).contains("mean", "p90");
        assertThat(keys(answer.get("highest_bid"))).contains("price", "confidence", "target_return");
        assertThat(keys(answer.get("at_price"))).contains("price", "profit_mean", "p_loss", "p10", "p50", "p90");
        assertThat(keys(answer.get("lines").get(0)))
                .contains(
                        "sheet",
                        "line",
                        "sets",
                        "model",
                        "family",
                        "recovery_mean",
                        "p_saved",
                        "minutes_mean",
                        "route",
                        "basis");
        assertThat(answer.get("sets").intValue()).isEqualTo(18);
        assertThat(answer.get("lines")).hasSize(4);
        assertThat(json().get("at_price").isNull()).isTrue();
    }

    @Test
    void linesAddUpToTheLot() throws IOException {
        JsonNode answer = json();
        double sum = 0;
        int sets = 0;
        for (JsonNode line : answer.get("lines")) {
            sum += line.get("recovery_mean").doubleValue();
            sets += line.get("sets").intValue();
        }
        assertThat(sum).isCloseTo(answer.get("recovery").get("mean").doubleValue(), within(1e-6));
        assertThat(sets).isEqualTo(18);
    }

    @Test
    void theHighestBidKeepsItsPromiseAndACentMoreDoesNot() throws IOException {
        JsonNode answer = json("--premium-pct", "12", "--freight", "40", "--confidence", "0.75");
        double bid = answer.get("highest_bid").get("price").doubleValue();
        String[] terms = {"--premium-pct", "12", "--freight", "40", "--price"};
        assertThat(lossAt(bid, terms)).isLessThanOrEqualTo(0.25);
        assertThat(lossAt(bid + 0.01, terms)).isGreaterThan(0.25);
        double even = answer.get("break_even_bid").get("price").doubleValue();
        assertThat(json("--premium-pct", "12", "--freight", "40", "--price", String.format("%.2f", even))
                        .get("at_price")
                        .get("profit_mean")
                        .doubleValue())
                .isBetween(0.0, 0.03);
    }

    private static double lossAt(double price, String... terms) throws IOException {
        List<String> args = new ArrayList<>(List.of(terms));
        args.add(String.format(java.util.Locale.ROOT, "%.2f", price));
        return json(args.toArray(String[]::new)).get("at_price").get("p_loss").doubleValue();
    }

    @Test
    void theRecordEndsTheDayBeforeThePurchaseUnlessSaidOtherwise() throws IOException {
        JsonNode answer = json("--on", "2025-06-10");
        assertThat(json("--on", "2025-06-10", "--as-of", "2025-06-09")).isEqualTo(answer);
        assertThat(json("--on", "2025-06-10", "--as-of", "2025-03-01")).isNotEqualTo(answer);
        assertThat(answer.get("history").get("lots").intValue())
                .isLessThan(json().get("history").get("lots").intValue());
    }

    @Test
    void theTextSaysTheAnswerItsGroundsAndItsDoubts() {
        int status = shop.run(
                "worth", "list.csv", "--draws", "2000", "--supplier", "Northquay", "--price", "300", "--freight", "40");
        assertThat(status).as(shop.err()).isZero();
        assertThat(shop.out())
                .contains("18 sets", "from Northquay", "Bid up to", "4 times in 5", "Break-even bid", "Bench time")
                .contains("Give up after (minutes)", "Bids kept on lots of Northquay")
                .contains("Profit at 300", "What carries it", "What could sink it", "What would change it", "Rests on");
        assertThat(shop.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(100));
    }

    @Test
    void aSellersTextGivesTheTerminalNoCommands() throws IOException {
        Files.writeString(folder.resolve("evil.csv"), """
                Maker,Model,Size,Condition
                Kes\u001b[31mtrel,X\u001b]0;owned\u0007Y-1,55,lines
                =cmd(),=HYPERLINK("http://x"),43,dead\u202e
                """);
        int status = shop.run("worth", "evil.csv", "--draws", "500", "--supplier", "A\u001b[2JB");
        assertThat(status).isIn(Status.DONE, Status.PROBLEMS);
        assertThat((shop.out() + shop.err()).chars())
                .noneMatch(c -> c == 0x1b || c == 0x07 || c == 0x202e || c < 0x20 && c != '\n');
    }

    @Test
    void anEmptyShopAnswersFromWhatIsAssumedAndSaysSo(@TempDir Path empty) throws IOException {
        TestShop young = new TestShop(empty);
        young.run("init");
        Files.copy(folder.resolve("list.csv"), empty.resolve("list.csv"));
        assertThat(young.run("worth", "list.csv", "--draws", "1000"))
                .as(young.err())
                .isZero();
        assertThat(young.out()).contains("Assumed", "assumed:", "Rests on 0 lots, 0 sets");
        young.run("worth", "list.csv", "--draws", "1000", "--format", "json");
        JsonNode answer = new ObjectMapper().readTree(young.out());
        assertThat(answer.get("lines").get(0).get("basis").textValue()).startsWith("assumed");
        assertThat(answer.get("notes").toString()).contains("assumed:");
        JsonNode r = answer.get("recovery");
        assertThat(r.get("p90").doubleValue() - r.get("p10").doubleValue())
                .as("honestly wide")
                .isGreaterThan(0.3 * r.get("mean").doubleValue());
    }

    @ParameterizedTest
    @CsvSource({
        "--price,-1,must not be negative",
        "--confidence,1,not between 0 and 1",
        "--confidence,0,not between 0 and 1",
        "--target-return,-1,not above -1",
        "--draws,99,not between 100",
        "--premium-pct,-3,must not be negative",
        "--price,1.234,more decimals"
    })
    void whatCannotBeMeantIsWrongUsage(String option, String value, String message) {
        assertThat(shop.run("worth", "list.csv", option, value)).isEqualTo(Status.USAGE);
        assertThat(shop.err()).contains(option).contains(message);
    }

    @Test
    void aListWithoutAReadableSetIsRefused() throws IOException {
        Files.writeString(folder.resolve("none.csv"), "Model,Size,Condition,Qty\nKX-55A,55,lines,many\n");
        assertThat(shop.run("worth", "none.csv")).isEqualTo(Status.REFUSED);
        assertThat(shop.err()).contains("none.csv");
        assertThat(shop.out()).isEmpty();
    }

    @Test
    void aRecordInAnotherCurrencyIsRefused(@TempDir Path elsewhere) throws IOException {
        TestShop other = new TestShop(elsewhere);
        other.run("init", "--currency", "CHF");
        Files.writeString(elsewhere.resolve("shop.toml"), "currency = \"EUR\"\n");
        Files.copy(folder.resolve("list.csv"), elsewhere.resolve("list.csv"));
        assertThat(other.run("worth", "list.csv")).isEqualTo(Status.REFUSED);
        assertThat(other.err()).contains("CHF").contains("EUR");
    }

    @Test
    void aListOfSetsNeverSeenIsAnsweredAndDoubted() throws IOException {
        Files.writeString(folder.resolve("new.csv"), """
                Maker,Model,Size,Condition,Qty
                Nobody,ZZ-1,55,untested,10
                Nobody,ZZ-2,58,dead,10
                """);
        assertThat(shop.run("worth", "new.csv", "--draws", "1000"))
                .as(shop.err())
                .isZero();
        assertThat(shop.out()).contains("never seen here", "ZZ-1");
    }

    @Test
    void ofSeveralLotsThoseAreChosenThatTogetherBringMost() throws IOException {
        String[] lists = {"a.csv", "b.csv", "c.csv", "d.csv"};
        int[] sets = {8, 14, 5, 20};
        List<String> args = new ArrayList<>(List.of("worth", "--draws", "1000", "--confidence", "0.6"));
        for (int i = 0; i < lists.length; i++) {
            Files.writeString(
                    folder.resolve(lists[i]),
                    "Maker,Model,Size,Condition,Qty\nKestrel,KX-55A,55,horizontal lines," + sets[i] + "\n");
            args.add(lists[i]);
            args.addAll(List.of("--price", String.valueOf(20 * sets[i] - 10 * i)));
        }
        args.addAll(List.of("--cash", "600", "--hours", "30", "--format", "json"));
        assertThat(shop.run(args.toArray(String[]::new))).as(shop.err()).isZero();
        JsonNode answer = new ObjectMapper().readTree(shop.out());
        double best = 0;
        for (int some = 0; some < 16; some++) {
            double cash = 0;
            double hours = 0;
            double profit = 0;
            for (int i = 0; i < 4; i++) {
                if ((some >> i & 1) == 1) {
                    JsonNode lot = answer.get("lots").get(i);
                    cash += lot.get("outlay").doubleValue();
                    hours += lot.get("hours").doubleValue();
                    profit += lot.get("profit_mean").doubleValue();
                }
            }
            best = cash <= 600 && hours <= 30 ? Math.max(best, profit) : best;
        }
        JsonNode choice = answer.get("choice");
        assertThat(choice.get("profit_mean").doubleValue())
                .isCloseTo(best, within(1e-6))
                .isPositive();
        assertThat(choice.get("hours_used").doubleValue()).isLessThanOrEqualTo(30);
        assertThat(choice.get("shadow_price_hour").doubleValue()
                        + choice.get("shadow_price_cash").doubleValue())
                .isPositive();
        assertThat(choice.get("take").size()).isLessThan(4).isPositive();
        assertThat(shop.run("worth", "a.csv", "b.csv", "--draws", "1000", "--hours", "9"))
                .isZero();
        assertThat(shop.out()).contains("a.csv", "b.csv", "Hours are short", "highest bid");
        assertThat(shop.run("worth", "a.csv", "b.csv", "c.csv", "--price", "1", "--price", "2"))
                .isEqualTo(Status.USAGE);
    }

    @Test
    void aBidKeepsWhatWorthSaid(@TempDir Path elsewhere) throws IOException {
        TestShop other = new TestShop(elsewhere);
        other.run("init");
        Files.copy(folder.resolve("list.csv"), elsewhere.resolve("list.csv"));
        other.run("worth", "list.csv", "--format", "json", "--supplier", "Northquay");
        JsonNode recovery = new ObjectMapper().readTree(other.out()).get("recovery");
        assertThat(other.run("bid", "list.csv", "--limit", "100", "--supplier", "Northquay"))
                .isZero();
        other.run("export", "out");
        List<String> row = Files.readAllLines(elsewhere.resolve("out/bids.csv"));
        List<String> columns = List.of(row.get(0).split(","));
        String[] cells = row.get(1).split(",", -1);
        for (String figure : List.of("mean", "p10", "p50", "p90")) {
            assertThat(Double.parseDouble(cells[columns.indexOf(figure)]))
                    .as(figure)
                    .isCloseTo(recovery.get(figure).doubleValue(), within(0.0051));
        }
    }

    @Test
    void aSupplierIsKnownInAnyLettersAndASlipIsAskedAbout() throws IOException {
        assertThat(json("--supplier", " NORTHQUAY ")).isEqualTo(json("--supplier", "Northquay"));
        shop.run("worth", "list.csv", "--draws", "500", "--supplier", "Nortquay");
        assertThat(shop.out().replaceAll("\\s+", " "))
                .contains("nothing bought before from Nortquay (did you mean Northquay?)");
    }

    @Test
    void pastBidsSayHowLimitsStoodToHammerPrices() throws IOException {
        JsonNode bids = json("--supplier", "Northquay").get("bids");
        assertThat(bids.get("supplier").textValue()).isEqualTo("Northquay");
        assertThat(bids.get("kept").intValue()).isGreaterThan(bids.get("won").intValue());
        assertThat(bids.get("hammer_over_mean_p50").doubleValue()).isBetween(0.3, 1.2);
        JsonNode before = json("--supplier", "Northquay", "--on", "2024-03-06").get("bids");
        assertThat(before.get("kept").intValue())
                .as("later bids were not known")
                .isLessThan(3);
    }

    @Test
    void theStopMinutesAreThoseThatTheQueueNames() throws IOException {
        JsonNode stops =
                json("--supplier", "Northquay", "--as-of", "2025-12-31").get("stops");
        assertThat(shop.run("queue", "--as-of", "2025-12-31", "--format", "json"))
                .as(shop.err())
                .isZero();
        JsonNode rows = new ObjectMapper().readTree(shop.out()).get("rows");
        int compared = 0;
        for (JsonNode stop : stops) {
            for (JsonNode row : rows) {
                JsonNode same = row.get("stops").get(stop.get("fault").textValue());
                if (same != null
                        && row.get("stops").size() > 1
                        && row.get("family").equals(stop.get("family"))
                        && row.get("inches").doubleValue() == stop.get("inches").doubleValue()
                        && row.get("spent").doubleValue() == 0) {
                    assertThat(same.intValue()).isEqualTo(stop.get("minute").intValue());
                    JsonNode band = row.get("stop_bands").get(stop.get("fault").textValue());
                    assertThat(band.get(0).intValue()).isEqualTo(stop.get("low").intValue());
                    assertThat(band.get(1).intValue())
                            .isEqualTo(stop.get("high").intValue());
                    compared++;
                }
            }
        }
        assertThat(compared).isGreaterThan(4);
    }

    @Test
    void lookingFirstIsWeighedAndWhatWasFoundMovesTheBid() throws IOException {
        JsonNode before = json("--inspect", "4", "--price", "400");
        JsonNode look = before.get("inspect");
        assertThat(look.get("gain").doubleValue())
                .isBetween(0.0, look.get("gain_at_break_even").doubleValue());
        int sets = 0;
        for (JsonNode pick : look.get("look_at")) {
            sets += pick.get("sets").intValue();
        }
        assertThat(sets).isBetween(1, 4);
        Files.writeString(
                folder.resolve("found.csv"),
                "line,model,fault\n4,,panel_broken\n4,,panel_broken\n5,KX-65A,panel_broken\n");
        JsonNode after = json("--found", "found.csv");
        assertThat(after.get("recovery").get("mean").doubleValue())
                .isLessThan(before.get("recovery").get("mean").doubleValue());
        Files.writeString(folder.resolve("wrong.csv"), "line,fault\n4,panel_brokn\n99,none_found\n");
        assertThat(shop.run("worth", "list.csv", "--found", "wrong.csv")).isEqualTo(Status.REFUSED);
        assertThat(shop.err()).contains("wrong.csv, row 2, column \"fault\"", "row 3, column \"line\"");
        assertThat(shop.run("worth", "list.csv", "--inspect", "0")).isEqualTo(Status.USAGE);
    }

    @ParameterizedTest
    @ValueSource(ints = {60, 64, 70, 80})
    void theAnswerKeepsWithinANarrowTerminal(int width) {
        String[] question = {"worth", "list.csv", "--draws", "2000", "--price", "300", "--inspect", "3"};
        shop.run(question);
        String wide = shop.out();
        try {
            shop.columns(width).run(question);
            assertThat(shop.out().lines()).allSatisfy(line -> assertThat(line).hasSizeLessThanOrEqualTo(width));
            assertThat(shop.out().replaceAll("[^0-9]+", " "))
                    .contains(wide.lines()
                            .filter(line -> line.startsWith("  bid up to"))
                            .findAny()
                            .orElseThrow()
                            .strip()
                            .split(" +")[3]);
        } finally {
            shop.columns(100);
        }
        shop.run(question);
        assertThat(shop.out()).isEqualTo(wide);
    }

    @Test
    void headingsAreSetOffOnATerminalWithColour() {
        String[] question = {"worth", "list.csv", "--draws", "2000"};
        shop.run(question);
        String plain = shop.out();
        try {
            shop.inColour().run(question);
        } finally {
            shop.columns(100);
        }
        assertThat(shop.out()).contains("\u001b[1mWhat carries it").doesNotContain("\ufffd");
        assertThat(shop.out().replaceAll("\u001b\\[[01]m", "")).isEqualTo(plain);
    }
}
