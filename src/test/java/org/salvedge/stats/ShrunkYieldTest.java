package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.CsvSource;
import org.junit.jupiter.params.provider.ValueSource;

/** The rules a shrunk yield must keep, on invented shops whose truth is known. */
class ShrunkYieldTest {
    /** Rows of a shop: 8 faults, 3 fixes each, 6 families under each fix. */
    private static final int CELLS = 144;

    private static final int[][] PARENTS = parents();

    private static int[][] parents() {
        int[] fixOf = new int[CELLS];
        int[] faultOf = new int[24];
        Arrays.setAll(fixOf, c -> c / 6);
        Arrays.setAll(faultOf, f -> f / 3);
        return new int[][] {fixOf, faultOf};
    }

    private static ShrunkYield one(int cells, int[][] rows, int[][] parents) {
        int n = rows.length;
        int[][] columns = new int[4][n];
        for (int i = 0; i < n; i++) {
            for (int k = 0; k < 4; k++) {
                columns[k][i] = rows[i][k];
            }
        }
        return ShrunkYield.fit(cells, columns[0], columns[1], columns[2], columns[3], parents, 0.95);
    }

    /** Two cells: the first as given, the second always the same broad record, so that a parent exists. */
    private static ShrunkYield beside(int[][] firstCell) {
        int[][] rows = Arrays.copyOf(firstCell, firstCell.length + 40);
        for (int i = 0; i < 40; i++) {
            rows[firstCell.length + i] = new int[] {1, 1000 + i, i % 2, 2};
        }
        return one(3, rows, new int[][] {{0, 0, 0}});
    }

    private static int[][] cell(int lots, int savedInEach, int decidedInEach) {
        int[][] rows = new int[lots][];
        Arrays.setAll(rows, i -> new int[] {0, i, savedInEach, decidedInEach});
        return rows;
    }

    @Test
    void aCellWithoutRecordHasItsParentsMeanAndMoreDoubt() {
        ShrunkYield y = beside(cell(50, 3, 4));
        assertThat(y.mean(2)).isEqualTo(y.parentMean(1, 0));
        assertThat(y.effectiveSize(2)).isZero();
        assertThat(y.high(2) - y.low(2)).isGreaterThan(y.high(0) - y.low(0));
    }

    @Test
    void theMeanLiesBetweenTheCellsOwnAndItsParents() {
        ShrunkYield y = beside(cell(10, 4, 4));
        assertThat(y.mean(0)).isLessThan(1).isGreaterThan(y.parentMean(1, 0));
        assertThat(y.ownMean(0)).isEqualTo(1);
    }

    @Test
    void moreLotsDrawTheMeanToTheCellsOwnAndNarrowTheInterval() {
        double away = 1;
        double width = 1;
        for (int lots : new int[] {1, 4, 16, 64, 256}) {
            ShrunkYield y = beside(cell(lots, 3, 4));
            assertThat(Math.abs(y.mean(0) - 0.75)).isLessThan(away);
            assertThat(y.high(0) - y.low(0)).isLessThan(width);
            away = Math.abs(y.mean(0) - 0.75);
            width = y.high(0) - y.low(0);
        }
        assertThat(away).isLessThan(0.005);
    }

    @Test
    void aHundredSetsOfOneLotAreNotAHundredIndependentSets() {
        int[][] spread = new int[100][];
        Arrays.setAll(spread, i -> new int[] {0, i, i < 70 ? 1 : 0, 1});
        ShrunkYield together = beside(new int[][] {{0, 0, 70, 100}});
        ShrunkYield apart = beside(spread);
        assertThat(together.effectiveSize(0)).isLessThan(40);
        assertThat(apart.effectiveSize(0)).isCloseTo(100, within(1e-9));
        assertThat(together.high(0) - together.low(0)).isGreaterThan(1.4 * (apart.high(0) - apart.low(0)));
    }

    @Test
    void noRecordAtAllGivesHalfAndWide() {
        ShrunkYield y = one(2, new int[0][], new int[][] {{0, 0}});
        assertThat(y.mean(1)).isEqualTo(0.5);
        assertThat(y.low(1)).isLessThan(0.05);
        assertThat(y.high(1)).isGreaterThan(0.95);
    }

