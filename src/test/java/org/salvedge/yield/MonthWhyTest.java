package org.salvedge.yield;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;
import static org.salvedge.shop.ExitKind.SOLD;
import static org.salvedge.shop.ExitKind.STRIPPED;

import java.math.BigDecimal;
import java.nio.file.Path;
import java.time.YearMonth;
import java.util.List;
import java.util.Objects;
import org.assertj.core.data.Offset;
import org.junit.jupiter.api.BeforeAll;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.TestInstance;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.shop.History;

@TestInstance(TestInstance.Lifecycle.PER_CLASS)
class MonthWhyTest {
    private static final BigDecimal LABOUR = new BigDecimal("24");
    private static final YearMonth MONTH = YearMonth.of(2025, 6);
    private static final Offset<Double> ROUNDING = within(1e-9);

    private MonthReview review;
    private MonthWhy why;

    @BeforeAll
    void shop(@TempDir Path folder) {
        History history = Packages.history(MessyShop.facts(1_500, 5), folder);
        review = MonthReview.of(history, LABOUR, MONTH);
        why = review.why();
    }

    @Test
    void everySplitAddsUpToTheChangeOfTheFiguresOnTheFrontPage() {
        YieldRow now = review.now().counted();
        YieldRow before = review.before().counted();
        for (ChangeSplit split : List.of(why.yieldByFault(), why.yieldBySupplier())) {
            assertThat(split.mix() + split.rate()).isCloseTo(now.raw() - before.raw(), ROUNDING);
            addsUp(split);
        }
        for (ChangeSplit split : List.of(why.marginByFault(), why.marginBySupplier())) {
            assertThat(split.mix() + split.rate()).isCloseTo(now.marginPerSet() - before.marginPerSet(), ROUNDING);
            addsUp(split);
        }
    }

    private static void addsUp(ChangeSplit split) {
        assertThat(split.cells().stream().mapToDouble(c -> c.mix() + c.rate()).sum())
                .isCloseTo(split.now() - split.before(), ROUNDING);
    }

    @Test
    void nothingOfTheLedgerIsLeftOverAndTheMonthIsItsMargin() {
        assertThat(why.ledger()).hasSize(6).allSatisfy(line -> {
            assertThat(line.left().minor()).isZero();
            assertThat(line.before()
                            .plus(line.month())
                            .plus(line.here())
                            .plus(line.outside())
                            .plus(line.rounding()))
                    .isEqualTo(line.ledger());
        });
        Bridge bridge = review.bridge();
        assertThat(why.ledger().stream().map(ReconcileLine::month))
                .containsExactly(
                        bridge.takings(),
                        bridge.sellingCosts(),
                        bridge.parts(),
                        bridge.labour(),
                        bridge.comebacks(),
                        bridge.landed());
        long rounding = why.ledger().get(3).rounding().minor();
        assertThat(Math.abs(rounding)).as("half a cent a set at most").isLessThan(1_600);
    }

    @Test
    void theSetsAndAttemptsBehindTheFiguresAreAsManyAsTheFiguresSay() {
        assertThat(why.sets().stream().filter(s -> MONTH.equals(s.decided())))
                .hasSize(review.now().counted().decided());
        assertThat(why.sets().stream().filter(s -> MONTH.equals(s.decided()) && s.saved()))
                .hasSize(review.now().counted().saved());
        assertThat(why.sets().stream()
                        .filter(s -> MONTH.equals(s.gone()))
                        .mapToLong(s -> Objects.requireNonNull(s.margin()).minor())
                        .sum())
                .isEqualTo(review.now().counted().marginTotal().minor());
        assertThat(why.attempts())
                .hasSize(why.fixes().stream().mapToInt(FixLine::attempts).sum());
        assertThat(why.fixesByFamily().stream().mapToInt(FixLine::attempts).sum())
                .isEqualTo(why.attempts().size());
        assertThat(why.work().stream().mapToInt(WorkLine::sets).sum())
                .isEqualTo(review.open().size());
        assertThat(why.work().stream().mapToLong(w -> w.cost().minor()).sum())
                .isEqualTo(
                        review.open().stream().mapToLong(s -> s.cost().minor()).sum());
    }

    @Test
    void anAttemptIsChargedItsOwnPartsAndLabourAndCreditedTheGainOnlyIfItPassed() {
        Outcomes small = new SmallShop()
                .set("saved", "KX")
                .attempt("saved", 1, "backlight", "led_strips", "yes", "0", "30", "10.00", "Ines", null)
                .exit("saved", 2, SOLD, "100.00", "0", "")
                .set("lost", "KX")
                .attempt("lost", 1, "backlight", "led_strips", "no", "0", "60", "4.00", "Ines", null)
                .exit("lost", 2, STRIPPED, "20.00", "0", "")
                .outcomes();
        SetValues values = SetValues.of(small, YearMonth.of(2026, 1));
        FixLine line = FixBook.of(small, YearMonth.of(2026, 1), values, false).get(0);
        // 80 saved less 10 parts and 12 labour; nothing less 4 parts and 24 labour.
        assertThat(line.increment().value()).isCloseTo((58 - 28) / 2.0, ROUNDING);
        assertThat(line.perHour()).isCloseTo((70 - 4) / 1.5, ROUNDING);
        assertThat(line.first()).isEqualTo(2);
    }

    @Test
    void aYoungShopHasAReviewWithoutReasons() {
        History h = new SmallShop().set("a", "KX").history();
        MonthReview young = MonthReview.of(h, LABOUR, YearMonth.of(2026, 1));
        assertThat(young.why().causes()).isEmpty();
        assertThat(young.why().deeds()).isEmpty();
        assertThat(young.why().signals().months()).isEmpty();
    }
}
