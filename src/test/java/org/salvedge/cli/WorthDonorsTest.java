package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.stream.IntStream;
import org.apache.poi.ss.usermodel.Cell;
import org.apache.poi.ss.usermodel.CellType;
import org.apache.poi.ss.usermodel.Row;
import org.apache.poi.xssf.usermodel.XSSFWorkbook;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.shop.Fact;

/** What boards out of donors save a lot on offer, in a shop that has used one. */
class WorthDonorsTest {
    @TempDir
    Path folder;

    private TestShop shop;

    @BeforeEach
    void open() throws Exception {
        shop = TestShop.withLot(folder);
        shop.book(TestShop.lot("L0043", "90.00"));
        shop.book(IntStream.rangeClosed(1, 8)
                .mapToObj(i -> TestShop.set("L0043", i))
                .toArray(Fact[]::new));
        Files.writeString(
                folder.resolve("list.csv"), "Maker,Model,Size,Condition,Qty\nKestrel,KX-55A,55,untested,40\n");
        for (int i = 1; i <= 3; i++) {
            swap("L0043-00" + i, "--parts-cost", "40");
        }
    }

    private void done(String... words) {
        assertThat(shop.run(words)).as(shop.err()).isZero();
    }

    private void swap(String unit, String option, String value) {
        done(
                "attempt",
                unit,
                "--fault",
                "main_board",
                "--fix",
                "main_board_swap",
                "--fix-minutes",
                "30",
                "--passed",
                "yes",
                "--grade",
                "A",
                option,
                value);
    }

    private void donor() {
        done("attempt", "L0042-001", "--fault", "panel_broken", "--fix", "none", "--diagnosis-minutes", "4");
        done("harvest", "L0042-001", "--kind", "main_board", "--number", "MB-7", "--value", "12");
        swap("L0043-004", "--part", "P0001");
        done("strip", "L0042-001", "--gross", "20");
    }

    private JsonNode worth(String... more) throws Exception {
        String[] words = {"worth", "list.csv", "--on", "2026-03-20", "--draws", "2000", "--format", "json"};
        done(java.util.stream.Stream.of(words, more)
                .flatMap(java.util.Arrays::stream)
                .toArray(String[]::new));
        return new ObjectMapper().readTree(shop.out());
    }

    @Test
    void aBoardThatWasUsedLetsTheNextLotCountOnOthers() throws Exception {
        assertThat(worth().get("donors").isNull()).isTrue();
        donor();
        JsonNode donors = worth().get("donors");
        assertThat(donors.get("pairs").asDouble()).isPositive();
        assertThat(donors.get("gain").asDouble()).isPositive();
        assertThat(donors.get("rows").get(0).get("kind").asText()).isEqualTo("main_board");
        assertThat(donors.get("rows").get(0).get("family").asText()).isEqualTo("Kestrel KX-55");
        assertThat(donors.get("rows").get(0).get("by").asText()).isEqualTo("number");
        assertThat(worth("--as-of", "2026-03-13").get("donors").isNull()).isTrue();
    }

    @Test
    void theTextAndTheBidSheetSayWhatItRestsOn() throws Exception {
        donor();
        done("worth", "list.csv", "--on", "2026-03-20", "--draws", "2000", "--xlsx", "bid.xlsx");
        assertThat(shop.out())
                .contains("Boards out of donors")
                .contains("main_board for Kestrel KX-55")
                .contains("(by number)")
                .contains("which is in the figures");
        try (XSSFWorkbook book = new XSSFWorkbook(folder.resolve("bid.xlsx").toFile())) {
            boolean there = false;
            for (Row row : book.getSheetAt(0)) {
                Cell cell = row.getCell(0);
                there |= cell != null
                        && cell.getCellType() == CellType.STRING
                        && cell.getStringCellValue().equals("Boards out of donors")
                        && row.getCell(1).getNumericCellValue() > 0;
            }
            assertThat(there).isTrue();
        }
    }
}
