package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.IOException;
import java.nio.file.Files;
import java.nio.file.Path;
import java.time.LocalDate;
import java.util.ArrayList;
import java.util.List;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.demo.DemoShop;
import org.salvedge.shop.Claim;
import org.salvedge.shop.Exit;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.Fact;
import org.salvedge.shop.Lot;
import org.salvedge.shop.LotId;
import org.salvedge.shop.Money;
import org.salvedge.shop.TvSet;
import org.salvedge.shop.UnitId;

/** Past lots, judged by what was known on the day before. */
class HindsightTest {
    @TempDir
    static Path folder;

    private static TestShop shop = new TestShop(Path.of(""));
    private static List<Fact> facts = List.of();

    @BeforeAll
    static void open() {
        facts = DemoShop.history(1);
        shop = ImportedShop.of(facts, folder);
    }

    private static JsonNode json(TestShop of, String... more) throws IOException {
        List<String> args = new ArrayList<>(List.of("hindsight", "--draws", "500", "--format", "json"));
        args.addAll(List.of(more));
        assertThat(of.run(args.toArray(String[]::new))).as(of.err()).isZero();
        return new ObjectMapper().readTree(of.out());
    }

    @Test
    void everyFinishedLotIsJudgedAndTheOthersAreListed() throws IOException {
        JsonNode answer = json(shop, "--last", "6");
        assertThat(answer.get("lots").intValue()).isEqualTo(6);
        assertThat(answer.get("rows")).hasSize(6);
        assertThat(answer.get("unfinished")).isNotEmpty();
        for (JsonNode open : answer.get("unfinished")) {
            assertThat(open.get("done").doubleValue()).isBetween(0.0, 1.0);
        }
        double pit = 0;
        int inside = 0;
        for (JsonNode row : answer.get("rows")) {
            double p = row.get("pit").doubleValue();
            pit += p / 6;
            inside += p >= 0.1 && p <= 0.9 ? 1 : 0;
            boolean within = row.get("outcome").doubleValue() >= row.get("p10").doubleValue()
                    && row.get("outcome").doubleValue() <= row.get("p90").doubleValue();
            assertThat(within || p < 0.12 || p > 0.88).isTrue();
        }
        assertThat(answer.get("mean_pit").doubleValue()).isCloseTo(pit, within(1e-9));
        assertThat(answer.get("coverage").get("80").get("inside").intValue()).isEqualTo(inside);
        assertThat(answer.get("verdict")).isNotEmpty();
        assertThat(shop.run("hindsight", "--last", "6", "--draws", "500", "--xlsx", "held.xlsx"))
                .isZero();
        try (XSSFWorkbook book =
                new XSSFWorkbook(Files.newInputStream(shop.folder().resolve("held.xlsx")))) {
            assertThat(book.getSheet("Lots").getLastRowNum()).isEqualTo(8);
            assertThat(book.getSheet("Hindsight").createDrawingPatriarch().getCharts())
                    .hasSize(2);
        }
    }

    /** Everything that happened on or after the day of purchase, to other lots, is changed; the estimate must not move. */
    @Test
    void nothingThatHappenedLaterGoesIntoAnEstimate(@TempDir Path elsewhere) throws IOException {
        JsonNode rows = json(shop, "--last", "8").get("rows");
        JsonNode target = rows.get(0);
        LocalDate bought = LocalDate.parse(target.get("bought_on").textValue());
        String own = target.get("lot").textValue() + "-";
        List<Fact> changed = facts.stream()
                .map(f -> f instanceof Exit e
                                && !e.on().isBefore(bought)
                                && !e.unit().value().startsWith(own)
                        ? dearer(e)
                        : f)
                .toList();
        JsonNode other =
                json(ImportedShop.of(changed, elsewhere), "--last", "8").get("rows");
        assertThat(other.get(0)).isEqualTo(target);
        assertThat(other.get(7).get("lot")).isEqualTo(rows.get(7).get("lot"));
        assertThat(other.get(7).get("mean").doubleValue())
                .as("the change is one that would be seen")
                .isGreaterThan(1.2 * rows.get(7).get("mean").doubleValue());
    }