    @Test
    void allLostAndAllSavedStayWithinBounds() {
        for (int saved : new int[] {0, 9}) {
            ShrunkYield y = one(1, cell(400, saved, 9), new int[0][]);
            assertThat(y.mean(0)).isStrictlyBetween(0.0, 1.0).isCloseTo(saved / 9.0, within(1e-3));
            assertThat(y.low(0)).isBetween(0.0, y.mean(0));
            assertThat(y.high(0)).isBetween(y.mean(0), 1.0);
        }
    }

    @Test
    void orderAndSplittingOfRowsLeaveNoTrace() {
        Shop shop = new Shop(7, 60, 0.1, false);
        ShrunkYield straight = shop.fit();
        int n = shop.size;
        int[] cell = new int[2 * n];
        int[] lot = new int[2 * n];
        int[] saved = new int[2 * n];
        int[] decided = new int[2 * n];
        for (int i = 0; i < n; i++) {
            int back = n - 1 - i;
            int part = shop.saved[i] / 2;
            cell[i] = cell[n + back] = shop.cell[i];
            lot[i] = lot[n + back] = shop.lot[i];
            saved[i] = part;
            decided[i] = part;
            saved[n + back] = shop.saved[i] - part;
            decided[n + back] = shop.decided[i] - part;
        }
        ShrunkYield split = ShrunkYield.fit(CELLS, cell, lot, saved, decided, PARENTS, 0.95);
        for (int c = 0; c < CELLS; c++) {
            assertThat(split.mean(c)).isCloseTo(straight.mean(c), within(1e-12));
            assertThat(split.low(c)).isCloseTo(straight.low(c), within(1e-12));
        }
    }

