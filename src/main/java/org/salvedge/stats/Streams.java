package org.salvedge.stats;

import java.util.stream.IntStream;
import org.apache.commons.rng.JumpableUniformRandomProvider;
import org.apache.commons.rng.LongJumpableUniformRandomProvider;
import org.apache.commons.rng.UniformRandomProvider;
import org.apache.commons.rng.simple.RandomSource;

/**
 * Independent random streams out of one seed: one for each block of draws, so that the answer does not depend on how many cores work,
 * and that more draws keep the first ones.
 *
 * <p>Source: D. Blackman and S. Vigna, "Scrambled linear pseudorandom number generators", ACM Transactions on Mathematical Software 47
 * (2021) 36 (xoshiro256++; a jump skips 2^128 numbers, a long jump 2^192).
 */
public final class Streams {
    private final long seed;
    private final int purpose;

    private Streams(long seed, int purpose) {
        this.seed = seed;
        this.purpose = purpose;
    }

    public static Streams of(long seed) {
        return new Streams(seed, 0);
    }

    /** Streams for another purpose under the same seed, which overlap with none of these. */
    public Streams forPurpose(int number) {
        if (number < 0) {
            throw new IllegalArgumentException("purpose " + number);
        }
        return new Streams(seed, number);
    }

    /** The first streams, one for each block. */
    public UniformRandomProvider[] blocks(int count) {
        var source = (LongJumpableUniformRandomProvider) RandomSource.XO_SHI_RO_256_PP.create(seed);
        JumpableUniformRandomProvider from = source;
        for (int i = 0; i <= purpose; i++) {
            from = source.longJump();
        }
        UniformRandomProvider[] streams = new UniformRandomProvider[count];
        for (int i = 0; i < count; i++) {
            streams[i] = from.jump();
        }
        return streams;
    }

    /** What to do with the draws from one number up to, not including, another. */
    @FunctionalInterface
    public interface Block {
        void draw(UniformRandomProvider random, int from, int to);
    }

    /**
     * Runs draws in blocks on the cores there are. Each block may write only to places of its own draws.
     *
     * @param draws how many in all
     * @param blockSize draws a block: part of what the result depends on, so keep it fixed
     */
    public void run(int draws, int blockSize, Block block) {
        int count = (draws + blockSize - 1) / blockSize;
        UniformRandomProvider[] streams = blocks(count);
        IntStream.range(0, count)
                .parallel()
                .forEach(b -> block.draw(streams[b], b * blockSize, Math.min(draws, (b + 1) * blockSize)));
    }
}
