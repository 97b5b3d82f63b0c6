package org.salvedge.report;

import static org.assertj.core.api.Assertions.assertThat;

import com.fasterxml.jackson.databind.JsonNode;
import com.fasterxml.jackson.databind.ObjectMapper;
import java.io.StringWriter;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.yield.Key;
import org.salvedge.yield.MessyShop;
import org.salvedge.yield.Outcomes;
import org.salvedge.yield.Packages;
import org.salvedge.yield.YieldTable;

@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class YieldReportTest {
    private YieldTable yields;

    @BeforeAll
    void count(@TempDir Path folder) {
        var history = Packages.history(MessyShop.facts(120, 5), folder);
        yields = YieldTable.of(Outcomes.of(history, new BigDecimal("24")), Key.parse("fix,family"));
    }

    @Test
    void jsonHasThePromisedKeysInOrderAndNullWhereAFigureIsUndefined() throws Exception {
        StringWriter out = new StringWriter();
        JsonWriter.write(YieldReport.table(yields), out);
        JsonNode rows = new ObjectMapper().readTree(out.toString()).get("rows");
        assertThat(rows).hasSize(yields.rows().size());
        List<String> names = new ArrayList<>();
        rows.get(0).fieldNames().forEachRemaining(names::add);
        assertThat(names)
                .containsExactly(
                        "fix",
                        "family",
                        "sets",
                        "attempts",
                        "decided",
                        "saved",
                        "gone",
                        "yield",
                        "yield_low",
                        "yield_high",
                        "yield_shrunk",
                        "yield_shrunk_low",
                        "yield_shrunk_high",
                        "first_pass_yield",
                        "minutes_median",
                        "minutes_p90",
                        "minutes_per_saved",
                        "margin_total",
                        "margin_per_set",
                        "margin_per_hour",
                        "in_progress");
        int undefined = 0;
        for (JsonNode row : rows) {
            assertThat(row.get("margin_total").isNumber()).isTrue();
            assertThat(row.get("yield").isNull()).isEqualTo(row.get("decided").asInt() == 0);
            assertThat(row.get("yield_shrunk").isNull())
                    .isEqualTo(row.get("decided").asInt() == 0);
            undefined += row.get("margin_per_set").isNull() ? 1 : 0;
        }
        assertThat(undefined).isPositive();
    }

    @Test
    void theScreenKeepsToAHundredColumnsAndNamesWhatItLeavesOut() {
        for (Screen screen : List.of(Screen.plain(), Screen.ascii())) {
            String out = new TablePrinter(screen, yields.currency()).print(YieldReport.table(yields));
            assertThat(out.lines().toList()).allMatch(line -> DisplayWidth.of(line) <= 100);
            assertThat(out).contains("in progress: ").contains("Money in EUR.");
        }
    }
}
