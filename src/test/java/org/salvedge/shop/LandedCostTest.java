package org.salvedge.shop;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatThrownBy;
import static org.salvedge.shop.Facts.EUR;
import static org.salvedge.shop.Facts.eur;
import static org.salvedge.shop.Facts.lot;
import static org.salvedge.shop.Facts.set;

import java.math.BigDecimal;
import java.util.ArrayList;
import java.util.Collections;
import java.util.Currency;
import java.util.List;
import java.util.Map;
import java.util.Random;
import java.util.SplittableRandom;
import java.util.stream.Collectors;
import org.jspecify.annotations.Nullable;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LandedCostTest {
    private static final Lot HUNDRED = lot("L1", "2026-03-01", "100.00");

    private static Map<String, String> shares(Basis basis, TvSet.Builder... sets) {
        return shares(HUNDRED, basis, sets);
    }

    private static Map<String, String> shares(Lot lot, Basis basis, TvSet.Builder... sets) {
        List<TvSet> all = new ArrayList<>();
        for (TvSet.Builder set : sets) {
            all.add(set.build());
        }
        return LandedCost.shares(lot, all, basis, EUR).entrySet().stream()
                .collect(Collectors.toMap(
                        e -> e.getKey().value(), e -> e.getValue().toString()));
    }

    private static TvSet.Builder sized(String label, @Nullable String inches) {
        return set(label, "L1").inches(inches == null ? null : Quantity.parse(inches));
    }

    private static TvSet.Builder asked(String label, @Nullable String asking) {
        return set(label, "L1").asking(asking == null ? null : eur(asking));
    }

    @Test
    void equalSharesGiveTheOddCentToTheSmallerLabel() {
        assertThat(shares(Basis.EQUAL, set("C", "L1"), set("A", "L1"), set("B", "L1")))
                .containsOnly(Map.entry("A", "33.34"), Map.entry("B", "33.33"), Map.entry("C", "33.33"));
    }

    @Test
    void labelsAreComparedByCodePoint() {
        assertThat(shares(Basis.EQUAL, set("\uD83D\uDCFA", "L1"), set("\uFF5E", "L1"), set("Z", "L1")))
                .containsEntry("Z", "33.34");
        assertThat(shares(lot("L1", "2026-03-01", "0.01"), Basis.EQUAL, set("\uD83D\uDCFA", "L1"), set("\uFF5E", "L1")))
                .containsEntry("\uFF5E", "0.01");
    }

    /** The area of a 16:9 screen goes with the square of its diagonal: 1600 to 3600 of 5200. */
    @Test
    void sharesByScreenArea() {
        assertThat(shares(Basis.AREA, sized("A", "40"), sized("B", "60")))
                .containsOnly(Map.entry("A", "30.77"), Map.entry("B", "69.23"));
    }

    /** Areas 1600, 3600 and their median 2600. */
    @Test
    void aSetWithoutTheFigureCountsAsTheLotsMedian() {
        assertThat(shares(Basis.AREA, sized("A", "40"), sized("B", "60"), sized("C", null)))
                .containsOnly(Map.entry("A", "20.51"), Map.entry("B", "46.16"), Map.entry("C", "33.33"));
        assertThat(shares(Basis.VALUE, asked("A", "10.00"), asked("B", "70.00"), asked("C", "20.00"), asked("D", null)))
                .containsOnly(
                        Map.entry("A", "8.33"),
                        Map.entry("B", "58.33"),
                        Map.entry("C", "16.67"),
                        Map.entry("D", "16.67"));
    }

    @Test
    void whereNoSetHasTheFigureAllShareAlike() {
        assertThat(shares(Basis.AREA, sized("A", null), sized("B", null)))
                .containsOnly(Map.entry("A", "50.00"), Map.entry("B", "50.00"));
    }

    @Test
    void setsThatDidNotArriveCarryNothing() {
        assertThat(shares(Basis.EQUAL, set("A", "L1"), set("B", "L1").arrived(false)))
                .containsOnly(Map.entry("A", "100.00"));
        assertThat(shares(Basis.EQUAL, set("A", "L1").arrived(false))).isEmpty();
        assertThatThrownBy(
                        () -> shares(Basis.EQUAL, set("B", "L1").arrived(false).landedCost(eur("1.00"))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("set B did not arrive");
    }

    @Test
    void whatIsGivenIsTakenOutFirst() {
        assertThat(shares(Basis.EQUAL, set("A", "L1").landedCost(eur("40.00")), set("B", "L1"), set("C", "L1")))
                .containsOnly(Map.entry("A", "40.00"), Map.entry("B", "30.00"), Map.entry("C", "30.00"));
    }

    @Test
    void givenCostsThatDoNotAddUpAreRefused() {
        assertThatThrownBy(() -> shares(Basis.EQUAL, set("A", "L1").landedCost(eur("99.99"))))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("add up to 99.99, the lot cost 100.00");
        assertThatThrownBy(() -> shares(Basis.EQUAL, set("A", "L1").landedCost(eur("100.01")), set("B", "L1")))
                .isInstanceOf(Refused.class);
        assertThatThrownBy(() -> shares(HUNDRED.withBasis(Basis.GIVEN), Basis.EQUAL, set("A", "L1")))
                .isInstanceOf(Refused.class)
                .hasMessageContaining("set A has no landed cost");
    }

    @Test
    void theLotsOwnBasisComesBeforeTheShops() {
        assertThat(shares(HUNDRED.withBasis(Basis.AREA), Basis.EQUAL, sized("A", "40"), sized("B", "60")))
                .containsEntry("A", "30.77");
        List<TvSet> given = List.of(set("A", "L1").landedCost(eur("100.00")).build());
        assertThat(LandedCost.basis(HUNDRED, given, Basis.EQUAL)).isEqualTo(Basis.GIVEN);
        assertThat(LandedCost.basis(HUNDRED.withBasis(Basis.AREA), given, Basis.EQUAL))
                .isEqualTo(Basis.AREA);
        assertThat(LandedCost.basis(HUNDRED, List.of(), Basis.VALUE)).isEqualTo(Basis.VALUE);
    }

    /** (10000 + 700 + 301 + 0) yen at 0.0061 euros: 67.1061, half up. */
    @Test
    void theLandedCostIsInTheBooksCurrency() {
        Currency yen = Currency.getInstance("JPY");
        Lot lot = new Lot(
                new LotId("L1"),
                "Kavo",
                Facts.day("2026-03-01"),
                yen,
                new BigDecimal("0.0061"),
                new Money(10_000, yen),
                new Money(700, yen),
                new Money(301, yen),
                null,
                null,
                null,
                null,
                null);

        assertThat(lot.landedCost(EUR)).isEqualTo(eur("67.11"));
        assertThat(shares(lot, Basis.EQUAL, set("A", "L1"), set("B", "L1"))).containsEntry("A", "33.56");
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void sharesAddUpExactlyInWhateverOrderTheSetsCome(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int round = 0; round < 40; round++) {
            Money cost = new Money(random.nextLong(1_000_000), EUR);
            Lot lot = lot("L1", "2026-03-01", cost.toString());
            List<TvSet> sets = new ArrayList<>();
            for (int i = random.nextInt(1, 40); i > 0; i--) {
                sets.add(set("S" + i, "L1")
                        .inches(random.nextInt(3) == 0 ? null : new Quantity(random.nextLong(1, 150_000_000)))
                        .asking(random.nextInt(3) == 0 ? null : new Money(random.nextInt(100_000), EUR))
                        .arrived(i == 1 || random.nextInt(8) > 0)
                        .build());
            }
            Basis basis = List.of(Basis.EQUAL, Basis.AREA, Basis.VALUE).get(random.nextInt(3));
            Map<UnitId, Money> shares = LandedCost.shares(lot, sets, basis, EUR);

            assertThat(shares.values().stream().mapToLong(Money::minor).sum()).isEqualTo(cost.minor());
            assertThat(shares.values()).noneMatch(Money::isNegative);
            Collections.shuffle(sets, new Random(seed));
            assertThat(LandedCost.shares(lot, sets, basis, EUR)).isEqualTo(shares);
        }
    }
}
