package org.salvedge.worth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.salvedge.shop.Part;
import org.salvedge.worth.Donors.Pair;
import org.salvedge.worth.Donors.Patient;
import org.salvedge.worth.Donors.Supply;

/** What boards out of donors save a lot, on invented shops that use them as a known share of the chances. */
class HarvestTest {
    private static final int DRAWS = 2000;
    private static final int SHOPS = 20;
    private static final int LOTS = 14;
    private static final int SETS = 40;

    private static HarvestingShop shop(long seed, double takeUp, boolean numbers) {
        HarvestingShop shop = new HarvestingShop(seed, takeUp, numbers);
        for (int l = 0; l < LOTS; l++) {
            shop.work(shop.listed(SETS));
        }
        return shop;
    }

    private static ShopModel fit(HarvestingShop shop, List<Part> parts) {
        return ShopModel.fit(shop.history(), parts, shop.dayOfNext().minusDays(1), HarvestingShop.SETTINGS);
    }

    private static Parts parts(HarvestingShop shop) {
        return fit(shop, shop.parts()).parts();
    }

    @Test
    void theShareOfChancesThatTheShopTakesIsRead() {
        for (double takeUp : new double[] {0.3, 0.8}) {
            double mean = 0;
            for (int i = 0; i < SHOPS; i++) {
                mean += parts(shop(9_000 + i, takeUp, i % 2 == 0)).harvest.takeUp() / SHOPS;
            }
            assertThat(mean).isCloseTo(takeUp, within(0.08));
        }
    }

    @Test
    void asManyPairsAreForeseenAsThereAreInTheEnd() {
        double foreseen = 0;
        double were = 0;
        for (int i = 0; i < SHOPS; i++) {
            HarvestingShop shop = shop(9_100 + i, 0.8, i % 2 == 0);
            HarvestingShop.Listed next = shop.listed(SETS);
            LotWorth worth = fit(shop, shop.parts()).predict(shop.question(next, DRAWS));
            foreseen += java.util.Objects.requireNonNull(worth.donors()).pairs();
            long before = used(shop);
            shop.work(next);
            were += used(shop) - before;
        }
        assertThat(foreseen).isCloseTo(were, within(0.15 * were));
    }

    private static long used(HarvestingShop shop) {
        return shop.parts().stream().filter(p -> p.attempt() != null).count();
    }

    @Test
    void whatIsProposedLeavesTheRecoveryAsItIs() {
        HarvestingShop shop = shop(6, 0.8, true);
        Question question = shop.question(shop.listed(SETS), DRAWS);
        assertThat(fit(shop, shop.parts()).predict(question).recovery().sortedDraws())
                .containsExactly(
                        fit(shop, List.of()).predict(question).recovery().sortedDraws());
    }

    @Test
    void aShopWithoutUsedBoardsIsToldNothingAndItsAnswerIsTheSame() {
        HarvestingShop shop = shop(5, 0, false);
        HarvestingShop used = shop(5, 0.8, false);
        List<Part> unused = used.parts().stream()
                .filter(p -> p.attempt() == null)
                .map(p -> new Part(
                        p.part(), p.fromUnit(), p.kind(), p.number(), p.on(), p.value(), p.tested(), null, null))
                .toList();
        Question question = shop.question(shop.listed(SETS), DRAWS);
        LotWorth bare = fit(shop, List.of()).predict(question);
        LotWorth stocked = fit(shop, unused).predict(question);
        assertThat(stocked.donors()).isNull();
        assertThat(stocked.recovery().sortedDraws())
                .containsExactly(bare.recovery().sortedDraws());
    }

    @Test
    void rowsAddUpToTheGain() {
        HarvestingShop shop = shop(6, 0.8, true);
        LotWorth worth = fit(shop, shop.parts()).predict(shop.question(shop.listed(SETS), DRAWS));
        DonorGain donors = java.util.Objects.requireNonNull(worth.donors());
        assertThat(donors.gain()).isPositive();
        assertThat(donors.rows().stream().mapToDouble(DonorGain.Row::gain).sum())
                .isCloseTo(donors.gain(), within(1e-6));
        assertThat(donors.rows()).anyMatch(DonorGain.Row::byNumber).anyMatch(r -> !r.byNumber());
    }

    /** The most that any pairing brings, by trying them all. */
    private static double best(List<Patient> patients, List<Supply> supplies, int from, boolean[] used) {
        if (from == patients.size()) {
            return 0;
        }
        double most = best(patients, supplies, from + 1, used);
        for (int j = 0; j < supplies.size(); j++) {
            Pair pair = used[j] ? null : Donors.pair(patients.get(from), supplies.get(j));
            if (pair != null) {
                used[j] = true;
                most = Math.max(most, pair.gain() + best(patients, supplies, from + 1, used));
                used[j] = false;
            }
        }
        return most;
    }

    @Test
    void theCountedPairingIsTheBestOfAllPairings() {
        Parts p = parts(shop(7, 0.8, true));
        Kind[] kinds = new Kind[5];
        for (int f = 0; f < kinds.length; f++) {
            int family = p.records.history.families().find("F" + f);
            kinds[f] = new Kind(family, 1, -1, -1, 0, 0, 0, 0, null);
        }
        SplittableRandom random = new SplittableRandom(8);
        HarvestCount count = new HarvestCount(p, kinds);
        for (int round = 0; round < 200; round++) {
            count.start();
            List<Patient> patients = new ArrayList<>();
            List<Supply> supplies = new ArrayList<>();
            for (int k = 0; k < 2; k++) {
                for (int f = 0; f < kinds.length; f++) {
                    String fits = fits(k, f);
                    double stock = p.harvest.stock(p.harvest.fits.of(k, kinds[f].family())[0]);
                    for (int n = 0; n < stock && !(k == 0 && f == 1); n++) {
                        supplies.add(new Supply("P" + n, fits, PartPrices.KINDS.get(k), null, 0));
                    }
                }
            }
            for (int n = random.nextInt(4); n > 0; n--) {
                int f = random.nextInt(kinds.length);
                count.donor(f, random);
                for (int k = 0; k < 2; k++) {
                    supplies.add(new Supply("D" + n, fits(k, f), PartPrices.KINDS.get(k), null, 0));
                }
            }
            for (int n = random.nextInt(6); n > 0; n--) {
                int f = random.nextInt(kinds.length);
                int k = random.nextInt(2);
                count.patient(f, k, random);
                patients.add(new Patient(
                        "U" + n, fits(k, f), PartPrices.KINDS.get(k), List.of(), p.harvest.gain(k, kinds[f].family())));
            }
            double gain = count.pair(1, random);
            double matched = Donors.pairs(patients, supplies).stream()
                    .mapToDouble(Pair::gain)
                    .sum();
            assertThat(gain).isCloseTo(matched, within(1e-9));
            assertThat(gain).isCloseTo(best(patients, supplies, 0, new boolean[supplies.size()]), within(1e-9));
        }
    }

    /** Main boards of the first two families bear the same number. */
    private static String fits(int kind, int family) {
        return kind == 0 && family == 1 ? "F0" : "F" + family;
    }
}
