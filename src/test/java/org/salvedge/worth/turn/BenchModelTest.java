package org.salvedge.worth.turn;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class BenchModelTest {
    @Test
    void aMinuteIsWorthTheRateOfTheFirstWorkThatIsLeftUndone() {
        List<ShadowPrice.Work> work = List.of(
                new ShadowPrice.Work(.4, 30, 2), new ShadowPrice.Work(2, 20, 3), new ShadowPrice.Work(1, 10, 1));
        // In order of rate: 60 minutes at 2, 10 at 1, 60 at 0.4.
        assertThat(ShadowPrice.of(work, 59)).isEqualTo(2);
        assertThat(ShadowPrice.of(work, 65)).isEqualTo(1);
        assertThat(ShadowPrice.of(work, 100)).isEqualTo(.4);
        assertThat(ShadowPrice.of(work, 131)).isZero();
    }

    @Test
    void theIndexIsThePriceOfAMinuteAtWhichTheTurnBringsNothing() {
        QueueWorld world = new QueueWorld(new SplittableRandom(5));
        BenchModel model = new BenchModel(world.new Oracle(), QueueWorld.LABOUR / 60);
        for (String claim : QueueWorld.CLAIMS) {
            BenchModel.OnBench set = new BenchModel.OnBench("F12", 0, claim, "S1 0.0", null, false, 0);
            Prospect free = model.of(set, 0);
            assertThat(free.stops().getOrDefault("panel_broken", 0)).isZero();
            if (free.rate() > 0) {
                // With a minute at that price the gain just pays for the minutes it takes.
                Prospect at = model.of(set, free.rate());
                assertThat(at.gain() - free.rate() * at.minutes()).isCloseTo(0, within(1e-3));
                assertThat(at.minutes()).isLessThanOrEqualTo(free.minutes() + 1e-9);
            }
        }
    }
}