    /** Small and odd shops: empty cells, one lot, one cell, all saved, all lost, cells of one set. */
    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6})
    void everyShopGivesChancesInTheRightOrder(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        for (int r = 0; r < 200; r++) {
            int cells = 1 + random.nextInt(12);
            int lots = 1 + random.nextInt(6);
            int most = 1 + random.nextInt(60);
            double chance = random.nextInt(3) / 2.0;
            int[][] rows = new int[random.nextInt(40)][];
            Arrays.setAll(rows, i -> {
                int n = random.nextInt(most);
                int k = 0;
                for (int t = 0; t < n; t++) {
                    k += random.nextDouble() < chance ? 1 : 0;
                }
                return new int[] {random.nextInt(cells), random.nextInt(lots), k, n};
            });
            int[] parent = random.ints(cells, 0, 3).toArray();
            ShrunkYield y = one(cells, rows, random.nextBoolean() ? new int[0][] : new int[][] {parent});
            for (int c = 0; c < cells; c++) {
                assertThat(y.low(c)).isBetween(0.0, y.mean(c));
                assertThat(y.high(c)).isBetween(y.mean(c), 1.0);
                assertThat(y.mean(c)).isStrictlyBetween(0.0, 1.0);
                assertThat(y.sd(c)).isGreaterThan(0);
            }
        }
    }

    @Test
    void wrongRowsAreRefusedByNumber() {
        assertThatIllegalArgumentException()
                .isThrownBy(() -> one(2, new int[][] {{0, 0, 1, 1}, {1, 0, 3, 2}}, new int[0][]))
                .withMessage("row 1: 3 saved of 2");
        assertThatIllegalArgumentException()
                .isThrownBy(() -> one(2, new int[][] {{2, 0, 1, 1}}, new int[0][]))
                .withMessage("row 0: cell 2 of 2");
    }

    /**
     * Cells and lots drawn from beta distributions, each lot's chance in a cell by itself or one fate for all its cells; 144 cells in
     * each of 12 shops, so the share of intervals that hold the cell's true yield has a standard error of about 0.006. It was 0.920 to
     * 0.951: a little low, for the correlations count as known; the lower bound is just below, and a wider interval is not asked for.
     */
    @ParameterizedTest(name = "{0} lots, lot correlation {1}, shared by the lot''s cells: {2}")
    @CsvSource({
        "60, 0.0, false", "60, 0.05, false", "60, 0.2, false", "60, 0.2, true",
        "8, 0.0, false", "8, 0.05, false", "8, 0.2, false", "8, 0.2, true",
        "200, 0.2, false", "200, 0.05, true"
    })
    void intervalsHoldTheTruthAsOftenAsTheySay(int lots, double rho, boolean shared) {
        int held = 0;
        int all = 0;
        double error = 0;
        double rawError = 0;
        double found = 0;
        for (int seed = 1; seed <= 12; seed++) {
            Shop shop = new Shop(seed, lots, rho, shared);
            ShrunkYield y = shop.fit();
            found += y.lotCorrelation() / 12;
            for (int c = 0; c < CELLS; c++) {
                all++;
                held += y.low(c) <= shop.truth[c] && shop.truth[c] <= y.high(c) ? 1 : 0;
                if (shop.n[c] > 0) {
                    double raw = shop.y[c] / (double) shop.n[c];
                    error += Math.abs(y.mean(c) - shop.truth[c]);
                    rawError += Math.abs(raw - shop.truth[c]);
                }
            }
        }
        assertThat(held / (double) all).isBetween(0.915, 0.98);
        if (lots >= 60) {
            assertThat(found).isCloseTo(rho, within(0.03));
        }
        assertThat(error).isLessThan(lots < 100 ? 0.9 * rawError : rawError);
    }

    /** An invented shop. */
    private static final class Shop {
        final double[] truth = new double[CELLS];
        final int[] n = new int[CELLS];
        final int[] y = new int[CELLS];
        int[] cell = new int[20_000];
        int[] lot = new int[20_000];
        int[] saved = new int[20_000];
        int[] decided = new int[20_000];
        int size;

        Shop(long seed, int lots, double rho, boolean shared) {
            SplittableRandom random = new SplittableRandom(seed);
            double[] fault = new double[8];
            double[] fix = new double[24];
            for (int f = 0; f < 8; f++) {
                fault[f] = 0.15 + 0.7 * random.nextDouble();
            }
            for (int f = 0; f < 24; f++) {
                fix[f] = beta(random, fault[f / 3], 12);
            }
            for (int c = 0; c < CELLS; c++) {
                truth[c] = beta(random, fix[c / 6], 25);
            }
            for (int l = 0; l < lots; l++) {
                int sets = 20 + random.nextInt(100);
                double ofLot = random.nextDouble();
                int[] inCell = new int[CELLS];
                for (int s = 0; s < sets; s++) {
                    // A lot holds few families, and squares make some cells rare.
                    double v = random.nextDouble();
                    int fixAt = (int) (24 * v * v);
                    inCell[fixAt * 6 + (l + random.nextInt(2)) % 6]++;
                }
                for (int c = 0; c < CELLS; c++) {
                    if (inCell[c] > 0) {
                        double u = shared ? ofLot : random.nextDouble();
                        double p = rho == 0
                                ? truth[c]
                                : BetaQuantile.of(u, truth[c] * (1 / rho - 1), (1 - truth[c]) * (1 / rho - 1));
                        int k = 0;
                        for (int i = 0; i < inCell[c]; i++) {
                            k += random.nextDouble() < p ? 1 : 0;
                        }
                        add(c, l, k, inCell[c]);
                    }
                }
            }
        }

        private void add(int c, int l, int k, int of) {
            cell[size] = c;
            lot[size] = l;
            saved[size] = k;
            decided[size++] = of;
            n[c] += of;
            y[c] += k;
        }

        ShrunkYield fit() {
            cell = Arrays.copyOf(cell, size);
            lot = Arrays.copyOf(lot, size);
            saved = Arrays.copyOf(saved, size);
            decided = Arrays.copyOf(decided, size);
            return ShrunkYield.fit(CELLS, cell, lot, saved, decided, PARENTS, 0.95);
        }

        private static double beta(SplittableRandom random, double mean, double size) {
            return BetaQuantile.of(random.nextDouble(), mean * size, (1 - mean) * size);
        }
    }
}
