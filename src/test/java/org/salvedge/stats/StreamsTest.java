package org.salvedge.stats;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.Arrays;
import java.util.HashSet;
import java.util.Set;
import java.util.concurrent.ForkJoinPool;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;
import org.apache.commons.statistics.distribution.BetaDistribution;
import org.apache.commons.statistics.distribution.ContinuousDistribution;
import org.apache.commons.statistics.distribution.GammaDistribution;
import org.apache.commons.statistics.distribution.LogNormalDistribution;
import org.apache.commons.statistics.distribution.NormalDistribution;
import org.apache.commons.statistics.distribution.TDistribution;
import org.junit.jupiter.api.Test;

class StreamsTest {
    private static double[] run(Streams streams, int draws) {
        double[] out = new double[draws];
        streams.run(draws, 64, (random, from, to) -> {
            Draws d = new Draws(random);
            for (int i = from; i < to; i++) {
                out[i] = d.gamma(2.5) + d.normal();
            }
        });
        return out;
    }

    @Test
    void theAnswerIsTheSameOnAnyNumberOfCores() throws Exception {
        double[] here = run(Streams.of(7), 1000);
        for (int cores : new int[] {1, 3}) {
            ForkJoinPool pool = new ForkJoinPool(cores);
            try {
                assertThat(pool.submit(() -> run(Streams.of(7), 1000)).get()).isEqualTo(here);
            } finally {
                pool.shutdown();
            }
        }
        double[] inOrder = new double[1000];
        UniformRandomProvider[] blocks = Streams.of(7).blocks(16);
        for (int b = 0; b < 16; b++) {
            Draws d = new Draws(blocks[b]);
            for (int i = b * 64; i < Math.min(1000, b * 64 + 64); i++) {
                inOrder[i] = d.gamma(2.5) + d.normal();
            }
        }
        assertThat(inOrder).isEqualTo(here);
    }

    @Test
    void moreDrawsKeepTheFirstOnes() {
        assertThat(Arrays.copyOf(run(Streams.of(3), 640), 320)).isEqualTo(run(Streams.of(3), 320));
    }

    @Test
    void seedsPurposesAndBlocksDiffer() {
        Set<Long> first = new HashSet<>();
        for (long seed = 0; seed < 5; seed++) {
            for (int purpose = 0; purpose < 4; purpose++) {
                for (UniformRandomProvider block :
                        Streams.of(seed).forPurpose(purpose).blocks(10)) {
                    first.add(block.nextLong());
                }
            }
        }
        assertThat(first).hasSize(200);
    }

    /** Neighbouring streams are uncorrelated: 2000 numbers of 20 streams, bound at five standard errors. */
    @Test
    void neighbouringBlocksAreUncorrelated() {
        UniformRandomProvider[] blocks = Streams.of(1).blocks(20);
        double[][] u = new double[20][2000];
        for (int b = 0; b < 20; b++) {
            for (int i = 0; i < 2000; i++) {
                u[b][i] = blocks[b].nextDouble() - 0.5;
            }
        }
        for (int b = 1; b < 20; b++) {
            double sum = 0;
            for (int i = 0; i < 2000; i++) {
                sum += 12 * u[b][i] * u[b - 1][i];
            }
            assertThat(sum / 2000).isCloseTo(0, within(5 / Math.sqrt(2000)));
        }
    }

    private interface Draw {
        double from(Draws d);
    }

    /** Largest distance of 20,000 draws from the library's distribution function; above 1.95/sqrt(n) one seed in a thousand. */
    private static void follows(Draw draw, ContinuousDistribution expected) {
        Draws d = new Draws(RandomSource.XO_SHI_RO_256_PP.create(42L));
        double[] x = new double[20_000];
        Arrays.setAll(x, i -> draw.from(d));
        Arrays.sort(x);
        double most = 0;
        for (int i = 0; i < x.length; i++) {
            double p = expected.cumulativeProbability(x[i]);
            most = Math.max(most, Math.max((i + 1.0) / x.length - p, p - (double) i / x.length));
        }
        assertThat(most).isLessThan(1.95 / Math.sqrt(x.length));
    }

    @Test
    void drawsFollowTheirDistributions() {
        follows(Draws::normal, NormalDistribution.of(0, 1));
        follows(d -> d.gamma(0.3), GammaDistribution.of(0.3, 1));
        follows(d -> d.gamma(7), GammaDistribution.of(7, 1));
        follows(d -> d.beta(2, 5), BetaDistribution.of(2, 5));
        follows(d -> d.beta(0.4, 3), BetaDistribution.of(0.4, 3));
        follows(d -> d.logNormal(3, 0.7), LogNormalDistribution.of(3, 0.7));
        follows(d -> d.studentT(4), TDistribution.of(4));
    }

    @Test
    void tinyParametersGiveChancesNotNotANumber() {
        Draws d = new Draws(RandomSource.XO_SHI_RO_256_PP.create(5L));
        double sum = 0;
        for (int i = 0; i < 4000; i++) {
            double p = d.beta(1e-3, 3e-3);
            assertThat(p).isBetween(0.0, 1.0);
            sum += p / 4000;
        }
        assertThat(sum).isCloseTo(0.25, within(0.03));
    }

    @Test
    void dirichletDrawsHaveTheRightMeansAndAddUp() {
        Draws d = new Draws(RandomSource.XO_SHI_RO_256_PP.create(6L));
        double[] alphas = {0.05, 1, 3, 0.95};
        double[] mean = new double[4];
        double[] chances = new double[4];
        for (int i = 0; i < 10_000; i++) {
            d.dirichlet(alphas, chances);
            assertThat(Arrays.stream(chances).sum()).isCloseTo(1, within(1e-12));
            for (int k = 0; k < 4; k++) {
                mean[k] += chances[k] / 10_000;
            }
        }
        assertThat(mean).containsExactly(new double[] {0.01, 0.2, 0.6, 0.19}, within(0.01));
    }

    @Test
    void categoriesAndTrialsComeAsOftenAsTheirChances() {
        Draws d = new Draws(RandomSource.XO_SHI_RO_256_PP.create(8L));
        double[] chances = {0.1, 0, 0.6, 0.3};
        double[] seen = new double[4];
        double successes = 0;
        for (int i = 0; i < 20_000; i++) {
            seen[d.category(chances)] += 1 / 20_000.0;
            successes += d.binomial(5, 0.3) / 20_000.0;
        }
        assertThat(seen).containsExactly(chances, within(0.015));
        assertThat(seen[1]).isZero();
        assertThat(successes).isCloseTo(1.5, within(0.04));
    }
}
