package org.salvedge.cli;

import org.jspecify.annotations.Nullable;
import org.salvedge.shop.Settings;
import org.salvedge.worth.Question;
import picocli.CommandLine.Option;

/** How an estimate is drawn; a mixin. */
final class DrawOptions {
    private static final int FEWEST = 100;

    @Option(
            names = "--draws",
            paramLabel = "N",
            order = 801,
            description = "Simulated outcomes (default: draws of shop.toml).")
    @Nullable
    Integer draws;

    @Option(
            names = "--seed",
            paramLabel = "S",
            order = 802,
            description = "Another one draws other outcomes (default: seed of shop.toml).")
    @Nullable
    Long seed;

    int draws(Settings settings) {
        int n = draws == null ? settings.draws() : draws;
        if (n < FEWEST || n > Question.MOST_DRAWS) {
            throw new Usage("--draws: " + n + " is not between " + FEWEST + " and " + Question.MOST_DRAWS);
        }
        return n;
    }

    long seed(Settings settings) {
        return seed == null ? settings.seed() : seed;
    }
}
