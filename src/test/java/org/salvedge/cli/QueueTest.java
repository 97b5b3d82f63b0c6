package org.salvedge.cli;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeEach;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;

class QueueTest {
    @TempDir
    Path folder;

    private TestShop shop;

    @BeforeEach
    void open() {
        shop = TestShop.withLot(folder);
    }

    private JsonNode queue(String... more) throws Exception {
        List<String> args = new ArrayList<>(List.of("queue", "--format", "json"));
        args.addAll(List.of(more));
        assertThat(shop.run(args.toArray(String[]::new))).as(shop.err()).isZero();
        return new ObjectMapper().readTree(shop.out());
    }

    @Test
    void theQueueIsAnsweredInTheAgreedForm() throws Exception {
        JsonNode queue = queue("--hours", "1.5");
        assertThat(queue.get("hours").asDouble()).isEqualTo(1.5);
        JsonNode rows = queue.get("rows");
        assertThat(rows.size()).isEqualTo(3);
        double minutes = 0;
        for (JsonNode row : rows) {
            assertThat(row.get("likely").asText()).isEqualTo("row_drive");
            assertThat(row.get("gain").asDouble()).isPositive();
            assertThat(row.get("stop_at").asInt()).isBetween(20, 300);
            assertThat(row.get("stops").get("panel_broken").asInt()).isZero();
            assertThat(row.get("stops").get("row_drive").asInt()).isPositive();
            assertThat(row.get("stop_at").asInt())
                    .isBetween(
                            row.get("stop_band").get(0).asInt(),
                            row.get("stop_band").get(1).asInt());
            assertThat(row.get("stop_bands").size()).isEqualTo(row.get("stops").size());
            minutes += row.get("within").asBoolean() ? row.get("minutes").asDouble() : 0;
        }
        assertThat(minutes).isBetween(30.0, 90.0);
        assertThat(rows.get(2).get("within").asBoolean()).isFalse();
    }

    @Test
    void setsOfOneRunPointToTheFirstOfIt() {
        assertThat(shop.run("queue")).as(shop.err()).isZero();
        assertThat(shop.out().split("as #1", -1)).hasSize(3);
        assertThat(shop.out()).doesNotContain("as #2");
    }

    @Test
    void setsThatWaitForAPartAreSkippedAndNamed() throws Exception {
        shop.run("wait", "L0042-002", "strips", "--expected-on", "2026-03-20");
        JsonNode queue = queue();
        assertThat(queue.get("rows").size()).isEqualTo(2);
        assertThat(queue.get("waiting").get(0).asText()).isEqualTo("L0042-002");
        shop.run("queue");
        assertThat(shop.out()).contains("1 set waiting for a part, skipped: L0042-002 (strips, due 2026-03-20)");
    }

    @Test
    void whatIsFoundAtTheBenchChangesTheOrder() throws Exception {
        shop.run("attempt", "L0042-001", "--fault", "panel_broken", "--fix", "none", "--diagnosis-minutes", "4");
        shop.run("attempt", "L0042-003", "--fault", "row_drive", "--fix", "none", "--diagnosis-minutes", "12");
        JsonNode queue = queue();
        assertThat(queue.get("not_worth_taking").get(0).asText()).isEqualTo("L0042-001");
        JsonNode first = queue.get("rows").get(0);
        assertThat(first.get("unit").asText()).isEqualTo("L0042-003");
        assertThat(first.get("chance").asDouble()).isEqualTo(1);
        assertThat(first.get("stops").size()).isEqualTo(1);
        assertThat(first.get("stop_at").asInt()).isGreaterThan(12);
    }

    @Test
    void aPassedOrGoneSetIsNotInTheQueueAndAnEmptyBenchSaysSo() throws Exception {
        shop.run("attempt", "L0042-001", "--fault", "none_found", "--fix", "none", "--passed", "yes");
        shop.run("recycle", "L0042-002");
        shop.run("recycle", "L0042-003");
        assertThat(queue().get("rows").size()).isZero();
        shop.run("queue");
        assertThat(shop.out()).contains("No set on the bench");
    }

    @Test
    void aKnownRecipeOfThePanelIsWhatToDoFirst() {
        shop.run("attempt", "L0042-001", "--fault", "row_drive", "--fix", "none", "--panel", "P55");
        shop.run("mask", "record", "--unit", "L0042-001", "--side", "left", "--contacts", "2 5", "--good", "yes");
        shop.run("queue");
        assertThat(shop.out()).contains("mask 2 5 (1/1)").contains("recipe known");
    }

    @Test
    void aSetOnTheBenchShowsWhatItsNextTurnIsExpectedToBring() {
        shop.run("show", "L0042-001");
        assertThat(shop.out())
                .contains("Next turn: ")
                .contains("row_drive, contact_mask; saved")
                .contains("stop at");
        shop.run("attempt", "L0042-002", "--fault", "panel_broken", "--fix", "none");
        shop.run("show", "L0042-002");
        assertThat(shop.out()).contains("Next turn: panel_broken, none").contains("better: strip at once");
    }

    @Test
    void hoursMustBeAboveZero() {
        assertThat(shop.run("queue", "--hours", "0")).isEqualTo(2);
        assertThat(shop.run("queue", "--hours", "many")).isEqualTo(2);
    }
}
