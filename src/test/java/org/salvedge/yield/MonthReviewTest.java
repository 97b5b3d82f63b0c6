package org.salvedge.yield;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.salvedge.shop.ExitKind.SOLD;
import static org.salvedge.shop.ExitKind.STRIPPED;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.LocalDate;
import java.time.YearMonth;
import java.util.List;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;
import org.salvedge.shop.History;
import org.salvedge.shop.Money;

@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class MonthReviewTest {
    private static final BigDecimal LABOUR = new BigDecimal("24");
    private History history;
    private Outcomes outcomes;

    @BeforeAll
    void shop(@TempDir Path folder) {
        history = Packages.history(MessyShop.facts(600, 3), folder);
        outcomes = Outcomes.of(history, LABOUR);
    }

    @ParameterizedTest
    @ValueSource(strings = {"2025-01", "2025-06", "2025-10", "2019-01"})
    void everyPartOfTheReviewAddsUpToTheMonth(String text) {
        YearMonth month = YearMonth.parse(text);
        MonthReview review = MonthReview.of(history, LABOUR, month);
        YieldRow now = review.now().counted();
        assertThat(review.cells().stream().mapToInt(DecidedCell::decided).sum()).isEqualTo(now.decided());
        assertThat(review.cells().stream().mapToInt(DecidedCell::saved).sum()).isEqualTo(now.saved());
        assertThat(FaultShare.of(review.cells()).stream()
                        .mapToInt(FaultShare::decided)
                        .sum())
                .isEqualTo(now.decided());
        assertThat(review.bridge().margin()).isEqualTo(now.marginTotal());
        assertThat(review.bridge().sets()).isEqualTo(now.gone());
        for (YieldTable table : List.of(review.byFamily(), review.byFix(), review.byFamilyAndFix())) {
            assertThat(table.rows().stream().mapToInt(YieldRow::gone).sum()).isEqualTo(now.gone());
            assertThat(table.rows().stream()
                            .mapToLong(r -> r.marginTotal().minor())
                            .sum())
                    .isEqualTo(now.marginTotal().minor());
        }
        assertThat(review.byFamily().rows().stream().mapToInt(YieldRow::decided).sum())
                .isEqualTo(now.decided());
        assertThat(review.comebacks()).hasSize(review.now().comebacks());
        assertThat(review.comebacks().stream().mapToLong(c -> c.cost().minor()).sum())
                .isEqualTo(review.now().comebackCost().minor());
        assertThat(review.series()).hasSize(13);
        assertThat(review.yearAgo().month()).isEqualTo(month.minusYears(1));
        assertThat(now.decided() > 0).isEqualTo(month.getYear() == 2025);
    }

    @Test
    void theStepsFromTakingsAddUpToTheMarginToTheCent() {
        int sets = 0;
        for (int m = 1; m <= 12; m++) {
            Bridge b = Bridge.of(outcomes, YearMonth.of(2025, m));
            sets += b.sets();
            assertThat(b.takings()
                            .minus(b.sellingCosts())
                            .minus(b.parts())
                            .minus(b.labour())
                            .minus(b.comebacks())
                            .minus(b.landed()))
                    .isEqualTo(b.margin());
        }
        assertThat(sets).isGreaterThan(100);
    }

    @Test
    void whatLotsRecoveredIsTheSumOverTheirSetsLessTheirOwnLabour() {
        List<LotLine> lots = LotLine.of(outcomes);
        long net = 0;
        for (int set = 0; set < history.sets(); set++) {
            net += outcomes.net(set);
        }
        assertThat(lots.stream().mapToLong(l -> l.recovered().minor()).sum()).isEqualTo(net);
        assertThat(lots.stream().mapToInt(LotLine::listed).sum()).isEqualTo(history.sets());
        assertThat(lots.stream().mapToInt(LotLine::here).sum())
                .isEqualTo(OpenSet.of(outcomes, LocalDate.of(2030, 1, 1)).size());
        YieldRow whole = YieldTable.of(outcomes, List.of()).row(List.of());
        assertThat(lots.stream().mapToInt(LotLine::decided).sum()).isEqualTo(whole.decided());
        assertThat(lots.stream().mapToInt(LotLine::inProgress).sum()).isEqualTo(whole.inProgress());
    }

    @Test
    void setsThatPassedAndSetsOnTheBenchAreOpen() {
        Outcomes small = new SmallShop()
                .set("old", "KX", "L1", "20.00")
                .attempt("old", 1, "backlight", "led_strips", "yes", "5", "25", "10.00", "Ines", null)
                .set("gone", "KX", "L1", "20.00")
                .exit("gone", 3, STRIPPED, "9.00", "0", "")
                .set("bench", "KX", "L1", "20.00")
                .exit("bench", 3, STRIPPED, false, "8.00", "0", "", null)
                .outcomes();
        List<OpenSet> open = OpenSet.of(small, SmallShop.FIRST.plusDays(30));
        assertThat(open).hasSize(2);
        assertThat(open).allSatisfy(set -> assertThat(set.days()).isEqualTo(30));
        assertThat(open.stream().filter(OpenSet::passed).map(OpenSet::cost)).containsExactly(euros("42.00"));
        assertThat(open.stream().filter(set -> !set.passed()).map(OpenSet::cost))
                .containsExactly(euros("12.00"));
    }

    @Test
    void aComebackBelongsToTheSaleBeforeItAlsoOnTheDayOfTheNextSale() {
        History h = new SmallShop()
                .set("a", "KX")
                .attempt("a", 1, "backlight", "led_strips", "yes", "", "")
                .exit("a", 2, SOLD, "100.00", "0", "")
                .comeback("a", 10, "5.00", false)
                .comeback("a", 40, "100.00", true)
                .attempt("a", 40, "main_board", "reflash", "yes", "", "")
                .exit("a", 40, SOLD, "90.00", "0", "")
                .comeback("a", 41, "90.00", true)
                .history();
        List<Sale> sales = Sale.of(h, 0);
        assertThat(sales).hasSize(2);
        assertThat(sales.get(0).comebacks()).hasSize(2);
        assertThat(h.comebackDay(sales.get(1).comebacks().get(0))
                        - h.exitDay(sales.get(1).exit()))
                .isEqualTo(1);
        List<ComebackLine> lines = ComebackLine.of(Outcomes.of(h, LABOUR), YearMonth.of(2026, 2));
        assertThat(lines).extracting(ComebackLine::days).containsExactly(38, 1);
        assertThat(lines).extracting(ComebackLine::fix).containsExactly("led_strips", "reflash");
    }

    @Test
    void rolledThroughputYieldMultipliesStepsWithTheirOwnCounts() {
        Outcomes small = new SmallShop()
                .set("kept", "KX")
                .attempt("kept", 1, "backlight", "led_strips", "yes", "", "")
                .exit("kept", 2, SOLD, "100.00", "0", "")
                .set("back", "KX")
                .attempt("back", 1, "backlight", "led_strips", "yes", "", "")
                .exit("back", 2, SOLD, "100.00", "0", "")
                .comeback("back", 92, "5.00", false)
                .set("late", "KX")
                .attempt("late", 1, "backlight", "led_strips", "yes", "", "")
                .exit("late", 2, SOLD, "100.00", "0", "")
                .comeback("late", 93, "5.00", false)
                .set("young", "KX")
                .attempt("young", 1, "backlight", "led_strips", "yes", "", "")
                .exit("young", 50, SOLD, "100.00", "0", "")
                .comeback("young", 51, "5.00", false)
                .set("glass", "KX")
                .attempt("glass", 1, "panel_broken", "none", "", "", "")
                .exit("glass", 3, STRIPPED, "9.00", "0", "")
                .set("unknown", "KX")
                .attempt("unknown", 1, "unknown", "none", "", "", "")
                .outcomes();
        RolledYield rolled = RolledYield.of(small, SmallShop.FIRST.plusDays(100));
        assertThat(rolled).isEqualTo(new RolledYield(5, 4, 5, 4, 3, 2));
        assertThat(rolled.index()).isCloseTo(4 / 5.0 * 4 / 5 * 2 / 3, within(1e-12));
        assertThat(RolledYield.of(new SmallShop().outcomes(), SmallShop.FIRST).index())
                .isNaN();
    }

    private static Money euros(String text) {
        return Money.parse(text, SmallShop.EUR);
    }
}
