package org.salvedge.report;

import static java.util.Objects.requireNonNull;
import static org.assertj.core.api.Assertions.assertThat;

import java.io.IOException;
import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.HashMap;
import java.util.List;
import java.util.Map;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.shop.History;
import org.salvedge.shop.Money;
import org.salvedge.yield.MessyShop;
import org.salvedge.yield.MonthReview;
import org.salvedge.yield.MonthWhy;
import org.salvedge.yield.Packages;
import org.salvedge.yield.TraceAttempt;
import org.salvedge.yield.TraceSet;

/** Figures of the month counted again from the rows that they lead to. */
@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class TraceTest {
    private static final YearMonth MONTH = YearMonth.of(2025, 6);

    private History history;
    private MonthReview review;
    private Map<String, Table> tables;

    private record Found(Table table, List<List<@Nullable Object>> rows) {
        long where(Figure figure, Object value) {
            return values(figure).stream().filter(value::equals).count();
        }

        List<@Nullable Object> values(Figure figure) {
            int at = table.columns().indexOf(figure.column());
            assertThat(at).as(figure + " in " + table.title()).isNotNegative();
            return rows.stream().map(r -> r.get(at)).toList();
        }
    }

    @BeforeAll
    void review(@TempDir Path folder) throws IOException {
        history = Packages.history(MessyShop.facts(400, 11), folder);
        review = MonthReview.of(history, new BigDecimal("24"), MONTH);
        tables = new HashMap<>();
        MonthSheets.of(review).forEach(s -> tables.put(s.name(), s.table()));
    }

    private Found behind(Linked link) {
        Table table = requireNonNull(tables.get(link.sheet()));
        return new Found(table, table.rows().subList(link.first(), link.last() + 1));
    }

    private interface Check {
        void of(Found row, Found behind);
    }

    /** Every row of a sheet that leads somewhere; there must be some. */
    private void each(String sheet, Check check) {
        Table table = requireNonNull(tables.get(sheet));
        int at = table.columns().indexOf(Figure.TRACE.column());
        int linked = 0;
        for (List<@Nullable Object> row : table.rows()) {
            if (row.get(at) instanceof Linked link) {
                check.of(new Found(table, List.of(row)), behind(link));
                linked++;
            }
        }
        assertThat(linked).as(sheet).isPositive();
    }

    private static int count(Found row, Figure figure) {
        return (int) (Integer) requireNonNull(row.values(figure).get(0));
    }

    @Test
    void figuresOfTheFirstPageAreCountedFromTheirRows() {
        FrontLinks links = new FrontLinks(review);
        Found decided = behind(requireNonNull(links.figure("sets decided", MONTH)));
        assertThat(decided.rows()).hasSize(review.now().counted().decided());
        assertThat(decided.where(Figure.WAS_SAVED, true))
                .isEqualTo(review.now().counted().saved());
        Found gone = behind(requireNonNull(links.figure("   per set", MONTH.minusMonths(1))));
        assertThat(gone.rows()).hasSize(review.before().counted().gone());
        Money margin = gone.values(Figure.SET_MARGIN).stream()
                .map(m -> (Money) requireNonNull(m))
                .reduce(Money.zero(review.currency()), Money::plus);
        assertThat(margin).isEqualTo(review.before().counted().marginTotal());
        YearMonth latest = review.lots().stream()
                .map(l -> YearMonth.from(l.arrival()))
                .max(YearMonth::compareTo)
                .orElseThrow();
        MonthReview then = MonthReview.of(history, new BigDecimal("24"), latest);
        Linked link = requireNonNull(new FrontLinks(then).figure("sets received", latest));
        int received = new Trace(then)
                .lots.subList(link.first(), link.last() + 1).stream()
                        .mapToInt(l -> l.arrived())
                        .sum();
        assertThat(received).isPositive().isEqualTo(then.now().received());
        assertThat(links.figure("sets decided", MONTH.minusYears(1)))
                .as("no list goes back so far")
                .isNull();
    }

    @Test
    void eachCellOfWhatChangedIsCountedFromItsRows() {
        for (String sheet : List.of("Changed", "Changed by supplier")) {
            each(
                    sheet,
                    (row, behind) -> assertThat(behind.where(Figure.DECIDED_IN, MONTH.toString()))
                            .isEqualTo(count(row, Figure.SETS_NOW)));
        }
        for (String sheet : List.of("Margin changed", "Margin by supplier")) {
            each(
                    sheet,
                    (row, behind) -> assertThat(behind.where(Figure.GONE_IN, MONTH.toString()))
                            .isEqualTo(count(row, Figure.SETS_NOW)));
        }
    }

    @Test
    void attemptsWithAFixAreCountedFromTheirRows() {
        for (String sheet : List.of("Fixes", "Fixes by family")) {
            each(sheet, (row, behind) -> {
                assertThat(behind.rows()).hasSize(count(row, Figure.TRIED));
                assertThat(behind.where(Figure.RESULT_OF, "passed")).isEqualTo(count(row, Figure.PASSED));
                assertThat(behind.where(Figure.WAS_FIRST, true)).isEqualTo(count(row, Figure.FIRST));
            });
        }
        for (String sheet : List.of("Yield", MonthSheets.TIME)) {
            each(sheet, (row, behind) -> {
                assertThat(behind.rows()).hasSize(count(row, Figure.DECIDED));
                assertThat(behind.where(Figure.RESULT_OF, "passed")).isEqualTo(count(row, Figure.SAVED));
            });
        }
    }

    @Test
    void faultsFamiliesWorkAndSuppliersAreCountedFromTheirRows() {
        each("Faults", (row, behind) -> {
            assertThat(behind.rows()).hasSize(count(row, Figure.DECIDED));
            assertThat(behind.where(Figure.WAS_SAVED, true)).isEqualTo(count(row, Figure.SAVED));
        });
        each(
                "Margin",
                (row, behind) -> assertThat(behind.where(Figure.GONE_IN, MONTH.toString()))
                        .isEqualTo(count(row, Figure.GONE)));
        each("Work", (row, behind) -> assertThat(behind.rows()).hasSize(count(row, Figure.SETS)));
        each("Suppliers", (row, behind) -> assertThat(behind.rows()).hasSize(count(row, Figure.LOTS)));
    }

    @Test
    void aFigureOfMoreThanTheListHasLeadsNowhere() {
        MonthWhy why = review.why();
        TraceSet set = why.sets().stream()
                .filter(s -> MONTH.equals(s.decided()))
                .findFirst()
                .orElseThrow();
        TraceAttempt attempt = why.attempts().stream()
                .filter(a -> YearMonth.from(a.on()).equals(MONTH))
                .findFirst()
                .orElseThrow();
        Trace whole = new Trace(review);
        Trace cut = new Trace(
                review,
                why.sets().stream()
                        .filter(s -> !MONTH.minusMonths(1).equals(s.decided()))
                        .filter(s -> !MONTH.minusMonths(1).equals(s.gone()))
                        .toList(),
                why.attempts().stream()
                        .filter(a -> YearMonth.from(a.on()).equals(MONTH))
                        .toList());

        assertThat(whole.ofCell(set.family(), set.fault())).isNotNull();
        assertThat(cut.ofCell(set.family(), set.fault())).isNull();
        assertThat(whole.ofSupplier(set.supplier())).isNotNull();
        assertThat(cut.ofSupplier(set.supplier())).isNull();
        assertThat(whole.ofFix(attempt.fix())).isNotNull();
        assertThat(cut.ofFix(attempt.fix())).isNull();
        assertThat(whole.ofFix(attempt.fault(), attempt.fix(), "")).isNotNull();
        assertThat(cut.ofFix(attempt.fault(), attempt.fix(), "")).isNull();
        assertThat(cut.decidedIn(MONTH)).as("all of the month is there").isNotNull();
    }

    @Test
    void curvesOfComebacksAreCountedFromTheirSales() {
        each("Kept", (row, behind) -> {
            assertThat(behind.rows()).hasSize(count(row, Figure.SALES));
            assertThat(behind.values(Figure.CAME_BACK).stream()
                            .filter(java.util.Objects::nonNull)
                            .count())
                    .isEqualTo(count(row, Figure.BACK));
            int day = count(row, Figure.DAYS_SOLD);
            assertThat(behind.values(Figure.DAYS_LOOKED_AT).stream()
                            .filter(d -> (Integer) requireNonNull(d) >= day)
                            .count())
                    .isEqualTo(count(row, Figure.AT_RISK));
        });
    }

    @Test
    void onALargePageALinkLeadsToTheWordsThatTheListIsNotThere() {
        Paper paper = new Paper("", LocalDate.EPOCH, "A4", MessyShop.EUR);
        Linked link = new Linked("", Trace.SETS, 7, 9);
        assertThat(new HtmlTable(paper, java.util.Set.of()).href(link)).isEqualTo("#sets-7");
        assertThat(new HtmlTable(paper, java.util.Set.of(Trace.SETS)).href(link))
                .isEqualTo("#sets");
    }
}
