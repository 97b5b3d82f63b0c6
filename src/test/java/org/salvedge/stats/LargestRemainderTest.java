package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.assertThatIllegalArgumentException;

import java.math.BigInteger;
import java.util.Arrays;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;
import org.junit.jupiter.params.ParameterizedTest;
import org.junit.jupiter.params.provider.ValueSource;

class LargestRemainderTest {
    /** Wikipedia, "Largest remainder method", Hare quota: ten seats. */
    @Test
    void tenSeatsByHareQuota() {
        assertThat(LargestRemainder.shares(10, 47000, 16000, 15900, 12000, 6000, 3100))
                .containsExactly(5, 2, 1, 1, 1, 0);
    }

    /** M. L. Balinski and H. P. Young, "Fair Representation" (1982), appendix B: Hamilton's method on the census of 1790. */
    @Test
    void hamiltonsApportionmentOf1790() {
        long[] people = Arrays.stream(Published.table("apportionment1790").integers("population"))
                .asLongStream()
                .toArray();
        assertThat(Arrays.stream(people).sum()).isEqualTo(3_615_920);
        assertThat(LargestRemainder.shares(120, people))
                .containsExactly(21, 16, 14, 12, 11, 9, 8, 7, 6, 5, 3, 2, 2, 2, 2);
        assertThat(LargestRemainder.shares(105, people))
                .containsExactly(18, 14, 13, 10, 10, 8, 7, 6, 5, 4, 2, 2, 2, 2, 2);
    }

    /**
     * C. T. Horngren, S. M. Datar, M. V. Rajan, "Cost Accounting", 14th ed., chapter 16: joint cost of cream and skim by sales
     * value at split-off, by gallons, by net realisable value, and by constant gross margin (25 % here), in cents.
     */
    @Test
    void jointCostByFourMethods() {
        assertThat(LargestRemainder.shares(400_000_00, 25_000 * 8, 75_000 * 4)).containsExactly(160_000_00, 240_000_00);
        assertThat(LargestRemainder.shares(400_000_00, 25_000, 75_000)).containsExactly(100_000_00, 300_000_00);
        assertThat(LargestRemainder.shares(400_000_00, 20_000 * 25 - 280_000, 50_000 * 22 - 520_000))
                .containsExactly(110_000_00, 290_000_00);
        // Constant margin: all cost shared by final sales value, less what each product costs after the split.
        long[] whole = LargestRemainder.shares(1_200_000_00, 500_000, 1_100_000);
        assertThat(new long[] {whole[0] - 280_000_00, whole[1] - 520_000_00}).containsExactly(95_000_00, 305_000_00);
    }

    /** Documentation of the package money2, "Allocation", after M. Fowler (2002): 5 by 70:30 and 30:70, 8.00 in three. */
    @Test
    void centsGoToTheEarlierOneOnEqualRemainders() {
        assertThat(LargestRemainder.shares(5, 70, 30)).containsExactly(4, 1);
        assertThat(LargestRemainder.shares(5, 30, 70)).containsExactly(2, 3);
        assertThat(LargestRemainder.shares(800, 1, 1, 1)).containsExactly(267, 267, 266);
        assertThat(LargestRemainder.shares(10_000, 1, 1, 1)).containsExactly(3334, 3333, 3333);
    }

    /** A textbook exercise, three dairy products by market value at split-off (original text not known). */
    @Test
    void jointCostOfThreeProducts() {
        assertThat(LargestRemainder.shares(4000, 3500 * 2, 1500, 500 * 3)).containsExactly(2800, 600, 600);
    }

    @ParameterizedTest(name = "seed {0}")
    @ValueSource(longs = {1, 2, 3, 4, 5, 6, 7, 8, 9, 10})
    void nothingIsLostAndNoShareIsOffByOneOrMore(long seed) {
        SplittableRandom random = new SplittableRandom(seed);
        long total = random.nextLong(-1_000_000, 1_000_000);
        BigInteger[] weights = new BigInteger[1 + random.nextInt(40)];
        BigInteger sum = BigInteger.ZERO;
        for (int i = 0; i < weights.length; i++) {
            weights[i] = BigInteger.valueOf(random.nextLong(1, 1L << 60)).multiply(BigInteger.valueOf(1L << 40));
            sum = sum.add(weights[i]);
        }
        long[] shares = LargestRemainder.shares(total, weights);
        assertThat(Arrays.stream(shares).sum()).isEqualTo(total);
        for (int i = 0; i < shares.length; i++) {
            BigInteger off = BigInteger.valueOf(shares[i])
                    .multiply(sum)
                    .subtract(BigInteger.valueOf(total).multiply(weights[i]));
            assertThat(off.abs()).isLessThan(sum);
        }
    }

    @Test
    void weightsOfZeroShareEquallyAndNegativeOnesAreRefused() {
        assertThat(LargestRemainder.shares(7, 0, 0)).containsExactly(4, 3);
        assertThat(LargestRemainder.shares(-7, 1, 1)).containsExactly(-4, -3);
        assertThatIllegalArgumentException().isThrownBy(() -> LargestRemainder.shares(7, 1, -1));
        assertThatIllegalArgumentException().isThrownBy(() -> LargestRemainder.shares(7, new long[0]));
    }
}
