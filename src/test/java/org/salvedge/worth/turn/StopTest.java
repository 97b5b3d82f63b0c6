package org.salvedge.worth.turn;

import static org.assertj.core.api.Assertions.assertThat;

import java.math.BigDecimal;
import java.util.List;
import java.util.SplittableRandom;
import org.junit.jupiter.api.Test;

class StopTest {
    private static final double MINUTE = QueueWorld.LABOUR / 60;

    /** A record of so many sets, each tried for as long as it took. */
    private static BenchModel learnt(QueueWorld world, int days) {
        SplittableRandom r = new SplittableRandom(3);
        QueueDiary diary = new QueueDiary(world);
        for (QueueWorld.Set s : world.arrivals(r, 0, days, 8, 0)) {
            boolean glass = QueueWorld.FAULTS.get(s.fault()).equals("panel_broken");
            diary.turn(diary.arrive(s), s.day() + 1, !glass, !glass && s.solvable(), s.look(), glass ? 0 : s.ends());
        }
        return BenchModel.fit(diary.history(), days, BigDecimal.valueOf(QueueWorld.LABOUR));
    }

    private static BenchModel.OnBench set(QueueWorld world, int family) {
        return new BenchModel.OnBench(
                QueueWorld.family(family), world.inches[family], "untested", "S1", null, false, 0);
    }

    /** Every minute tried with the law that made the record: gain x chance by then - cost x mean minutes until then, parts paid first. */
    @Test
    void outOfALongRecordTheMinuteIsNearTheBestOfAllThatCanBeTried() {
        QueueWorld world = new QueueWorld(new SplittableRandom(2));
        BenchModel model = learnt(world, 1500);
        BenchKnowledge truth = world.new Oracle();
        BenchModel.OnBench set = set(world, 1);
        BenchModel.OnBench true1 = new BenchModel.OnBench(set.family(), 0, "untested", "S1 0.0", null, false, 0);
        for (String fault : List.of("row_drive", "timing_board", "power_board", "backlight")) {
            int k = QueueWorld.FAULTS.indexOf(fault);
            double[] success = truth.success(true1, k);
            double[] failure = truth.failure(true1, k);
            double best = 0;
            double ours = 0;
            Stop stop = model.stop(set, fault, 0);
            double spent = 0;
            double before = 0;
            for (int i = 0; i < success.length; i++) {
                double until = TrySpan.minutes()[i];
                spent += (i == 0 ? 1 : 1 - success[i - 1] - failure[i - 1]) * (until - before);
                before = until;
                double net = truth.saving(true1) * success[i] - truth.parts(true1, k) - MINUTE * spent;
                best = Math.max(best, net);
                ours = until <= stop.minute() - truth.look(k) + 2.5 ? net : ours;
            }
            assertThat(ours).as(fault).isGreaterThan(best - Math.max(1, .05 * best));
            assertThat(stop.low()).isLessThanOrEqualTo(stop.minute());
            assertThat(stop.high()).isGreaterThanOrEqualTo(stop.minute());
        }
    }

    @Test
    void theStopWithItsBandIsTheOneThatTheQueueNames() {
        QueueWorld world = new QueueWorld(new SplittableRandom(4));
        BenchModel model = learnt(world, 200);
        for (int family = 0; family < 8; family++) {
            BenchModel.OnBench set = set(world, family);
            Prospect p = model.of(set, .2);
            p.stops()
                    .forEach((fault, minute) ->
                            assertThat(model.stop(set, fault, .2).minute()).isEqualTo(minute));
            assertThat(model.stop(set, .2).minute()).isEqualTo(p.stopAt());
        }
    }

    @Test
    void moreRecordNarrowsTheBand() {
        QueueWorld world = new QueueWorld(new SplittableRandom(6));
        BenchModel few = learnt(world, 25);
        BenchModel many = learnt(world, 1500);
        double narrow = 0;
        double wide = 0;
        for (int family = 0; family < 8; family++) {
            for (String fault : List.of("row_drive", "timing_board", "backlight")) {
                Stop a = few.stop(set(world, family), fault, 0);
                Stop b = many.stop(set(world, family), fault, 0);
                wide += a.high() - a.low();
                narrow += b.high() - b.low();
            }
        }
        assertThat(narrow).isLessThan(.7 * wide);
    }

    @Test
    void dearerMinutesStopEarlierAndBrokenGlassIsNotBegun() {
        QueueWorld world = new QueueWorld(new SplittableRandom(8));
        BenchModel model = learnt(world, 200);
        BenchModel.OnBench set = set(world, 2);
        int before = Integer.MAX_VALUE;
        for (double beyond : new double[] {0, .3, 1, 3, 20}) {
            int minute = model.stop(set, "row_drive", beyond).minute();
            assertThat(minute).isLessThanOrEqualTo(before);
            before = minute;
        }
        assertThat(before).isZero();
        assertThat(model.stop(set, "panel_broken", 0).minute()).isZero();
    }

    @Test
    void theCensoredReadingExpectsNoFewerSavedThanTheOther() {
        QueueWorld world = new QueueWorld(new SplittableRandom(9));
        LearntBench learnt = new LearntBench(new BenchRecord(new QueueDiary(world).history()), 10, QueueWorld.LABOUR);
        List<PossibleTries.Try> draws = learnt.possible(set(world, 0), 0);
        assertThat(draws).hasSize(PossibleTries.DRAWS);
        double nothing = 0;
        double hopeless = 0;
        for (int d = 0; d < draws.size(); d++) {
            double[] by = draws.get(d).success();
            if (PossibleTries.tellsNothing(d)) {
                nothing += by[by.length - 1];
            } else {
                hopeless += by[by.length - 1];
            }
        }
        assertThat(nothing).isGreaterThan(.95 * hopeless);
    }
}
