package org.salvedge.worth;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.io.IOException;
import java.io.OutputStream;
import java.nio.file.Files;
import java.nio.file.Path;
import java.util.ArrayList;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.api.io.TempDir;
import org.salvedge.shop.Part;
import org.salvedge.worth.Donors.Pair;
import org.salvedge.worth.Donors.Patient;
import org.salvedge.worth.Donors.Supply;

/** What boards out of donors save a lot, on invented shops that use them as a known share of the chances. */
class HarvestTest {
    private static final int DRAWS = 2000;
    private static final int SHOPS = 40;
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

    /** How answers for a next lot held, with donors counted and without. */
    private static final class Tally {
        private int inside;
        private double error;
        private double crps;
        private double takeUp;
        private double gain;

        void add(LotWorth said, double outcome) {
            Predictive r = said.recovery();
            inside += outcome >= r.quantile(0.1) && outcome <= r.quantile(0.9) ? 1 : 0;
            error += (outcome - r.mean()) / SHOPS;
            crps += r.crps(outcome) / SHOPS;
            if (said.donors() != null) {
                takeUp += said.donors().takeUp() / SHOPS;
                gain += said.donors().gain() / SHOPS;
            }
        }
    }

    @Test
    void countingDonorsKeepsIntervalsTrueAndComesCloserThanLeavingThemOut() {
        Tally counted = new Tally();
        Tally leftOut = new Tally();
        Tally never = new Tally();
        for (int i = 0; i < SHOPS; i++) {
            for (double takeUp : new double[] {0, 0.8}) {
                HarvestingShop shop = shop(9_000 + i, takeUp, i % 2 == 0);
                HarvestingShop.Listed next = shop.listed(SETS);
                Question question = shop.question(next, DRAWS);
                LotWorth with = fit(shop, shop.parts()).predict(question);
                LotWorth without = fit(shop, List.of()).predict(question);
                int lot = shop.lots();
                for (int l = 0; l < 3; l++) {
                    shop.work(l == 0 ? next : shop.listed(SETS));
                }
                if (takeUp > 0) {
                    counted.add(with, shop.net(lot));
                    leftOut.add(without, shop.net(lot));
                } else {
                    never.add(with, shop.net(lot));
                }
            }
        }
        assertThat(counted.takeUp).isBetween(0.72, 0.88);
        assertThat(counted.inside).isBetween((int) (0.7 * SHOPS), (int) (0.975 * SHOPS));
        assertThat(Math.abs(counted.error)).isLessThan(Math.abs(leftOut.error));
        assertThat(counted.crps).isLessThan(leftOut.crps);
        // Whatever is left over is no more than where nobody uses donors.
        assertThat(counted.error).isCloseTo(never.error, within(0.3 * counted.gain));
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
    void aFitThatWasKeptTellsTheSame(@TempDir Path folder) throws IOException {
        HarvestingShop shop = shop(6, 0.8, true);
        Question question = shop.question(shop.listed(SETS), DRAWS);
        ShopModel fresh = fit(shop, shop.parts());
        Path file = folder.resolve("fit");
        try (OutputStream out = Files.newOutputStream(file)) {
            ModelFile.write(fresh, "key", out);
        }
        LotWorth kept =
                ModelFile.read(file, "key", ShopModel.class).orElseThrow().predict(question);
        LotWorth worth = fresh.predict(question);
        assertThat(kept.donors()).isNotNull().isEqualTo(worth.donors());
        assertThat(kept.lines()).isEqualTo(worth.lines());
        assertThat(kept.recovery().sortedDraws())
                .containsExactly(worth.recovery().sortedDraws());
    }

    @Test
    void linesAddUpToTheMeanWithTheGain() {
        HarvestingShop shop = shop(6, 0.8, true);
        LotWorth worth = fit(shop, shop.parts()).predict(shop.question(shop.listed(SETS), DRAWS));
        DonorGain donors = java.util.Objects.requireNonNull(worth.donors());
        assertThat(donors.gain()).isPositive();
        assertThat(worth.lines().stream().mapToDouble(LineWorth::recoveryMean).sum())
                .isCloseTo(worth.recovery().mean(), within(1e-6));
        assertThat(donors.rows().stream().mapToDouble(DonorGain.Row::gain).sum())
                .isCloseTo(donors.gain(), within(1e-6));
        assertThat(donors.rows()).anyMatch(DonorGain.Row::byNumber).anyMatch(r -> !r.byNumber());
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
            double gain = count.gain(1, random);
            double matched = Donors.pairs(patients, supplies).stream()
                    .mapToDouble(Pair::gain)
                    .sum();
            assertThat(gain).isCloseTo(matched, within(1e-9));
            assertThat(gain)
                    .isCloseTo(AllPairings.best(patients, supplies, 0, new boolean[supplies.size()]), within(1e-9));
        }
    }

    /** Main boards of the first two families bear the same number. */
    private static String fits(int kind, int family) {
        return kind == 0 && family == 1 ? "F0" : "F" + family;
    }
}
