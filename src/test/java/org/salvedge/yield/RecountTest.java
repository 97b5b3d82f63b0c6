package org.salvedge.yield;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.sql.Connection;
import java.sql.DriverManager;
import java.sql.SQLException;
import java.util.ArrayList;
import java.util.Comparator;
import java.util.LinkedHashMap;
import java.util.List;
import java.util.Map;
import java.util.concurrent.ForkJoinPool;
import org.junit.jupiter.api.AfterAll;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.shop.History;
import org.salvedge.shop.Names;
import org.salvedge.shop.Timeline;
import org.salvedge.stats.ShrunkYield;

/**
 * 5,000 sets counted twice: by this package from a ledger that took in a history package, and by plain SQL in SQLite from the
 * package's files. Every cell agrees.
 */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class RecountTest {
    private static final int SETS = 5_000;
    private static final BigDecimal LABOUR = new BigDecimal("23.45");
    private static final double RELATIVE = 1e-9;

    private History history;
    private Connection connection;
    private Recount recount;

    @BeforeAll
    void countBySql(@TempDir Path folder) throws SQLException, IOException {
        Path files = folder.resolve("package");
        Packages.write(MessyShop.facts(SETS, 7), folder, files);
        history = Packages.read(folder, files);
        connection = DriverManager.getConnection("jdbc:sqlite:" + folder.resolve("recount.db"));
        recount = new Recount(connection, files);
    }

    @AfterAll
    void close() throws SQLException {
        connection.close();
    }

    @ParameterizedTest
    @ValueSource(
            strings = {
                "family,fault,fix",
                "family,fix",
                "family",
                "month",
                "month,family",
                "month,fix,technician",
                "supplier,lot",
                "maker,model,inches",
                "claimed,grade",
                "grade,month,fault",
                "technician",
                "lot,fault",
                "family,maker,model,inches,supplier,lot,claimed,grade,month,fault,fix,technician"
            })
    void everyCellAgrees(String by) throws SQLException {
        List<String> keys = List.of(by.split(","));
        Map<List<String>, Map<String, Number>> expected = recount.table(keys);
        List<YieldRow> rows =
                YieldTable.of(Outcomes.of(history, LABOUR), Key.parse(by)).rows();
        assertThat(rows.stream().map(YieldRow::keys)).containsExactlyElementsOf(expected.keySet());
        assertThat(rows).hasSizeGreaterThan(4);
        for (YieldRow row : rows) {
            Map<String, Number> cell = requireNonNull(expected.get(row.keys()));
            figures(row).forEach((name, value) -> {
                Number there = cell.get(name);
                double other = there == null ? absent(name) : there.doubleValue();
                if (Double.isNaN(other)) {
                    assertThat(value).as("%s of %s", name, row.keys()).isNaN();
                } else {
                    assertThat(value)
                            .as("%s of %s", name, row.keys())
                            .isCloseTo(other, within(RELATIVE * Math.max(1, Math.abs(other))));
                }
            });
        }
    }

    /** Counts of what a row has none of are 0, and so is the margin of no set; anything else is undefined. */
    private static double absent(String name) {
        return List.of("sets", "attempts", "decided", "saved", "gone", "in_progress", "margin_total")
                        .contains(name)
                ? 0
                : Double.NaN;
    }

    private static Map<String, Double> figures(YieldRow row) {
        Map<String, Double> figures = new LinkedHashMap<>();
        figures.put("sets", (double) row.sets());
        figures.put("attempts", (double) row.attempts());
        figures.put("decided", (double) row.decided());
        figures.put("saved", (double) row.saved());
        figures.put("gone", (double) row.gone());
        figures.put("in_progress", (double) row.inProgress());
        figures.put("yield", row.raw());
        figures.put("yield_low", row.rawLow());
        figures.put("yield_high", row.rawHigh());
        figures.put("first_pass_yield", row.firstPassYield());
        figures.put("minutes_median", row.minutesMedian());
        figures.put("minutes_p90", row.minutesP90());
        figures.put("minutes_per_saved", row.minutesPerSaved());
        figures.put("margin_total", row.marginTotal().amount().doubleValue());
        figures.put("margin_per_set", row.marginPerSet());
        figures.put("margin_per_hour", row.marginPerHour());
        return figures;
    }

    @ParameterizedTest
    @ValueSource(
            strings = {"family,fault,fix", "family,fix", "fix,technician", "family", "supplier,lot", "month,family"})
    void shrunkYieldsAreThoseOfTheLotsThatSqlCounts(String by) throws SQLException {
        List<Recount.Trials> trials = recount.trials(List.of(by.split(",")));
        boolean eachAlone = List.of(by.split(",")).contains("lot");
        Names cells = new Names();
        Names lots = new Names();
        List<int[]> rows = new ArrayList<>();
        for (Recount.Trials t : trials) {
            int cell = cells.number(String.join("|", t.key()));
            if (eachAlone) {
                for (int i = 0; i < t.decided(); i++) {
                    rows.add(new int[] {cell, rows.size(), i < t.saved() ? 1 : 0, 1});
                }
            } else {
                rows.add(new int[] {cell, lots.number(t.lot()), t.saved(), t.decided()});
            }
        }
        ShrunkYield expected = ShrunkYield.fit(
                cells.size(),
                column(rows, 0),
                column(rows, 1),
                column(rows, 2),
                column(rows, 3),
                parents(cells, by),
                0.95);
        int compared = 0;
        for (YieldRow row :
                YieldTable.of(Outcomes.of(history, LABOUR), Key.parse(by)).rows()) {
            int cell = cells.find(String.join("|", row.keys()));
            if (cell < 0) {
                assertThat(row.shrunk()).isNaN();
                continue;
            }
            assertThat(row.shrunk()).isCloseTo(expected.mean(cell), within(RELATIVE));
            assertThat(row.shrunkLow()).isCloseTo(expected.low(cell), within(RELATIVE));
            assertThat(row.shrunkHigh()).isCloseTo(expected.high(cell), within(RELATIVE));
            compared++;
        }
        assertThat(compared).isEqualTo(cells.size());
    }

    private static int[] column(List<int[]> rows, int n) {
        return rows.stream().mapToInt(row -> row[n]).toArray();
    }

    /** What each cell borrows from: all its keys but the one most its own, then but two. */
    private static int[][] parents(Names cells, String by) {
        List<String> keys = List.of(by.split(","));
        List<String> mostItsOwnFirst = List.of("lot", "month", "technician", "family", "supplier", "fix", "fault");
        List<String> kept = new ArrayList<>(keys);
        kept.sort(Comparator.comparing(mostItsOwnFirst::indexOf));
        List<int[]> parents = new ArrayList<>();
        List<String> below = cells.all();
        List<String> belowKeys = keys;
        while (kept.size() > 1) {
            kept.remove(0);
            Names above = new Names();
            List<String> aboveKeys = List.copyOf(kept);
            int[] parent = new int[below.size()];
            for (int i = 0; i < parent.length; i++) {
                String[] texts = below.get(i).split("\\|", -1);
                List<String> of = new ArrayList<>();
                for (String key : aboveKeys) {
                    of.add(texts[belowKeys.indexOf(key)]);
                }
                parent[i] = above.number(String.join("|", of));
            }
            parents.add(parent);
            below = above.all();
            belowKeys = aboveKeys;
        }
        return parents.toArray(int[][]::new);
    }

    @Test
    void theHistoriesArePossibleAndEverythingHappensInThem() {
        Timeline timeline = new Timeline();
        int restocked = 0;
        int failedByWhatFollowed = 0;
        for (int set = 0; set < history.sets(); set++) {
            history.walk(set, timeline);
            assertThat(timeline.impossible()).as(history.label(set)).isNull();
            for (int c = history.comebackStart(set); c < history.comebackStart(set + 1); c++) {
                restocked += history.comebackRestocked(c);
            }
            for (int i = 0; i < history.attemptStart(set + 1) - history.attemptStart(set); i++) {
                boolean untested = history.attemptPassed(history.attemptStart(set) + i) < 0;
                failedByWhatFollowed += untested && timeline.result(i) == Timeline.Result.FAIL ? 1 : 0;
            }
        }
        assertThat(restocked).isGreaterThan(100);
        assertThat(failedByWhatFollowed).isGreaterThan(100);
    }

    @Test
    void figuresDoNotDependOnTheNumberOfProcessors() throws Exception {
        List<YieldRow> here = YieldTable.of(Outcomes.of(history, LABOUR), Key.parse("family,fault,fix"))
                .rows();
        for (int processors : new int[] {1, 3}) {
            ForkJoinPool pool = new ForkJoinPool(processors);
            try {
                assertThat(pool.submit(() -> YieldTable.of(Outcomes.of(history, LABOUR), Key.parse("family,fault,fix"))
                                        .rows())
                                .get())
                        .isEqualTo(here);
            } finally {
                pool.shutdown();
            }
        }
    }
}