    private static Exit dearer(Exit e) {
        return new Exit(
                e.unit(),
                e.on(),
                e.seq(),
                e.kind(),
                e.gone(),
                new Money(e.gross().minor() * 3, e.gross().currency()),
                e.fees(),
                e.shipping(),
                e.tax(),
                e.minutes(),
                e.channel(),
                e.grade(),
                e.disclosed(),
                e.unmetReason());
    }

    /** A lot of earlier days that is written down today was not known then. */
    @Test
    void nothingRecordedLaterGoesIntoAnEstimate(@TempDir Path elsewhere) throws IOException {
        TestShop late = ImportedShop.of(facts, elsewhere);
        JsonNode before = json(late, "--last", "1").get("rows").get(0);
        List<Fact> forgotten = new ArrayList<>();
        forgotten.add(lot("L9001", LocalDate.of(2024, 6, 3)));
        for (int i = 1; i <= 60; i++) {
            UnitId unit = new UnitId("L9001-" + (100 + i));
            forgotten.add(TvSet.builder(unit, new LotId("L9001"))
                    .sheet("Sheet1")
                    .line(i)
                    .maker("Kestrel")
                    .model("KX-55A")
                    .family("KX-55")
                    .build());
            forgotten.add(new Exit(
                    unit,
                    LocalDate.of(2024, 7, 1),
                    1,
                    ExitKind.SOLD,
                    null,
                    Money.parse("9000", TestShop.EUR),
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null,
                    null));
        }
        late.book(forgotten.toArray(Fact[]::new));
        JsonNode after = json(late, "--last", "2").get("rows");
        assertThat(after.get(1)).isEqualTo(before);
    }

    private static Lot lot(String name, LocalDate bought) {
        return new Lot(
                new LotId(name),
                "Northquay",
                bought,
                TestShop.EUR,
                null,
                Money.parse("100", TestShop.EUR),
                null,
                null,
                null,
                null,
                null,
                null,
                null);
    }

    @Test
    void itSaysWhatWorthSaidOnTheDayBefore() throws IOException {
        JsonNode row = json(shop, "--last", "3").get("rows").get(0);
        String lot = row.get("lot").textValue();
        LocalDate bought = LocalDate.parse(row.get("bought_on").textValue());
        StringBuilder list = new StringBuilder("Maker,Model,Size,Condition,Retail\n");
        facts.stream()
                .filter(f -> f instanceof TvSet t && t.lot().value().equals(lot) && t.line() != null)
                .map(TvSet.class::cast)
                .sorted(java.util.Comparator.comparing(TvSet::unit))
                .forEach(t -> list.append(String.join(
                                ",",
                                t.maker(),
                                t.model(),
                                String.valueOf(t.inches()),
                                words(t.claimed()),
                                t.asking() == null ? "" : t.asking().toString()))
                        .append('\n'));
        Files.writeString(shop.folder().resolve("again.csv"), list);
        int status = shop.run(
                "worth",
                "again.csv",
                "--supplier",
                row.get("supplier").textValue(),
                "--on",
                bought.toString(),
                "--as-of",
                bought.minusDays(1).toString(),
                "--draws",
                "500",
                "--format",
                "json");
        assertThat(status).as(shop.err()).isZero();
        JsonNode recovery = new ObjectMapper().readTree(shop.out()).get("recovery");
        for (String figure : List.of("mean", "p05", "p10", "p25", "p50", "p75", "p90", "p95")) {
            assertThat(recovery.get(figure).doubleValue())
                    .as(figure)
                    .isCloseTo(row.get(figure).doubleValue(), within(1e-6));
        }
    }

    /** Words that a list may use for a claim. */
    private static String words(Claim claim) {
        return claim.equals(Claim.CUSTOMER_RETURN)
                ? "customer return"
                : claim.equals(Claim.OTHER)
                        ? "tint"
                        : claim.equals(Claim.DIM_PATCHY) ? "dim" : claim.code().replace('_', ' ');
    }

    @Test
    void aShopWithoutAFinishedLotIsToldSo(@TempDir Path elsewhere) {
        TestShop young = TestShop.withLot(elsewhere);
        assertThat(young.run("hindsight")).isZero();
        assertThat(young.out()).contains("No lot is finished yet", "L0042 0.00");
        assertThat(young.run("hindsight", "--last", "0")).isEqualTo(Status.USAGE);
    }
}
