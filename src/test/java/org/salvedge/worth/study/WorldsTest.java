package org.salvedge.worth.study;

import static org.assertj.core.api.Assertions.assertThat;

import java.util.ArrayList;
import java.util.List;
import java.util.stream.LongStream;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.EnumSource;
import org.salvedge.shop.ExitKind;
import org.salvedge.shop.History;
import org.salvedge.shop.Timeline;

class WorldsTest {
    private static final long SEED = Study.DEV_SEED;

    @ParameterizedTest
    @EnumSource
    void whatHappensInAShopIsPossible(World world) {
        InventedShop shop = new InventedShop(world, SEED, 1);
        for (ShopSnapshot day : List.of(shop.snapshot(), shop.inTheEnd())) {
            Timeline timeline = new Timeline();
            for (int s = 0; s < day.history().sets(); s++) {
                day.history().walk(s, timeline);
                assertThat(timeline.impossible()).isNull();
            }
        }
    }

    @ParameterizedTest
    @EnumSource
    void nothingOfTheFutureIsInTheRecord(World world) {
        ShopSnapshot shop = new InventedShop(world, SEED, 1).snapshot();
        History h = shop.history();
        for (int a = 0; a < h.attempts(); a++) {
            assertThat(h.attemptDay(a)).isLessThanOrEqualTo(shop.asOf());
        }
        for (int e = 0; e < h.exits(); e++) {
            assertThat(h.exitDay(e)).isLessThanOrEqualTo(shop.asOf());
        }
        for (int c = 0; c < h.comebacks(); c++) {
            assertThat(h.comebackDay(c)).isLessThanOrEqualTo(shop.asOf());
        }
        for (int l = 0; l < h.lots(); l++) {
            assertThat(h.lotArrival(l)).isLessThanOrEqualTo(shop.asOf());
        }
    }

    /** The simulation's own count against the accounts' count over the record's rows. */
    @ParameterizedTest
    @EnumSource
    void inTheEndTheRecordAddsUpToWhatEachLotBrought(World world) {
        InventedShop shop = new InventedShop(world, SEED + 1, 1);
        ShopSnapshot end = shop.inTheEnd();
        History h = end.history();
        double[] net = new double[h.lots()];
        for (int s = 0; s < h.sets(); s++) {
            net[h.setLot(s)] += Ledgers.net(h, s, end.labourRate());
        }
        List<Long> recoveries = new ArrayList<>();
        for (int l = 0; l < net.length; l++) {
            recoveries.add(Math.round(100 * (net[l] - Ledgers.lotLabour(h, l, end.labourRate()))));
        }
        assertThat(recoveries).isEqualTo(shop.recoveries());
    }

    @Test
    void theSameSeedGivesTheSameShop() {
        InventedShop one = new InventedShop(World.BAD, SEED, 3);
        InventedShop other = new InventedShop(World.BAD, SEED, 3);
        assertThat(one.recoveries()).isEqualTo(other.recoveries());
        assertThat(one.candidates().get(2).offer())
                .isEqualTo(other.candidates().get(2).offer());
        assertThat(one.candidates().get(2).outcome())
                .isEqualTo(other.candidates().get(2).outcome());
    }

    /** The trade's orders of magnitude: two in five to three in five saved, half an hour to an hour a fix. */
    @Test
    void shopsLookLikeShops() {
        List<Portrait> shops = LongStream.range(SEED, SEED + 8)
                .mapToObj(seed -> Portrait.of(new InventedShop(World.STEADY, seed, 1).snapshot()))
                .toList();
        assertThat(Portrait.mean(shops, Portrait::yield)).isBetween(0.40, 0.60);
        assertThat(Portrait.mean(shops, Portrait::fixMinutes)).isBetween(30.0, 60.0);
        assertThat(Portrait.mean(shops, Portrait::net)).isBetween(25.0, 60.0);
        assertThat(Portrait.mean(shops, Portrait::glass)).isBetween(0.08, 0.25);
        assertThat(Portrait.mean(shops, Portrait::open)).isBetween(0.02, 0.2);
    }

    @Test
    void bigScreensBringMore() {
        History h = new InventedShop(World.STEADY, SEED, 1).snapshot().history();
        assertThat(price(h, 0, 33)).isLessThan(price(h, 33, 50) * 0.8);
        assertThat(price(h, 33, 50)).isLessThan(price(h, 51, 99) * 0.8);
    }

    private static double price(History h, double above, double below) {
        double sum = 0;
        int n = 0;
        for (int e = 0; e < h.exits(); e++) {
            double inches = h.setInches(h.exitSet(e)) / 1e6;
            if (h.exitKind(e) == ExitKind.SOLD.ordinal() && h.exitGrade(e) >= 0 && inches > above && inches < below) {
                sum += h.exitGross(e) / 100.0;
                n++;
            }
        }
        return sum / n;
    }

    @Test
    void pricesOfTheLastMonthsAreDownWhereTheyFallFast() {
        double change = 0;
        for (long seed = SEED; seed < SEED + 6; seed++) {
            change += latePriceAgainstMiddle(new InventedShop(World.BAD, seed, 1).snapshot()) / 6;
        }
        assertThat(change).isBetween(-0.4, -0.1);
    }

    private static double latePriceAgainstMiddle(ShopSnapshot shop) {
        History h = shop.history();
        double[] sum = new double[2];
        double[] n = new double[2];
        for (int e = 0; e < h.exits(); e++) {
            int age = shop.asOf() - h.exitDay(e);
            int when = age < 60 ? 1 : age > 300 && age < 500 ? 0 : -1;
            if (when >= 0 && h.exitKind(e) == ExitKind.SOLD.ordinal() && h.exitGrade(e) >= 0) {
                sum[when] += h.exitGross(e) / Math.pow(h.setInches(h.exitSet(e)) / 1e6, 2);
                n[when]++;
            }
        }
        return sum[1] / n[1] / (sum[0] / n[0]) - 1;
    }

    @Test
    void mostModelsAreUnseenWhereTheyShouldBe() {
        assertThat(known(World.UNSEEN_MODELS)).isBetween(0.25, 0.5);
        assertThat(known(World.STEADY)).isGreaterThan(0.8);
    }

    private static double known(World world) {
        return new InventedShop(world, SEED, 20)
                .candidates().stream()
                        .mapToDouble(InventedShop.Candidate::known)
                        .average()
                        .orElseThrow();
    }
}
