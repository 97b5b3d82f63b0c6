package org.salvedge.worth.study;

import static org.assertj.core.api.Assertions.assertThat;
import static org.assertj.core.api.Assertions.within;

import java.util.ArrayList;
import java.util.List;
import java.util.Map;
import org.junit.jupiter.api.Test;

/** The study in small. Seeds are fixed; how often other seeds would fail is said where it can be. */
class StudySmokeTest {
    private static final List<Forecaster> BASELINES = List.of(new PlainAverage(), new FamilyClaimMeans());

    /**
     * 9 worlds x 5 shops x 6 lots = 270: the standard error of a share of 80 % is 2.4 points, so that an oracle in order is
     * outside 73-87 % on one list of seeds in 250.
     */
    @Test
    void theOracleKeepsItsWord() {
        Scores s = Scores.of(new Study(List.of(), 2)
                .run(plans(List.of(World.values()), 5, 6, 400))
                .getOrDefault("oracle", List.of()));
        assertThat(s.lots()).isEqualTo(270);
        assertThat(s.in50().value()).isBetween(0.41, 0.59);
        assertThat(s.in80().value()).isBetween(0.73, 0.87);
        assertThat(s.in90().value()).isBetween(0.85, 0.96);
        assertThat(s.promise().value()).isBetween(0.73, 0.87);
        assertThat(s.missed().value()).isZero();
        assertThat(s.bias().value()).isZero();
    }

    /** Its interval of 80 % held 36 % and its score was 3 times the oracle's over 900 lots of other seeds. */
    @Test
    void thePlainAverageIsTooSureOfItselfAndFarOff() {
        Map<String, List<Judged>> judged =
                new Study(BASELINES, 2).run(plans(List.of(World.STEADY, World.FALLING, World.BAD), 4, 6, 300));
        Scores plain = Scores.of(judged.getOrDefault("plain average", List.of()));
        assertThat(plain.in80().value()).isLessThan(0.6);
        assertThat(plain.crps().value()).isGreaterThan(1.8);
        assertThat(plain.missed().value()).isGreaterThan(0.35);
        Scores cells = Scores.of(judged.getOrDefault("family x claim means", List.of()));
        assertThat(cells.crps().value()).isLessThan(plain.crps().value());
    }

    @Test
    void threadsDoNotChangeTheFigures() {
        List<Study.Plan> plans = plans(List.of(World.STEADY, World.TWELVE_LOTS), 2, 2, 100);
        assertThat(StudyTable.markdown(new Study(BASELINES, 1).run(plans)))
                .isEqualTo(StudyTable.markdown(new Study(BASELINES, 2).run(plans)));
    }

    /** For a mean it is the usual standard error: of 0, 1, 2, 3 sd / sqrt(4) = 1.2910 / 2 = 0.6455. */
    @Test
    void standardErrorIsThatOfTheMeanOfShops() {
        List<Judged> lots = new ArrayList<>();
        Forecast any = Forecast.normal(0, 1);
        for (double outcome : new double[] {0, 1, 2, 3}) {
            for (int twin = 0; twin < 2; twin++) { // two lots alike in each shop add nothing
                lots.add(new Judged(World.STEADY, (long) outcome, any, any, outcome, 0, false, 1, false, 9));
            }
        }
        Figure f = Figure.mean(lots, Judged::outcome);
        assertThat(f.value()).isEqualTo(1.5);
        assertThat(f.error()).isCloseTo(0.6455, within(5e-5));
    }

    private static List<Study.Plan> plans(List<World> worlds, int shops, int lots, int draws) {
        return worlds.stream()
                .map(w -> new Study.Plan(w, Study.DEV_SEED + 500, shops, lots, draws, false))
                .toList();
    }
}
