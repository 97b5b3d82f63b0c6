package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

/** Boards that move from one set to another. */
class HarvestTest {
    @TempDir
    Path folder;

    private TestShop shop;

    @BeforeEach
    void open() {
        shop = TestShop.withLot(folder);
        shop.run("attempt", "L0042-001", "--fault", "panel_broken", "--fix", "none", "--diagnosis-minutes", "4");
    }

    private void harvest() {
        assertThat(shop.run(
                        "harvest",
                        "L0042-001",
                        "--kind",
                        "main_board",
                        "--number",
                        "MB-1",
                        "--value",
                        "12",
                        "--tested",
                        "good"))
                .as(shop.err())
                .isZero();
    }

    private JsonNode account(String unit) throws Exception {
        shop.run("show", unit, "--format", "json");
        return new ObjectMapper().readTree(shop.out()).get("units").get(0);
    }

    @Test
    void aPartUsedInAnotherSetMovesItsValueAndLeavesTheTotalAsItIs() throws Exception {
        harvest();
        assertThat(shop.out()).contains("part P0001 main_board, number MB-1, out of L0042-001");
        double before = account("L0042-001").get("net").asDouble()
                + account("L0042-002").get("net").asDouble();
        assertThat(shop.run(
                        "attempt",
                        "L0042-002",
                        "--fault",
                        "main_board",
                        "--fix",
                        "main_board_swap",
                        "--part",
                        "p0001",
                        "--passed",
                        "yes"))
                .as(shop.err())
                .isZero();
        double donor = account("L0042-001").get("net").asDouble();
        double patient = account("L0042-002").get("net").asDouble();
        assertThat(patient).isEqualTo(-12);
        assertThat(donor + patient).isCloseTo(before, within(1e-9));
        assertThat(account("L0042-001").get("now").asText()).isEqualTo("on_bench");
        assertThat(shop.run("attempt", "L0042-003", "--fault", "main_board", "--fix", "none", "--part", "P0001"))
                .isEqualTo(3);
        assertThat(shop.err()).contains("part P0001 was used in attempt 2");
        assertThat(shop.run("audit")).isZero();
        assertThat(shop.run("export", "out")).as(shop.err()).isZero();
    }

    @Test
    void aTurnWithAPartIsTakenBackWholeByItsNumberAndByNone() throws Exception {
        harvest();
        String[] turn = {
            "attempt",
            "L0042-002",
            "--fault",
            "main_board",
            "--fix",
            "main_board_swap",
            "--part",
            "P0001",
            "--passed",
            "yes"
        };
        for (String[] undo : new String[][] {{"undo"}, {"undo", "14"}}) {
            assertThat(shop.run(turn)).as(shop.err()).isZero();
            assertThat(account("L0042-001").get("net").asDouble()).isGreaterThan(0);
            assertThat(shop.run(undo)).as(shop.err()).isZero();
            assertThat(shop.out().lines()).hasSize(3);
            assertThat(account("L0042-002").get("net").asDouble()).isZero();
            shop.run("harvest");
            assertThat(shop.out()).contains("P0001");
            assertThat(shop.run("audit")).as(shop.out()).isZero();
        }
    }

    @Test
    void theBenchTakesAPartByItsLabel() throws Exception {
        harvest();
        shop.answering("L0042-002", "main . y a so +p0001", "q").run("bench");
        assertThat(shop.out())
                .contains("main_board_swap, passed, grade A, parts 12.00")
                .contains("used in attempt 2");
        assertThat(account("L0042-002").get("net").asDouble()).isEqualTo(-12);
    }

    @Test
    void partsInStockAreListedAndOneThatGoesLeavesTakingsWithItsDonor() throws Exception {
        harvest();
        shop.run("harvest", "L0042-001", "--kind", "stand", "--value", "5");
        shop.run("harvest");
        assertThat(shop.out()).contains("P0001").contains("P0002").contains("MB-1");
        assertThat(shop.run("harvest", "--gone", "P0002", "--gross", "7.50"))
                .as(shop.err())
                .isZero();
        shop.run("harvest");
        assertThat(shop.out()).doesNotContain("P0002");
        assertThat(shop.run("harvest", "--gone", "P0002")).isEqualTo(3);
        assertThat(shop.run("harvest", "L0042-001", "--kind", "stand")).isEqualTo(2);
        assertThat(shop.run("sheet", "P0001", "--labels")).as(shop.err()).isZero();
        assertThat(shop.run("audit")).isZero();
    }

    @Test
    void theQueuePairsDonorsWithSetsThatNeedTheirBoards() throws Exception {
        shop.run("attempt", "L0042-002", "--fault", "main_board", "--fix", "none", "--diagnosis-minutes", "9");
        shop.run("queue", "--format", "json");
        JsonNode pairs = new ObjectMapper().readTree(shop.out()).get("donors");
        assertThat(pairs.size()).isEqualTo(1);
        assertThat(pairs.get(0).get("patient").asText()).isEqualTo("L0042-002");
        assertThat(pairs.get(0).get("source").asText()).isEqualTo("L0042-001");
        assertThat(pairs.get(0).get("kind").asText()).isEqualTo("main_board");
        assertThat(pairs.get(0).get("by").asText()).isEqualTo("family");
        harvest();
        shop.run("queue");
        assertThat(shop.out()).contains("P0001").contains("L0042-002");
    }
}
